import fc from 'fast-check';
import decodeQR from 'qr/decode.js';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { qrOf } from '#agent/web/qr.ts';
import { Staffed } from './staffed.ts';

// Whatever is sent, signed in or not: never a fault of ours, and nobody comes in by it.

let staffed: Staffed;
let cookie: string;
beforeAll(async () => {
  staffed = await Staffed.open();
  ({ cookie } = await staffed.person('administrator'));
});
afterAll(() => staffed.close());
afterEach(() => expect(staffed.faults).toEqual([]));

const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.constantFrom('', '\0', '__proto__', 'constructor', 'administrator', '🙂', '\ud800'),
);
const field = fc.constantFrom(
  ...['name', 'role', 'password', 'secret', 'current', 'next', 'language', 'email', 'push'],
  ...['label', 'days', 'minutes', 'reason', 'what', 'item', '__proto__', 'x'],
  ...['endpoint', 'keys', 'expirationTime'],
);
const value = fc.oneof(text, fc.integer(), fc.boolean(), fc.constant(null), fc.jsonValue());
const body = fc.dictionary(field, value, { maxKeys: 5 });
/** Values of the two headers by which one is known; what node:http would not send is left out. */
const header = fc
  .oneof(
    fc.string({ maxLength: 60 }),
    fc.string({ maxLength: 43 }).map((secret) => `Bearer ${secret}`),
    fc.string({ maxLength: 43 }).map((secret) => `forebond-${staffed.web.port}=${secret}`),
    fc.constantFrom('Bearer ', 'Bearer', 'Basic YTpi', ';;=;', 'a=b; a=c'),
  )
  .map((given) => given.replaceAll(/[^\x20-\x7e]/g, '').trim());

/** With these the administrator would lose the session, or everybody would. */
const ending = new Set(['signOut', 'signOutEverywhere', 'listen']);

test('every route, with and without a session, whatever is in it', async () => {
  const routes = staffed.web.routes.filter(({ spec }) => !ending.has(spec.operation));
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...routes),
      body,
      text,
      fc.option(header, { nil: null }),
      async ({ spec }, given, part, known) => {
        const path = spec.url.replaceAll(/:\w+/g, encodeURIComponent(part.toWellFormed() || 'x'));
        const headers: Record<string, string> =
          known === null ? { cookie } : { cookie: known, authorization: known };
        const answer = await staffed.ask(
          path,
          headers,
          spec.method === 'GET' ? undefined : given,
          spec.method,
        );
        expect([spec.operation, answer.text, answer.status === 500]).toEqual([
          spec.operation,
          answer.text,
          false,
        ]);
        if (known !== null && !['readMe', 'readHealth'].includes(spec.operation))
          expect([spec.operation, answer.status < 300]).toEqual([spec.operation, false]);
      },
    ),
    { numRuns: 400 },
  );
  // The one who looks on is still there.
  expect((await staffed.ask('/api/me', { cookie })).json.person).not.toBe(null);
}, 60_000);

test('another site neither reads nor acts, with the cookie or without', async () => {
  const { port } = staffed.web;
  const foreign: Record<string, string>[] = [
    { origin: 'https://evil.example' },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site', origin: `http://127.0.0.1:${port + 1}` },
    { host: `evil.example:${port}` },
  ];
  for (const headers of foreign)
    for (const { spec } of staffed.web.routes) {
      const path = spec.url.replaceAll(/:\w+/g, 'x');
      const given = spec.method === 'POST' ? {} : undefined;
      const answer = await staffed.ask(path, { cookie, ...headers }, given, spec.method);
      expect([spec.operation, answer.status]).toEqual([spec.operation, 403]);
      expect(answer.code).toMatch(/^WEB_(HOST|ORIGIN)_REFUSED$/);
    }
});

test('the QR code of a link is read back as that link', () => {
  const link = `https://box.works.example:8620/#/invitation/${'Qx-_'.repeat(10)}abc`;
  const { size, path } = qrOf(link);
  const scale = 4;
  const width = size * scale;
  const data = new Uint8Array(width * width * 4).fill(255);
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g))
    for (let dy = 0; dy < scale; dy += 1)
      for (let dx = 0; dx < scale; dx += 1) {
        const at = ((Number(y) * scale + dy) * width + Number(x) * scale + dx) * 4;
        data.fill(0, at, at + 3);
      }
  expect(decodeQR({ width, height: width, data })).toBe(link);
});
