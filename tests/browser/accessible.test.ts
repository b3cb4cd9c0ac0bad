/** Every view held against axe's rules (WCAG 2.2 A and AA and its best practices), and against its own width. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
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
  const found = await fetch(new URL('/api/alarms', line.agent.page));
  const { alarms } = (await found.json()) as { alarms: { occurrence: string; rule: string }[] };
  occurrence = alarms.find(({ rule }) => rule.endsWith('floor-hot'))!.occurrence;
});
afterAll(async () => {
  await browser.close();
  await line.stop();
});

const id = encodeURIComponent;
/** The place, and what is there once it is drawn. */
const views: readonly (readonly [name: string, hash: () => string, drawn: string])[] = [
  ['attention', () => '#/', '.entry .ruler'],
  ['alarm', () => `#/alarm/${id(occurrence)}`, '.alarm .plot canvas'],
  ['line', () => '#/line', '.cell'],
  ['station', () => `#/station/${id('mounts-2/oven-1')}`, '.signal-row .ruler'],
  ['signal', () => `#/signal/${id('mounts-2/oven-1/floor')}?span=h1`, '.plot canvas'],
  ['runs', () => '#/runs', 'h1'],
  ['holds', () => '#/holds', '.hold-name'],
  ['coverage', () => '#/coverage', '.hazard'],
  ['due', () => '#/due', 'h1'],
  ['look back', () => '#/back', '.past-alarm'],
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
