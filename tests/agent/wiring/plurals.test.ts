/** One of a thing is said as one, wherever the agent prints a count. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { stringify } from 'yaml';
import { AgentError } from '#agent/errors.ts';
import { readSite } from '#agent/site/read-site.ts';
import { DamageBook } from '#agent/wiring/damage-book.ts';
import { SiteDesk } from '#agent/wiring/site-desk.ts';
import { forebond } from '#tests/agent-process.ts';

const site = (high: string): object => ({
  site: 'works',
  timezone: 'Etc/UTC',
  lines: {
    m: {
      room: {
        kind: 'custom',
        signals: { air: { topic: 'm/air', payload: { kind: 'plain' }, unit: 'Cel' } },
        rules: {
          hot: {
            ...{ kind: 'band', signal: 'air', high, priority: 'low' },
            ...{ consequence: 'It is hot.', actions: ['Cool it.'] },
          },
        },
      },
    },
  },
});

function written(name: string, text: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-plurals-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

test('the command line', async () => {
  const file = written('site.yaml', stringify(site('30 Cel')));
  const checked = await forebond(['check', file]);
  expect(checked.stdout).toContain('works: 1 signal, 1 rule armed');
  expect(checked.stdout).toContain('m/room (custom): 1 hazard watched, 0 not watched');
  const csv = written('r.csv', 'time,signal,value\n2026-01-05T06:00:00Z,m/room/air,20\n');
  const replayed = await forebond(['replay', '--site', file, '--from', csv]);
  expect(replayed.stdout).toMatch(/^1 sample, 0\.0 h of data/m);
}, 60_000);

test('the site file that differs, or is faulty', async () => {
  const file = written('site.yaml', stringify(site('30 Cel')));
  const first = await readSite(file);
  if (!first.ok) throw new Error('the site is sound');
  const desk = new SiteDesk({
    file,
    read: readSite,
    line: ({ problem }) => problem,
    refused: null,
    record: () => undefined,
    running: () => first.source,
    change: () => {
      throw new AgentError('SITE_NOT_FROM_FILE');
    },
    fault: (error) => {
      throw error;
    },
  });
  await desk.look();
  expect(desk.note).toBeNull();
  writeFileSync(file, stringify(site('31.5 Cel')));
  await desk.look();
  expect(desk.note).toContain('differs from what runs in 1 setting.');
  writeFileSync(file, stringify({ ...site('30 Cel'), timezone: 'Nowhere/At-All' }));
  await desk.look();
  expect(desk.note).toContain('The site file has 1 problem and');
  await expect(desk.load('p1')).rejects.toThrow('The site file has 1 problem; the first: ');
});

test('stretches that are damaged', () => {
  const book = new DamageBook(() => undefined);
  const stretch = (fromMs: number): void =>
    book.note({ signal: 'm/room/air', fromMs, toMs: fromMs + 1, reason: 'torn' });
  for (let i = 0; i < 6; i += 1) stretch(i * 1_000);
  expect(book.words().at(-1)).toBe('One more stretch of samples is damaged.');
  stretch(9_000);
  expect(book.words().at(-1)).toBe('2 more stretches of samples are damaged.');
});
