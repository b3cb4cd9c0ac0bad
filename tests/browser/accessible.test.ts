/** Every view held against axe's rules (WCAG 2.2 A and AA and its best practices), and against its own width. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { post } from '../wire/agent-http.ts';
import { type BenchLine, startBenchLine } from './bench-line.ts';
import { launch, type OpenOptions, open, sidewaysPx } from './chromium.ts';
import { goTo, places, withRuns } from './places.ts';

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

async function faults(page: Page): Promise<string[]> {
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
  ['light, phone, German', { ground: 'light', language: 'de-DE' }],
  ['dark, phone, German', { ground: 'dark', language: 'de-DE' }],
];

describe.each(looks)('%s', (_, look) => {
  test('axe finds nothing on any view, and none is wider than what shows', async () => {
    const { page, context, complaints } = await open(browser, `${line.agent.page}/#/`, look);
    const found: string[] = [];
    await withRuns(page);
    for (const place of places(occurrence)) {
      const [name] = place;
      await goTo(page, place);
      found.push(...(await faults(page)).map((fault) => `${name}: ${fault}`));
      const wider = await sidewaysPx(page);
      if (wider > 0) found.push(`${name}: ${wider} px wider than what shows`);
    }
    expect(found).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  }, 180_000);
});
