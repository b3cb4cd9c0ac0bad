import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { givenCookie, Staffed } from './staffed.ts';

const hour = 3_600_000;
const password = 'purple tractor under ninth bridge';

let staffed: Staffed;
beforeEach(async () => {
  staffed = await Staffed.open();
});
afterEach(async () => {
  expect(staffed.faults).toEqual([]);
  await staffed.close();
});

/** The first administrator, come in by the link. */
async function first(): Promise<string> {
  const secret = staffed.people.setup.make(false, staffed.nowMs);
  const body = { secret, name: 'Ann Byrne', password };
  const answer = await staffed.ask('/api/invitation/accept', {}, body);
  expect(answer.status, answer.text).toBe(200);
  return givenCookie(answer);
}
const me = async (cookie: string) => (await staffed.ask('/api/me', { cookie })).json;
const isIn = async (cookie: string): Promise<boolean> => (await me(cookie)).person !== null;
const what = () => staffed.notes.map((note) => note.what);

describe('a session', () => {
  test('its cookie: no script reads it, no other site sends it', async () => {
    const secret = staffed.people.setup.make(false, staffed.nowMs);
    const body = { secret, name: 'Ann', password };
    const answer = await staffed.ask('/api/invitation/accept', {}, body);
    const cookie = String(answer.headers['set-cookie']);
    expect(cookie).toMatch(
      /^forebond-\d+=[\w-]{43}; Path=\/; Max-Age=2592000; HttpOnly; SameSite=Strict$/,
    );
  });

  test('ends when nobody used it for 8 h, and not before', async () => {
    const cookie = await first();
    staffed.nowMs += 8 * hour - 1;
    expect(await isIn(cookie)).toBe(true);
    staffed.nowMs += 8 * hour;
    expect(await isIn(cookie)).toBe(false);
    expect((await staffed.ask('/api/alarms', { cookie })).code).toBe('PEOPLE_SIGN_IN_NEEDED');
  });

  test('ends after 30 days however much it is used', async () => {
    const cookie = await first();
    for (let hours = 0; hours < 30 * 24 - 6; hours += 6) {
      staffed.nowMs += 6 * hour;
      expect(await isIn(cookie)).toBe(true);
    }
    staffed.nowMs += 6 * hour;
    expect(await isIn(cookie)).toBe(false);
  });

  test('outlives the process; the disk has its hash alone, for the agent’s own account', async () => {
    const cookie = await first();
    const again = staffed.opened();
    const [, value = ''] = cookie.split('=');
    const known = again.admission.who({ cookie: value, bearer: null, near: false });
    expect(known).toMatchObject({ role: 'administrator', how: 'session' });
    for (const name of ['people.json', 'sessions.json']) {
      const path = join(staffed.folder, name);
      expect(readFileSync(path, 'utf8')).not.toContain(value);
      expect(readFileSync(path, 'utf8')).not.toContain(password);
      expect(statSync(path).mode & 0o777).toBe(0o600);
    }
  });

  test('signing out ends it, at once and for good', async () => {
    const cookie = await first();
    const answer = await staffed.ask('/api/session/end', { cookie }, {});
    expect(String(answer.headers['set-cookie'])).toContain('Max-Age=0');
    expect(await isIn(cookie)).toBe(false);
  });

  test('signing out everywhere ends all of this person’s, and nobody else’s', async () => {
    const one = await first();
    const body = { name: 'ann  BYRNE', password };
    const two = givenCookie(await staffed.ask('/api/session', {}, body));
    const other = await staffed.person('operator');
    expect(await isIn(two)).toBe(true);
    await staffed.ask('/api/session/end-all', { cookie: two }, {});
    expect([await isIn(one), await isIn(two), await isIn(other.cookie)]).toEqual([
      ...[false, false, true],
    ]);
  });

  test('at most so many a person: the one used longest ago makes room', async () => {
    const { id } = await staffed.person('operator');
    const { sessions } = staffed.people;
    const cookies = Array.from({ length: limits.sessionsPerPersonMax + 1 }, () => {
      staffed.nowMs += 1;
      return sessions.begin(id, staffed.nowMs).cookie;
    });
    expect(sessions.use(cookies[0]!, staffed.nowMs)).toBe(null);
    expect(sessions.use(cookies[1]!, staffed.nowMs)).not.toBe(null);
  });

  test('a file that was broken by hand lets nobody in, and says so', async () => {
    const cookie = await first();
    writeFileSync(join(staffed.folder, 'people.json'), '{"format":1,');
    const answer = await staffed.ask('/api/alarms', { cookie });
    expect([answer.status, answer.code]).toEqual([503, 'PEOPLE_FILE_BROKEN']);
  });
});

describe('the password once more', () => {
  const invite = (cookie: string) =>
    staffed.ask('/api/people', { cookie }, { name: `P ${staffed.nowMs}`, role: 'reader' });

  test('is asked for dangerous changes after 5 min, and makes a new cookie', async () => {
    const cookie = await first();
    expect((await invite(cookie)).status).toBe(201);
    staffed.nowMs += limits.provedMs;
    expect((await invite(cookie)).code).toBe('PEOPLE_AGAIN_NEEDED');
    const wrong = await staffed.ask('/api/session/again', { cookie }, { password: 'no' });
    expect([wrong.status, wrong.code]).toEqual([401, 'PEOPLE_SIGN_IN_WRONG']);
    const again = await staffed.ask('/api/session/again', { cookie }, { password });
    const fresh = givenCookie(again);
    expect(fresh).not.toBe(cookie);
    expect((await invite(fresh)).status).toBe(201);
    // A request that was on its way still counts; later the old one is void.
    expect(await isIn(cookie)).toBe(true);
    staffed.nowMs += limits.formerCookieMs;
    expect([await isIn(cookie), await isIn(fresh)]).toEqual([false, true]);
  });

  test('another password ends all other sessions', async () => {
    const one = await first();
    const two = givenCookie(await staffed.ask('/api/session', {}, { name: 'Ann Byrne', password }));
    staffed.nowMs += 1;
    const next = 'seven wet lanterns on gravel';
    const weak = { current: password, next: 'passwordpassword' };
    expect((await staffed.ask('/api/me/password', { cookie: one }, weak)).status).toBe(400);
    const body = { current: password, next };
    const three = givenCookie(await staffed.ask('/api/me/password', { cookie: one }, body));
    expect([await isIn(one), await isIn(two), await isIn(three)]).toEqual([false, false, true]);
    expect((await staffed.ask('/api/session', {}, { name: 'Ann Byrne', password })).status).toBe(
      401,
    );
    expect(what()).toContain('password-changed');
  });
});

describe('tokens', () => {
  test('do what their role may until they end, and nothing dangerous or personal', async () => {
    const cookie = await first();
    const body = { label: 'dashboard on the wall', role: 'engineer', days: 7 };
    const added = await staffed.ask('/api/tokens', { cookie }, body);
    const { secret, token } = added.json as { secret: string; token: { id: string } };
    const bearer = { authorization: `Bearer ${secret}` };
    expect((await staffed.ask('/api/alarms', bearer)).status).toBe(200);
    expect((await staffed.ask('/api/people', bearer)).code).toBe('PEOPLE_MAY_NOT');
    expect((await staffed.ask('/api/site/reload', bearer, {})).code).toBe('PEOPLE_NOT_BY_TOKEN');
    expect((await staffed.ask('/api/session/end', bearer, {})).code).toBe('PEOPLE_NOT_BY_TOKEN');
    expect((await staffed.ask('/api/me', bearer)).json).toMatchObject({
      person: { id: token.id, role: 'engineer' },
    });
    staffed.nowMs += 7 * 24 * hour;
    expect((await staffed.ask('/api/alarms', bearer)).status).toBe(401);
    expect(readFileSync(join(staffed.folder, 'people.json'), 'utf8')).not.toContain(secret);
  });

  test('are void once removed', async () => {
    const cookie = await first();
    const body = { label: 'x', role: 'reader', days: 1 };
    const { secret, token } = (await staffed.ask('/api/tokens', { cookie }, body)).json as {
      secret: string;
      token: { id: string };
    };
    const bearer = { authorization: `Bearer ${secret}` };
    expect((await staffed.ask('/api/alarms', bearer)).status).toBe(200);
    await staffed.ask(`/api/tokens/${token.id}/remove`, { cookie }, {});
    expect((await staffed.ask('/api/alarms', bearer)).status).toBe(401);
    expect(what()).toEqual(expect.arrayContaining(['token-added', 'token-removed']));
  });
});
