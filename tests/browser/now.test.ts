/** What a card says of now is what its rule judges; a state is a word with since when; what is due stands once. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { published } from '../agent-process.ts';
import { post } from '../wire/agent-http.ts';
import { type BenchLine, startBenchLine } from './bench-line.ts';
import { launch, open, sidewaysPx } from './chromium.ts';

const plain = (topic: string, more: object) => ({ topic, payload: { kind: 'plain' }, ...more });
const zone = (n: number) => plain(`oven/zone-${n}`, { unit: 'Cel', resolution: 0.1 });
const site = {
  site: 'bench-works',
  timezone: 'Europe/Dublin',
  lines: {
    'mounts-2': {
      'oven-1': {
        kind: 'custom',
        signals: {
          'zone-1': zone(1),
          'zone-2': zone(2),
          fan: plain('oven/fan', { unit: '1', resolution: 1, range: ['0 1', '1 1'] }),
        },
        rules: {
          'zones-apart': {
            kind: 'disagree',
            signals: ['zone-1', 'zone-2'],
            allowed: '10 K',
            steady: '30 K',
            steady_for: '1 s',
            on_delay: '0 s',
            priority: 'medium',
            consequence: 'Uneven heat.',
            actions: ['Compare the sensors.'],
          },
          'fan-off': {
            kind: 'band',
            signal: 'fan',
            low: '0.5 1',
            on_delay: '0 s',
            priority: 'medium',
            consequence: 'No air.',
            actions: ['See whether the fan runs.'],
          },
        },
      },
    },
  },
};

let line: BenchLine;
let browser: Browser;
let readings: Readonly<Record<string, number>> = { 'zone-1': 80, 'zone-2': 94, fan: 0 };
let timer: ReturnType<typeof setInterval>;
const send = async (): Promise<void> => {
  for (const [name, value] of Object.entries(readings))
    await published(line.client, `oven/${name}`, String(value));
};
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(site), launch()]);
  await send();
  timer = setInterval(() => void send().catch(() => undefined), 700);
}, 90_000);
afterAll(async () => {
  clearInterval(timer);
  await browser?.close();
  await line?.stop();
});

const spaced = (text: string | null): string => (text ?? '').replaceAll('\u00a0', ' ');

test('zones apart: now is how far apart they are, with its unit, on the card and its ruler', async () => {
  const { page, context, complaints } = await open(browser, `${line.agent.page}/#/`);
  const card = page.locator('.entry', { hasText: 'zone' });
  await card.waitFor({ timeout: 30_000 });
  await card.getByText(/Now 14\.0.°C apart\./).waitFor();
  readings = { ...readings, 'zone-2': 96.5 };
  await card.getByText(/Now 16\.5.°C apart\./).waitFor({ timeout: 20_000 });
  expect(spaced(await card.textContent())).not.toMatch(/Now \d+\.\d °C\./);
  await card.locator('.ruler-plain[aria-label*="16.5"]').waitFor();
  await card.locator('.sentence').click();
  await page.locator('.alarm .ruler-plain').waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});

test('a fan is on or off, with since when, and no ruler is drawn of it', async () => {
  const { page, context, complaints } = await open(
    browser,
    `${line.agent.page}/#/station/${encodeURIComponent('mounts-2/oven-1')}`,
  );
  const row = page.locator('.signal-row', { hasText: 'Fan' });
  await row.getByText(/^off (since \d\d:\d\d|for .* or longer)$/).waitFor();
  expect(await row.locator('.ruler').count()).toBe(0);
  expect(spaced(await row.locator('.value').textContent())).toBe('off');
  // Its alarm's card, too.
  await page.goto(`${line.agent.page}/#/`);
  const card = page.locator('.entry', { hasText: 'fan' });
  await card.getByText('Now off.').waitFor({ timeout: 20_000 });
  expect(await card.locator('.ruler').count()).toBe(0);
  await card.locator('.sentence').click();
  readings = { ...readings, fan: 1 };
  await page
    .locator('.where')
    .getByText(/^on since \d\d:\d\d$/)
    .waitFor({ timeout: 30_000 });
  expect(await sidewaysPx(page)).toBe(0);
  expect(complaints).toEqual([]);
  await context.close();
});

test('a rack that is held for two reasons is due once, with both', async () => {
  const held = { what: 'rack', item: 'rack 41', reason: 'tested thin' };
  await post(line.agent.page, '/api/holds', held);
  const { page, context } = await open(browser, `${line.agent.page}/#/line`);
  // A second one, as a rule sets it: people set no two of the same rack.
  await page.route('**/api/holds', async (route) => {
    const answer = await route.fetch();
    const { holds } = await answer.json();
    const other = { ...holds[0], id: 'other', reason: 'fell from its hook' };
    await route.fulfill({ json: { holds: [...holds, other], truncated: false } });
  });
  await page.goto(`${line.agent.page}/#/due`);
  await page.reload();
  await page.getByText('fell from its hook').waitFor();
  await page.getByText('tested thin').waitFor();
  expect(await page.getByRole('link', { name: 'Rack 41' }).count()).toBe(1);
  await context.close();
});
