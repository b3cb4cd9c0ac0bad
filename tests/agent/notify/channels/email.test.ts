import { describe, expect, test } from 'vitest';
import { domainOf, EmailChannel, type MailServer } from '#agent/notify/channels/email.ts';
import { mailOutcome } from '#agent/notify/channels/mail-outcome.ts';
import { htmlText, plainText } from '#agent/notify/channels/mail-text.ts';
import type { Delivery, Message, Target } from '#agent/notify/contract.ts';
import { channelContract } from '../channel-contract.ts';
import type { Fault } from '../faults.ts';
import { type MailSide, mailSide, mailUser } from '../mail-side.ts';
import { aMessage } from '../messages.ts';

const target: Target = { person: 'p-1', channel: 'email', address: 'anna@plant.example' };
const idle = new AbortController().signal;
const page = 'https://forebond.plant.example';

const channelTo = (far: MailSide, facts: Partial<MailServer> = {}) =>
  new EmailChannel({
    server: () => ({
      host: far.host,
      port: far.port,
      security: 'starttls',
      ...mailUser,
      from: 'Forebond <alarms@plant.example>',
      ...facts,
    }),
    page: () => page,
    timezone: () => 'Europe/Dublin',
    authorities: [far.authority],
    answerMs: 2_000,
  });

const noWait = { saysNoWait: true, because: 'SMTP has no words for when to come again' } as const;
channelContract(
  'email',
  async (fault: Fault) => {
    const far = await mailSide(fault);
    return {
      channel: channelTo(far),
      target,
      taken: () => far.taken.length,
      secrets: [mailUser.secret, mailUser.user, target.address, `${far.host}:${far.port}`],
      close: far.close,
    };
  },
  {
    '429, again in 7 s': noWait,
    '503, again at a date': noWait,
    'a redirect': {
      outcome: 'gone',
      because: '551 names another mailbox, and this one is no more',
    },
    'an answer without end': {
      outcome: 'later',
      because: 'nothing is sent before the greeting ends',
    },
  },
);

/** What a real server took of these messages. */
async function sent(
  messages: readonly Message[],
  facts: Partial<MailServer> = {},
  options: Parameters<typeof mailSide>[1] = {},
) {
  const far = await mailSide('none', options);
  try {
    for (const message of messages)
      expect(await channelTo(far, facts).send(message, target, idle)).toEqual({
        outcome: 'delivered',
      });
    return far.taken;
  } finally {
    await far.close();
  }
}

describe('the connection', () => {
  test('is encrypted before anything is said, and the agent says who it is', async () => {
    const [taken] = await sent([aMessage()]);
    expect(taken).toMatchObject({
      secure: true,
      user: mailUser.user,
      from: 'alarms@plant.example',
      to: ['anna@plant.example'],
    });
  });

  test('may be encrypted from the first byte', async () => {
    const [taken] = await sent([aMessage()], { security: 'tls' }, { secure: true });
    expect(taken!.secure).toBe(true);
  });

  test('to this machine may be plain, without a user', async () => {
    const plain = { security: 'none', user: null, secret: null } as const;
    const [taken] = await sent([aMessage()], plain, { authOptional: true });
    expect(taken).toMatchObject({ secure: false, user: undefined });
  });

  test('a user without a secret is not tried', async () => {
    const far = await mailSide('none');
    const delivery = await channelTo(far, { secret: null }).send(aMessage(), target, idle);
    await far.close();
    expect(delivery).toMatchObject({ outcome: 'later', cause: expect.stringContaining('secret') });
  });

  test('where the site file names no server, nothing is sent', async () => {
    const channel = new EmailChannel({
      server: () => null,
      page: () => page,
      timezone: () => 'UTC',
    });
    expect(await channel.send(aMessage(), target, idle)).toMatchObject({ outcome: 'refused' });
  });
});

describe('what is in it', () => {
  test('a person reads all of it, in text and in HTML', async () => {
    const message = aMessage();
    const [{ mail }] = (await sent([message])) as [Awaited<ReturnType<typeof sent>>[number]];
    expect(mail.subject).toBe(message.title);
    expect(mail.from?.text).toBe('"Forebond" <alarms@plant.example>');
    const { sentence, steps, doNot, caution, consequence, deferral, limitText, site } = message;
    const said = [sentence, ...steps, ...doNot, caution, consequence, limitText, site];
    for (const text of [mail.text!, mail.html as string])
      for (const words of [...said, deferral, '25 Nov 2025', '02:06', 'GMT'])
        expect(text).toContain(words);
    expect(mail.text).toContain(`${page}${message.url}`);
    expect(mail.html).toContain(`href="${page}${message.url}"`);
    // The step that people take unasked is the one that injures.
    expect(mail.text!.indexOf(doNot[0]!)).toBeLessThan(mail.text!.indexOf(steps[0]!));
  });

  test.each(['DANGER', 'WARNING', 'CAUTION', 'NOTICE'] as const)(
    'of a %s too the caution stands above the steps',
    (word) => {
      const message = aMessage({ word, priority: 'low' });
      const place = { page, timezone: 'UTC' };
      for (const text of [plainText(message, place), htmlText(message, place)]) {
        expect(text.indexOf(message.caution)).toBeGreaterThan(0);
        expect(text.indexOf(message.caution)).toBeLessThan(text.indexOf(message.steps[0]!));
      }
    },
  );

  test('in German where the person reads German', async () => {
    const german = { language: 'de', sentence: 'Ofen 1, Boden Zone 3: 104 °C, steigend.' } as const;
    const [taken] = await sent([aMessage(german)]);
    expect(taken!.mail.text).toContain('Erste Schritte');
    expect(taken!.mail.text).not.toContain('First steps');
    expect(taken!.mail.html).toContain('<html lang="de">');
    expect(taken!.mail.text).toContain(german.sentence);
    expect(taken!.mail.html).not.toContain('lang="en"');
  });

  test('a highly managed alarm is acknowledged on the page alone', () => {
    const place = { page, timezone: 'UTC' };
    const both = [false, true].map((highlyManaged) =>
      plainText(aMessage({ highlyManaged }), place),
    );
    expect(both[0]).toContain('See it and acknowledge it on the page:');
    expect(both[1]).toContain('See it on the page; it is acknowledged there alone:');
  });

  test('high priority is marked so; what became of an alarm is not', async () => {
    const taken = await sent([
      aMessage(),
      aMessage({ kind: 'over', silent: true, key: 'k/2' }),
      aMessage({ priority: 'low', key: 'k/3' }),
    ]);
    expect(taken.map(({ mail }) => mail.headers.get('priority'))).toEqual([
      'high',
      undefined,
      undefined,
    ]);
    for (const { mail } of taken) expect(mail.headers.get('auto-submitted')).toBe('auto-generated');
  });
});

describe('text from sensors and site files', () => {
  const nasty =
    '</p><script>alert(1)</script><img src=x onerror="x">\r\nBcc: all@plant.example & \'a\'';

  test('is text in the HTML', () => {
    const { sentence } = aMessage();
    const texts = { sentence: nasty, title: nasty, caution: nasty, limitText: nasty, site: nasty };
    const html = htmlText(
      aMessage({
        ...texts,
        steps: [nasty],
        doNot: [nasty],
        consequence: nasty,
        deferral: nasty,
        url: '/"><x',
      }),
      { page, timezone: 'UTC' },
    );
    const mine = htmlText(aMessage({ sentence, url: '/' }), { page, timezone: 'UTC' });
    const tags = (text: string) => [...new Set(text.match(/<[a-z!/][^\s>]*/gi))].sort();
    expect(tags(html)).toEqual(tags(mine));
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(html).toContain('&amp; &#39;a&#39;');
  });

  test('makes no header and turns no direction', async () => {
    const [taken] = await sent([aMessage({ title: `a\r\nBcc: all@plant.example\u202e\u0000b` })]);
    expect(taken!.to).toEqual(['anna@plant.example']);
    expect(taken!.mail.bcc).toBeUndefined();
    expect(taken!.mail.subject).toBe('a Bcc: all@plant.example b');
  });

  test('an address with more in it stays one recipient', async () => {
    const far = await mailSide('none');
    const odd = { ...target, address: 'anna@plant.example, all@plant.example' };
    const delivery = await channelTo(far).send(aMessage(), odd, idle);
    await far.close();
    expect(far.taken.flatMap(({ to }) => to)).not.toContain('all@plant.example');
    expect(delivery.outcome).not.toBe('later');
  });
});

describe('one alarm, one thread (RFC 5322 section 3.6.4)', () => {
  test('every message points at the thread’s id; a repeat has the id it had', async () => {
    const taken = await sent([
      aMessage({ key: 'a@1/1/email/p-1' }),
      aMessage({ key: 'a@1/2/email/p-1', kind: 'again' }),
      aMessage({ key: 'a@1/1/email/p-1' }),
      aMessage({ key: 'b@1/1/email/p-1', thread: 'b@1', occurrence: 'b@1' }),
    ]);
    const ids = taken.map(({ mail }) => mail.messageId);
    expect(ids[0]).toMatch(/^<[\w-]{32}@plant\.example>$/);
    expect(ids[2]).toBe(ids[0]);
    expect(new Set(ids).size).toBe(3);
    const threads = taken.map(({ mail }) => [mail.references, mail.inReplyTo]);
    expect(threads[1]).toEqual(threads[0]);
    expect(threads[0]![0]).toBe(threads[0]![1]);
    expect(threads[3]).not.toEqual(threads[0]);
  });

  test('the domain is that of the sender', () => {
    expect(['A <a@b.example>', 'a@b-c.example', 'nobody'].map(domainOf)).toEqual([
      'b.example',
      'b-c.example',
      'forebond.invalid',
    ]);
  });
});

// RFC 5321 section 4.2.3, RFC 3463 section 3, RFC 4954 section 6.
test('what a mail server’s codes mean', () => {
  const rows: readonly (readonly [string, string, Delivery['outcome']])[] = [
    ['RCPT TO', '550 5.1.1 user unknown', 'gone'],
    ['RCPT TO', '550 no such user here', 'gone'],
    ['RCPT TO', '553 mailbox name not allowed', 'gone'],
    ['DATA', '550 5.1.1 user unknown', 'gone'],
    ['DATA', '550 message looks like spam', 'refused'],
    ['RCPT TO', '550 5.7.1 relaying denied', 'later'],
    ['DATA', '554 5.7.1 rejected by policy', 'later'],
    ['MAIL FROM', '530 5.7.0 authentication required', 'later'],
    ['MAIL FROM', '552 message too big', 'refused'],
    ['DATA', '552 5.2.3 message length exceeds limit', 'refused'],
    ['RCPT TO', '452 4.2.2 mailbox full', 'later'],
    ['RCPT TO', '552 5.2.2 mailbox full', 'refused'],
    ['CONN', '554 no service', 'refused'],
    ['DATA', '554 transaction failed', 'refused'],
    ['EHLO', '421 closing', 'later'],
  ];
  for (const [command, response, outcome] of rows) {
    const responseCode = Number(response.slice(0, 3));
    const delivery = mailOutcome({ code: 'EENVELOPE', command, response, responseCode });
    expect(delivery.outcome, `${command} ${response}`).toBe(outcome);
  }
});
