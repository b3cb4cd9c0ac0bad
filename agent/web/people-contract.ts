/** People on the wire: who is signed in, whom an administrator sees, invitations and tokens. */
import { z } from 'zod';
import { epochMs } from './contract.ts';

export const roleWords = z.enum([
  'reader',
  'operator',
  'maintenance',
  'ehs',
  'engineer',
  'administrator',
]);
const language = z.enum(['en', 'de']);

export const meSchema = z.object({
  people: z
    .boolean()
    .describe('False while there are no people: whoever is at the machine may do all.'),
  person: z
    .object({
      id: z.string(),
      name: z.string(),
      role: roleWords,
      language,
      email: z.string().nullable(),
      push: z.boolean(),
    })
    .nullable()
    .describe('Who is signed in; null where nobody is.'),
  may: z.array(z.string()).describe('Operations, by operationId, that this role may do.'),
  ends: epochMs.nullable().describe('When the session ends if nobody uses it.'),
  proved_until: epochMs.nullable().describe('Until when dangerous changes need no password again.'),
});
export type MeView = z.output<typeof meSchema>;

export const namesSchema = z.object({
  names: z
    .record(z.string(), z.string())
    .describe('Names by id, as ids stand in alarms and holds.'),
});

export const personSchema = z.object({
  id: z.string(),
  name: z.string(),
  role: roleWords,
  language,
  email: z.string().nullable(),
  made: epochMs,
  joined: z.boolean().describe('They have chosen a password.'),
  invited_until: epochMs.nullable().describe('Until when their link is good.'),
  sessions: z.int().min(0).describe('Places where they are signed in.'),
});
export type PersonView = z.output<typeof personSchema>;
export const peopleSchema = z.object({ people: z.array(personSchema) });

export const invitedSchema = z.object({
  person: personSchema,
  link: z.string().describe('To be given to this person alone; it is shown this once.'),
  only_here: z
    .boolean()
    .describe('The page is bound to this machine: no phone and no other machine reaches the link.'),
  qr: z
    .object({ size: z.int(), path: z.string() })
    .nullable()
    .describe(
      'The link as a QR code: modules a side, and the dark ones as an SVG path. null where no phone reaches it.',
    ),
  ends: epochMs,
});
export type InvitedView = z.output<typeof invitedSchema>;

export const invitationSchema = z.object({
  site: z.string(),
  name: z.string().nullable().describe('null for the first administrator, who gives it.'),
  role: roleWords,
  language,
  ends: epochMs,
  password_chars_min: z.int(),
  authority: z
    .object({ fingerprint: z.string() })
    .nullable()
    .describe('Of the agent’s own certificate authority, where it has one.'),
});
export type InvitationView = z.output<typeof invitationSchema>;

export const tokenSchema = z.object({
  id: z.string(),
  label: z.string(),
  role: roleWords,
  made: epochMs,
  ends: epochMs,
  by: z.string(),
});
export type TokenView = z.output<typeof tokenSchema>;
export const tokensSchema = z.object({ tokens: z.array(tokenSchema) });
export const tokenAddedSchema = z.object({
  token: tokenSchema,
  secret: z.string().describe('Shown this once. Send it as Authorization: Bearer.'),
});
export type TokenAddedView = z.output<typeof tokenAddedSchema>;
export const doneSchema = z.object({ done: z.literal(true) });
