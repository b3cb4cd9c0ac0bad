/** A person's own sessions over HTTP: seen by themselves alone, each ended by them. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hashPassword } from '#agent/people/secrets.ts';
import { deviceWords } from '#agent/web/device-words.ts';
import { givenCookie, Staffed } from './staffed.ts';

const password = 'purple tractor under ninth bridge';
const phone =
  'Mozilla/5.0 (Linux; Android 14; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/131.0.0.0 Mobile Safari/537.36';
const computer = 'Mozilla/5.0 (X11; Linux x86_64; rv:133.0) Gecko/20100101 Firefox/133.0';

let staffed: Staffed;
let ann: { id: string; cookie: string };
let bob: { id: string; cookie: string };
beforeEach(async () => {
  staffed = await Staffed.open();
  ann = await staffed.person('administrator', 'Ann');
  bob = await staffed.person('operator', 'Bob');
  const hash = await hashPassword(password);
  for (const { id } of [ann, bob])
    staffed.people.book.alter(id, null, (row) => ({ ...row, password: hash }));
});
afterEach(async () => {
  expect(staffed.faults).toEqual([]);
  await staffed.close();
});

const signIn = async (name: string, userAgent: string): Promise<string> => {
  const answer = await staffed.ask('/api/session', { 'user-agent': userAgent }, { name, password });
  expect(answer.status, answer.text).toBe(200);
  return givenCookie(answer);
};
interface Seen {
  id: string;
  on: string | null;
  made: number;
  used: number;
  ends: number;
  here: boolean;
}
const seenBy = async (cookie: string): Promise<Seen[]> =>
  (await staffed.ask('/api/me/sessions', { cookie })).json.sessions as Seen[];
const end = (cookie: string, id: string) =>
  staffed.ask(`/api/me/sessions/${id}/end`, { cookie }, {});
const isIn = async (cookie: string): Promise<boolean> =>
  (await staffed.ask('/api/me', { cookie })).json.person !== null;

test('each with its device, since when and when last used; the one that asks is marked', async () => {
  const began = staffed.nowMs;
  staffed.nowMs += 60_000;
  const onPhone = await signIn('Ann', phone);
  staffed.nowMs += 60_000;
  await signIn('Bob', computer);
  expect(await seenBy(onPhone)).toEqual([
    {
      ...{ id: expect.stringMatching(/^[0-9a-f]{16}$/), on: 'Chrome, Android', here: true },
      ...{ made: began + 60_000, used: began + 120_000, ends: began + 120_000 + 8 * 3_600_000 },
    },
    expect.objectContaining({ on: null, made: began, used: began, here: false }),
  ]);
  // No hash that is kept, and no cookie, stands in the answer.
  const { text } = await staffed.ask('/api/me/sessions', { cookie: onPhone });
  expect(text).not.toMatch(/[0-9a-f]{64}/);
});

test('ending one ends it alone, and is in the ledger', async () => {
  const onPhone = await signIn('Ann', phone);
  const [lost] = (await seenBy(ann.cookie)).filter(({ on }) => on === 'Chrome, Android');
  expect((await end(ann.cookie, lost!.id)).status).toBe(200);
  expect([await isIn(onPhone), await isIn(ann.cookie), await isIn(bob.cookie)]).toEqual([
    false,
    true,
    true,
  ]);
  expect(await seenBy(ann.cookie)).toHaveLength(1);
  expect(staffed.notes.at(-1)).toMatchObject({ what: 'signed-out', person: ann.id, by: ann.id });
  expect(await end(ann.cookie, lost!.id)).toMatchObject({
    status: 404,
    code: 'PEOPLE_SESSION_UNKNOWN',
  });
});

test('ending the one that asks takes its cookie away', async () => {
  const [here] = await seenBy(ann.cookie);
  const answer = await end(ann.cookie, here!.id);
  expect(String(answer.headers['set-cookie'])).toMatch(/=; .*Max-Age=0/);
  expect(await isIn(ann.cookie)).toBe(false);
});

test('nobody sees or ends those of another, an administrator neither; nor does a token', async () => {
  const [ofBob] = await seenBy(bob.cookie);
  expect(await end(ann.cookie, ofBob!.id)).toMatchObject({
    status: 404,
    code: 'PEOPLE_SESSION_UNKNOWN',
  });
  expect(await isIn(bob.cookie)).toBe(true);
  const given = { label: 'wall', role: 'administrator', forMs: 86_400_000 } as const;
  const { token } = staffed.people.book.addToken(given, ann.id, staffed.nowMs);
  const headers = { authorization: `Bearer ${token}` };
  for (const body of [undefined, {}]) {
    const path = body === undefined ? '/api/me/sessions' : `/api/me/sessions/${ofBob!.id}/end`;
    expect(await staffed.ask(path, headers, body)).toMatchObject({
      status: 403,
      code: 'PEOPLE_NOT_BY_TOKEN',
    });
  }
});

test('what is over is not shown, and the device outlives a restart and the password given again', async () => {
  const onPhone = await signIn('Ann', phone);
  const again = await staffed.ask('/api/session/again', { cookie: onPhone }, { password });
  const renewed = givenCookie(again);
  expect((await seenBy(renewed)).find(({ here }) => here)?.on).toBe('Chrome, Android');
  expect(
    staffed
      .opened()
      .sessions.of(ann.id)
      .some(({ on }) => on === 'Chrome, Android'),
  ).toBe(true);
  staffed.nowMs += 7 * 3_600_000;
  await isIn(renewed);
  staffed.nowMs += 2 * 3_600_000;
  expect(await seenBy(renewed)).toHaveLength(1);
});

describe('what a browser says of itself', () => {
  test.each([
    [phone, 'Chrome, Android'],
    [computer, 'Firefox, Linux'],
    [
      'Mozilla/5.0 (iPhone; CPU iPhone OS 18_1 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.1 Mobile/15E148 Safari/604.1',
      'Safari, iPhone',
    ],
    [
      'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/131.0.0.0 Safari/537.36 Edg/131.0.0.0',
      'Edge, Windows',
    ],
    ['curl/8.5.0', null],
    ['', null],
    [undefined, null],
  ])('%s', (text, words) => expect(deviceWords(text)).toBe(words));
  test('nothing that is sent is kept but these words', () => {
    expect(deviceWords(`<script>${'x'.repeat(9_000)} Firefox/1`)).toBeNull();
    expect(deviceWords('<b>Firefox/1 Linux')).toBe('Firefox, Linux');
  });
});
