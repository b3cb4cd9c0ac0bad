/** Every view held against axe's rules (WCAG 2.2 A and AA and its best practices), and against its own width. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../agent/web/fake-run.ts';
import { post } from '../wire/agent-http.ts';
import { type BenchLine, startBenchLine } from './bench-line.ts';
import { launch, type OpenOptions, open, sidewaysPx } from './chromium.ts';

let line: BenchLine;
let browser: Browser;
let occurrence: string;
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(), launch()]);
  await line.floor(118);
  await line.pressure(560);
  await post(line.agent.page, '/api/holds', {
    what: 'rack',
    item: 'rack 41',
    reason: 'tested thin',
  });
  const out = `/api/alarms/${encodeURIComponent('mounts-2/mixer-3/lost-agitator')}/out-of-service`;
  await post(line.agent.page, out, { reason: 'new probe' });
  const found = await fetch(new URL('/api/alarms', line.agent.page));
  const { alarms } = (await found.json()) as { alarms: { occurrence: string; rule: string }[] };
  occurrence = alarms.find(({ rule }) => rule.endsWith('floor-hot'))!.occurrence;
});
afterAll(async () => {
  await browser.close();
  await line.stop();
});

const id = encodeURIComponent;

/** Oven runs as the agent tells them: the bench has no oven that is loaded. Good ones enough for a corridor. */
const runs = Array.from({ length: 6 }, (_, i) =>
  run({
    id: `mounts-2/oven-1@${i}`,
    opened: run().opened - i * 3_600_000,
    closed: run().opened - i * 3_600_000 + 1_800_000,
    under: i === 0,
  }),
);
const profileOf = (one: (typeof runs)[number]) => ({
  run: one,
  profile: [
    {
      signal: 'mounts-2/oven-1/floor',
      unit: 'Cel',
      points: Array.from({ length: 60 }, (_, i) => {
        const mean = 20 + 60 * (1 - Math.exp(-i / 20)) - (one.under ? 12 : 0);
        return [one.opened + i * 30_000, mean - 1, mean + 1, mean, 3, 0];
      }),
    },
  ],
});

async function withRuns(page: Page): Promise<void> {
  await page.route('**/api/runs?**', (route) =>
    route.fulfill({ json: { runs, truncated: false } }),
  );
  await page.route('**/api/runs/*', async (route) => {
    const asked = decodeURIComponent(new URL(route.request().url()).pathname.split('/').at(-1)!);
    const found = runs.find((one) => one.id === asked) ?? runs[0]!;
    await route.fulfill({ json: profileOf(found) });
  });
}
/** The place, and what is there once it is drawn. */
const views: readonly (readonly [name: string, hash: () => string, drawn: string])[] = [
  ['attention', () => '#/', '.entry .ruler'],
  ['alarm', () => `#/alarm/${id(occurrence)}`, '.alarm .plot canvas'],
  ['line', () => '#/line', '.cell'],
  ['station', () => `#/station/${id('mounts-2/oven-1')}`, '.signal-row .ruler'],
  ['signal', () => `#/signal/${id('mounts-2/oven-1/floor')}?span=h1`, '.plot canvas'],
  ['runs', () => '#/runs', '.past-alarm'],
  ['run', () => `#/run/${id(runs[0]!.id)}`, '.profile-picture'],
  ['holds', () => '#/holds', '.hold-name'],
  ['aside', () => '#/aside', '.aside-name'],
  ['coverage', () => '#/coverage', '.hazard'],
  ['rules', () => '#/rules', '.rule'],
  ['performance', () => '#/performance', '.load'],
  ['due', () => '#/due', 'h1'],
  ['look back', () => '#/back', '.past-alarm'],
  ['my phone', () => '#/phone', '.main-action'],
  ['reader', () => '#/reader', '.choice'],
];

async function faults(page: Page): Promise<string[]> {
  await page.evaluate(() => {
    for (const each of document.querySelectorAll('details')) each.open = true;
  });
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap(({ id: rule, nodes }) =>
    nodes.map(
      ({ html, failureSummary }) => `${rule}: ${html.slice(0, 160)} ${failureSummary ?? ''}`,
    ),
  );
}

const looks: readonly (readonly [string, OpenOptions])[] = [
  ['light, phone', { ground: 'light' }],
  ['dark, phone', { ground: 'dark' }],
  ['light, narrow, text twice as large', { size: 'narrow' }],
  ['dark, desk', { size: 'desk', ground: 'dark' }],
];

describe.each(looks)('%s', (_, look) => {
  test('axe finds nothing on any view, and none is wider than what shows', async () => {
    const { page, context, complaints } = await open(browser, `${line.agent.page}/#/`, look);
    const found: string[] = [];
    await withRuns(page);
    for (const [name, hash, drawn] of views) {
      await page.evaluate((to) => {
        location.hash = to;
      }, hash());
      await page.locator(drawn).first().waitFor();
      found.push(...(await faults(page)).map((fault) => `${name}: ${fault}`));
      const wider = await sidewaysPx(page);
      if (wider > 0) found.push(`${name}: ${wider} px wider than what shows`);
    }
    expect(found).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  }, 60_000);
});
