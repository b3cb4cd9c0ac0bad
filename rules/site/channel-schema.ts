/**
 * By which ways people are told, as the site file says it. A password or a signing secret never
 * stands here: they come from files of the data folder or the environment.
 */
import { z } from 'zod/mini';
import { webhooksMax } from './bounds.ts';

const described = (description: string) => z.meta({ description });

const thisMachine = /^(localhost|127\.\d{1,3}\.\d{1,3}\.\d{1,3}|\[?::1\]?)$/i;

/** What a URL says of itself, without a parser of its own in the rules. */
const urlParts = /^(https?):\/\/(\[[0-9a-f:.]+\]|[^\s/?#:@]+)(:\d{1,5})?([/?][^\s#]*)?$/i;

const isSafeUrl = (url: string): boolean => {
  const [, scheme, host] = urlParts.exec(url) ?? [];
  if (scheme === undefined || host === undefined) return false;
  return scheme.toLowerCase() === 'https' || thisMachine.test(host);
};

const hostName = z
  .string()
  .check(
    z.maxLength(253),
    z.regex(/^[A-Za-z0-9:]([A-Za-z0-9.:-]*[A-Za-z0-9])?$/, 'write a host name or an address'),
  );

const sender = z
  .string()
  .check(
    z.maxLength(300),
    z.regex(
      /^([^<>"\r\n]{1,100} <[^\s<>@"]{1,64}@[A-Za-z0-9.-]{1,253}>|[^\s<>@"]{1,64}@[A-Za-z0-9.-]{1,253})$/,
      'write an address, as "Forebond <alarms@plant.example>"',
    ),
  );

const emailWritten = z
  .strictObject({
    server: hostName.check(described('The mail server that takes the agent’s messages.')),
    port: z.optional(
      z
        .int()
        .check(
          z.minimum(1),
          z.maximum(65_535),
          described('587 where absent; 465 with `tls`, 25 with `none`.'),
        ),
    ),
    security: z.optional(
      z
        .enum(['starttls', 'tls', 'none'])
        .check(
          described(
            'How the connection is encrypted: `starttls` (where absent) before anything is said, `tls` from the first byte. `none` only to a server on this very machine.',
          ),
        ),
    ),
    user: z.optional(
      z
        .string()
        .check(
          z.minLength(1),
          z.maxLength(200),
          described(
            'Who the agent is to the server. Its password stands in `secrets/email` of the data folder, or in FOREBOND_EMAIL.',
          ),
        ),
    ),
    from: sender.check(described('Whom the messages are from.')),
  })
  .check(
    z.refine(({ security, server }) => security !== 'none' || thisMachine.test(server), {
      path: ['security'],
      message: 'only a mail server on this very machine may be asked without encryption',
    }),
    z.meta({ title: 'e-mail' }),
  );
export type EmailWritten = z.infer<typeof emailWritten>;

const webhookWritten = z
  .strictObject({
    url: z
      .string()
      .check(
        z.maxLength(1_000),
        z.refine(
          isSafeUrl,
          'write an https address without user and password; http only to this very machine',
        ),
        described('Where each message is posted, as a signed CloudEvent.'),
      ),
    any_address: z.optional(
      z
        .boolean()
        .check(
          described(
            'true: it may have a link-local address (169.254.0.0/16, fe80::/10), which is refused otherwise.',
          ),
        ),
    ),
  })
  .check(z.meta({ title: 'webhook' }));

const webhookName = z
  .string()
  .check(
    z.regex(/^[a-z0-9]([a-z0-9-]{0,30}[a-z0-9])?$/, 'write lower case letters, digits, hyphens'),
  );

const pushWritten = z
  .strictObject({
    contact: z.optional(
      z
        .string()
        .check(
          z.maxLength(300),
          z.regex(
            /^(mailto:[^\s@]+@[A-Za-z0-9.-]+|https:\/\/[^\s]+)$/,
            'write mailto: and an address, or an https address',
          ),
          described(
            'Whom a push service may write to when something is wrong. The sender of the e-mails where absent.',
          ),
        ),
    ),
    hosts: z.optional(
      z
        .array(hostName)
        .check(
          z.maxLength(20),
          described(
            'Push services inside the plant. Without it only those with a public address are asked.',
          ),
        ),
    ),
  })
  .check(z.meta({ title: 'push' }));

/** Parts of `telling:`. */
export const channelsWritten = {
  page: z.optional(
    z
      .string()
      .check(
        z.maxLength(300),
        z.regex(
          /^https?:\/\/[^\s/?#@]+$/,
          'write the address alone, as https://agent.plant.example',
        ),
        described(
          'The address under which people reach the page; stands in e-mails, webhooks and invitations. The agent’s own where absent.',
        ),
      ),
  ),
  email: z.optional(
    emailWritten.check(described('The mail server. Without it nobody is told by e-mail.')),
  ),
  webhooks: z.optional(
    z.record(webhookName, webhookWritten).check(
      z.refine((webhooks) => Object.keys(webhooks).length <= webhooksMax, {
        message: `a site has at most ${webhooksMax} webhooks`,
      }),
      described('Other programs that are told of everything, each under a name of its own.'),
    ),
  ),
  push: z.optional(
    pushWritten.check(described('Messages to phones. They work without any of these settings.')),
  ),
};
