import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { calendarText } from '#agent/notify/calendar-text.ts';
import { RotaBook, type RotaBookParts } from '#agent/notify/rota-book.ts';
import { whoIsOn } from '#rules/telling/rota.ts';

const now = Date.UTC(2026, 10, 25, 9);
const calendar = (rule = '', summary = 'Anna'): string =>
  [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//test//EN',
    'BEGIN:VEVENT',
    'UID:a',
    'DTSTAMP:20260101T000000Z',
    'DTSTART:20261101T000000Z',
    'DTEND:20261102T000000Z',
    rule === '' ? 'X-NONE:1' : `RRULE:${rule}`,
    `SUMMARY:${summary}`,
    'END:VEVENT',
    'END:VCALENDAR',
  ].join('\r\n');

function folderWith(files: Readonly<Record<string, string>>): string {
  const parent = mkdtempSync(join(tmpdir(), 'forebond-rota-'));
  onTestFinished(() => rmSync(parent, { recursive: true, force: true }));
  const folder = join(parent, 'site');
  mkdirSync(folder);
  for (const [name, text] of Object.entries(files)) writeFileSync(join(parent, name), text);
  return folder;
}

const bookOf = (folder: string | null, more: Partial<RotaBookParts> = {}): RotaBook =>
  new RotaBook({
    written: () => [{ calendar: 'rota.ics' }],
    timezone: () => 'UTC',
    place: () => ({ folder, hosts: [] }),
    nowMs: () => now,
    ...more,
  });
const on = (book: RotaBook) => whoIsOn(book.now(), now, 'l/s', null);

describe('a file', () => {
  test('is read, and says who is on call', async () => {
    const book = bookOf(folderWith({ 'site/rota.ics': calendar('FREQ=DAILY') }));
    expect(on(book).causes[0]).toMatch(/has not been read yet/);
    await book.read();
    expect(on(book)).toEqual({ who: ['Anna'], causes: [] });
  });
  test('that is gone keeps what it said, with the cause', async () => {
    const folder = folderWith({ 'site/rota.ics': calendar('FREQ=DAILY') });
    const book = bookOf(folder);
    await book.read();
    rmSync(join(folder, 'rota.ics'));
    await book.read();
    expect(on(book)).toEqual({
      who: ['Anna'],
      causes: ['The calendar rota.ics cannot be read: there is no such file'],
    });
  });
  test('outside the folder of the site file is not read, nor by a link', async () => {
    const folder = folderWith({ 'secret.ics': calendar('FREQ=DAILY') });
    symlinkSync('../secret.ics', join(folder, 'rota.ics'));
    for (const name of ['../secret.ics', 'rota.ics'])
      await expect(calendarText(name, { folder, hosts: [] })).rejects.toThrow(
        'it lies outside the folder of the site file',
      );
  });
  test('longer than the bound is refused unread', async () => {
    const folder = folderWith({ 'site/rota.ics': 'x'.repeat(limits.rotaFileBytesMax + 1) });
    await expect(calendarText('rota.ics', { folder, hosts: [] })).rejects.toThrow(
      /longer than 1 MiB/,
    );
  });
  test('whose rule never comes to an end is given up', async () => {
    const text = calendar('FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30');
    const book = bookOf(folderWith({ 'site/rota.ics': text }), { workMs: 1_500 });
    await book.read();
    expect(on(book).who).toEqual([]);
  });
});

describe('an address', () => {
  async function served(answer: RequestListener): Promise<string> {
    const server = createServer(answer).listen(0, '127.0.0.1');
    onTestFinished(() => {
      server.closeAllConnections();
      server.close();
    });
    await new Promise((done) => server.once('listening', done));
    return `http://127.0.0.1:${(server.address() as AddressInfo).port}/rota.ics`;
  }
  const hosts = ['127.0.0.1'];
  test('of a listed host is read', async () => {
    const url = await served((_, reply) => reply.end(calendar()));
    expect(await calendarText(url, { folder: null, hosts })).toContain('SUMMARY:Anna');
  });
  test('that is not listed is not asked: no http, nothing inside the plant, nothing link-local', async () => {
    let asked = 0;
    const url = await served((_, reply) => {
      asked += 1;
      reply.end(calendar());
    });
    const refused = (name: string): Promise<string> =>
      calendarText(name, { folder: null, hosts: [] });
    await expect(refused(url)).rejects.toThrow('it is not an https address');
    for (const host of ['127.0.0.1', '10.0.0.5', '169.254.169.254', '[fe80::1]', 'localhost'])
      await expect(refused(`https://${host}/rota.ics`)).rejects.toThrow(/inside the plant/);
    expect(asked).toBe(0);
  });
  test('that sends on is not followed', async () => {
    const url = await served((_, reply) =>
      reply.writeHead(302, { location: 'http://127.0.0.1:9/' }).end(),
    );
    await expect(calendarText(url, { folder: null, hosts })).rejects.toThrow(
      'it sends on to another address',
    );
  });
  test('that answers with an error, too much, or nothing in time', async () => {
    const place = { folder: null, hosts, fetchMs: 300 };
    const broken = await served((_, reply) => reply.writeHead(503).end());
    await expect(calendarText(broken, place)).rejects.toThrow('it answered 503');
    const endless = await served((_, reply) => {
      const more = (): void => {
        if (!reply.destroyed) reply.write(Buffer.alloc(65_536), () => setImmediate(more));
      };
      more();
    });
    await expect(calendarText(endless, { ...place, fetchMs: 5_000 })).rejects.toThrow(
      /longer than 1 MiB/,
    );
    const silent = await served(() => undefined);
    await expect(calendarText(silent, place)).rejects.toThrow('no answer came within 0.3 s');
  });
});
