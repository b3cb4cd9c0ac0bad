import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { Book } from '#agent/people/book.ts';
import { hashPassword } from '#agent/people/secrets.ts';
import { givenCookie, Staffed } from './staffed.ts';

const password = 'purple tractor under ninth bridge';
const other = 'seven wet lanterns on gravel';

let staffed: Staffed;
beforeEach(async () => {
  staffed = await Staffed.open();
});
afterEach(async () => {
  expect(staffed.faults).toEqual([]);
  await staffed.close();
});

const accept = (secret: string, more: object = {}) =>
  staffed.ask('/api/invitation/accept', {}, { secret, password, ...more });
const signIn = (name: string, given: string) =>
  staffed.ask('/api/session', {}, { name, password: given });
const secretOf = (link: unknown): string => String(link).split('/').at(-1)!;

async function first(): Promise<string> {
  const secret = staffed.people.setup.make(false, staffed.nowMs);
  return givenCookie(await accept(secret, { name: 'Ann Byrne' }));
}

describe('the first administrator', () => {
  test('comes in by a link that is good once and for 15 min', async () => {
    const secret = staffed.people.setup.make(false, staffed.nowMs);
    const shown = await staffed.ask('/api/invitation', {}, { secret });
    expect(shown.json).toMatchObject({ site: 'harbour-works', name: null, role: 'administrator' });
    expect((await accept(secret)).code).toBe('PEOPLE_NAME_UNUSABLE');
    expect((await accept(secret, { name: 'Ann', password: 'short' })).code).toBe(
      'PEOPLE_PASSWORD_SHORT',
    );
    expect((await accept(secret, { name: 'Ann' })).status).toBe(200);
    expect((await accept(secret, { name: 'Eve' })).code).toBe('PEOPLE_INVITATION_UNUSABLE');
    const late = staffed.people.setup.make(false, staffed.nowMs);
    staffed.nowMs += limits.setupLinkMs;
    expect((await accept(late, { name: 'Eve' })).code).toBe('PEOPLE_INVITATION_UNUSABLE');
  });

  test('from another machine only if that was asked for', () => {
    const near = staffed.people.setup.make(false, staffed.nowMs);
    expect(() => staffed.people.invitation(near, false)).toThrow(/only good on the machine itself/);
    const far = staffed.people.setup.make(true, staffed.nowMs);
    expect(staffed.people.invitation(far, false).person).toBe(null);
  });

  test('two taking the same link up at once are one', async () => {
    const secret = staffed.people.setup.make(false, staffed.nowMs);
    const answers = await Promise.all([
      accept(secret, { name: 'Ann' }),
      accept(secret, { name: 'Eve' }),
    ]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 404]);
    expect(staffed.people.list()).toHaveLength(1);
  });

  test('before there is one, nobody else comes in', async () => {
    const { person, secret } = staffed.people.book.invite(
      { name: 'Bob', role: 'operator', language: 'en', email: null },
      'box',
      staffed.nowMs,
    );
    expect(person.role).toBe('operator');
    expect((await accept(secret)).code).toBe('PEOPLE_FIRST_ADMINISTRATOR');
  });
});

describe('an invitation', () => {
  test('lets one person in once, in the role it was made for, as link and as QR code', async () => {
    const cookie = await first();
    const body = { name: 'Bob', role: 'operator', language: 'de' };
    const { json } = await staffed.ask('/api/people', { cookie }, body);
    expect(json.link).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/#\/invitation\/[\w-]{43}$/);
    // Bound to this machine: a code would lead a phone to itself.
    expect(json).toMatchObject({ only_here: true, qr: null });
    const secret = secretOf(json.link);
    expect((await staffed.ask('/api/invitation', {}, { secret })).json).toMatchObject({
      name: 'Bob',
      role: 'operator',
      language: 'de',
      authority: null,
    });
    const answer = await accept(secret, { name: 'Mallory', language: 'de' });
    expect(answer.json).toMatchObject({ person: { name: 'Bob', role: 'operator' } });
    expect((await accept(secret)).code).toBe('PEOPLE_INVITATION_UNUSABLE');
  });

  test('begins with the address that the site file names, and has a code then', async () => {
    const cookie = await first();
    staffed.sitePage = 'https://box.works.example';
    const body = { name: 'Bob', role: 'operator' };
    const { json } = await staffed.ask('/api/people', { cookie }, body);
    expect(json.link).toMatch(/^https:\/\/box\.works\.example\/#\/invitation\/[\w-]{43}$/);
    expect(json).toMatchObject({
      only_here: false,
      qr: { size: expect.any(Number), path: expect.stringMatching(/^M4 4h1/) },
    });
  });

  test('ends after a day', async () => {
    const cookie = await first();
    const body = { name: 'Bob', role: 'operator' };
    const { json } = await staffed.ask('/api/people', { cookie }, body);
    staffed.nowMs += limits.invitationMs;
    expect((await accept(secretOf(json.link))).code).toBe('PEOPLE_INVITATION_UNUSABLE');
  });

  test('a name that differs in case or composition alone is taken', async () => {
    const cookie = await first();
    const body = { name: '  ANN  byrne', role: 'operator' };
    expect((await staffed.ask('/api/people', { cookie }, body)).code).toBe('PEOPLE_NAME_TAKEN');
  });
});

describe('an administrator', () => {
  test('resets: the password is void, sessions end, a new link lets them in', async () => {
    const cookie = await first();
    const body = { name: 'Bob', role: 'operator' };
    const { json } = await staffed.ask('/api/people', { cookie }, body);
    const bob = givenCookie(await accept(secretOf(json.link)));
    const { id } = json.person as { id: string };
    staffed.nowMs += 1;
    const reset = await staffed.ask(`/api/people/${id}/reset`, { cookie }, {});
    expect((await staffed.ask('/api/alarms', { cookie: bob })).status).toBe(401);
    expect((await signIn('Bob', password)).status).toBe(401);
    expect((await accept(secretOf(reset.json.link), { password: other })).status).toBe(200);
    expect((await signIn('Bob', other)).status).toBe(200);
  });

  test('removes: signed out, the name forgotten, the ledger has the id', async () => {
    const cookie = await first();
    const { id, cookie: bob } = await staffed.person('operator', 'Bob Doyle');
    await staffed.ask(`/api/people/${id}/remove`, { cookie }, {});
    expect((await staffed.ask('/api/alarms', { cookie: bob })).status).toBe(401);
    expect(readFileSync(join(staffed.folder, 'people.json'), 'utf8')).not.toContain('Doyle');
    expect(JSON.stringify(staffed.notes)).not.toContain('Doyle');
    expect(staffed.notes.filter(({ person }) => person === id).map(({ what }) => what)).toEqual([
      'invited',
      'removed',
    ]);
  });

  test('another role holds from the next request on', async () => {
    const cookie = await first();
    const { id, cookie: bob } = await staffed.person('operator', 'Bob');
    const caller = staffed.desk.admit('listAlarms', {
      cookie: bob.split('=')[1]!,
      bearer: null,
      near: false,
    });
    expect(staffed.desk.isIn(caller)).toBe(true);
    await staffed.ask(`/api/people/${id}/role`, { cookie }, { role: 'reader' });
    expect(staffed.desk.isIn(caller)).toBe(false);
    const hold = { what: 'rack', item: '1', reason: 'thin' };
    expect((await staffed.ask('/api/holds', { cookie: bob }, hold)).code).toBe('PEOPLE_MAY_NOT');
  });

  test('the last one stays', async () => {
    const cookie = await first();
    const { id } = (await staffed.ask('/api/me', { cookie })).json.person as { id: string };
    for (const [verb, body] of [
      ['remove', {}],
      ['reset', {}],
      ['role', { role: 'reader' }],
    ] as const)
      expect((await staffed.ask(`/api/people/${id}/${verb}`, { cookie }, body)).code).toBe(
        'PEOPLE_LAST_ADMINISTRATOR',
      );
    await staffed.person('administrator', 'Second');
    const answer = await staffed.ask(`/api/people/${id}/role`, { cookie }, { role: 'reader' });
    expect(answer.status).toBe(200);
  });
});

describe('wrong passwords', () => {
  test('a name nobody has is answered and slowed as one that somebody has', async () => {
    await first();
    const course = async (name: string) => {
      const answers: unknown[] = [];
      for (let i = 0; i < 8; i += 1) {
        const { status, code, json, headers } = await signIn(name, `wrong ${i}`);
        answers.push([status, code, json.detail, json.fix, headers['content-length']]);
      }
      return answers;
    };
    const known = await course('Ann Byrne');
    const unknown = await course('Nobody Here');
    expect(unknown).toEqual(known);
    expect(known.map((each) => (each as [number])[0])).toEqual([
      ...[401, 401, 401, 401, 401, 429, 429, 429],
    ]);
  });

  test('are counted over a restart, told in the ledger, and reset opens the name again', async () => {
    const cookie = await first();
    const { id } = await staffed.person('operator', 'Bob');
    const hash = await hashPassword(password);
    staffed.people.book.alter(id, null, (row) => ({
      ...row,
      password: hash,
      failures: limits.signInFailuresMax,
    }));
    expect((await signIn('Bob', password)).code).toBe('PEOPLE_SHUT');
    // On the box, while the agent runs.
    const { secret } = new Book(staffed.folder).reset(id, 'box', staffed.nowMs);
    staffed.people.tend();
    expect(staffed.notes.at(-1)).toMatchObject({ what: 'reset', person: id, by: 'box' });
    expect((await accept(secret, { password: other })).status).toBe(200);
    expect((await signIn('Bob', other)).status).toBe(200);
    for (let i = 0; i < 5; i += 1) await signIn('Bob', 'wrong');
    expect(staffed.notes.at(-1)).toMatchObject({ what: 'password-wrong', person: id });
    expect((await staffed.ask('/api/alarms', { cookie })).status).toBe(200);
  });
});

test('changes made while no agent ran are entered when one starts, each once', async () => {
  const book = new Book(staffed.folder);
  book.invite({ name: 'Bob', role: 'reader', language: 'en', email: null }, 'box', 1);
  const again = staffed.opened();
  again.tend();
  again.tend();
  expect(staffed.notes.map(({ what, by }) => [what, by])).toEqual([['invited', 'box']]);
});
