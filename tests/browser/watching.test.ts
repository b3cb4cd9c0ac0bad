/** What is watched, at phone size: never heard and out of service are said, until they are no more. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { published } from '../agent-process.ts';
import { get, post, until } from '../wire/agent-http.ts';
import { type BenchLine, startBenchLine } from './bench-line.ts';
import { launch, open, sidewaysPx } from './chromium.ts';

const plain = (topic: string) => ({
  topic,
  payload: { kind: 'plain' },
  unit: 'Cel',
  resolution: 0.1,
});
const said = { consequence: 'Residue can light itself.', actions: ['Leave.'] };
const site = {
  site: 'watch-works',
  timezone: 'Europe/Dublin',
  lines: {
    m: {
      oven: {
        kind: 'custom',
        signals: {
          surface: plain('oven/surface'),
          air: plain('oven/air'),
          duct: { ...plain('oven/+/duct'), names: ['place'] },
        },
        rules: {
          'duct-hot': {
            kind: 'band',
            signal: 'duct',
            high: '92 Cel',
            priority: 'high',
            signal_word: 'WARNING',
            ...said,
            consequence: 'A duct burns.',
          },
          hot: { kind: 'band', signal: 'surface', high: '92 Cel', priority: 'high', ...said },
          apart: {
            kind: 'disagree',
            signals: ['surface', 'air'],
            allowed: '5 K',
            steady: '1 K',
            steady_for: '1 min',
            priority: 'high',
            signal_word: 'WARNING',
            ...said,
            consequence: 'Residue heats itself.',
          },
        },
      },
    },
  },
};

let line: BenchLine;
let browser: Browser;
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(site), launch()]);
}, 120_000);
afterAll(async () => {
  await browser.close();
  await line.stop();
});

test('never heard stands in Attention and in what is watched, until it is heard', async () => {
  await published(line.client, 'oven/surface', '20');
  await until(
    () => get<{ watched: number }>(line.agent.page, '/api/coverage'),
    ({ body }) => body.watched === 1,
  );
  const { page, context, complaints } = await open(browser, `${line.agent.page}/#/`);
  await page.getByText('Never heard, where people can be hurt').waitFor();
  await page.getByText('Oven air has never been heard.').waitFor();
  await page.getByText('Oven duct: no place heard yet.').waitFor();
  await page.getByText(/^It should come on oven\/\+\/duct\. /).waitFor();
  await page.getByText(/^No alarm stands\. 2 hazards to people are not watched\. /).waitFor();
  expect(await page.getByText('Nothing abnormal').count()).toBe(0);
  await page.getByText(/^It should come on oven\/air\. /).waitFor();
  expect(await sidewaysPx(page)).toBe(0);
  expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([]);
  await page.goto(`${line.agent.page}/#/coverage`);
  const row = page.locator('.hazard-not-watched', { hasText: 'Residue heats itself.' });
  await row.getByText(/^Oven air has never been heard\. It should come on oven\/air\./).waitFor();
  expect(await sidewaysPx(page)).toBe(0);
  await page
    .locator('.hazard-not-watched', { hasText: 'A duct burns.' })
    .getByText(/^Oven duct: no place heard yet\. It should come on oven\/\+\/duct\./)
    .waitFor();
  await page.goto(`${line.agent.page}/#/line`);
  await page.getByText(/^No alarm stands\. 2 hazards to people are not watched\. /).waitFor();
  await page.goto(`${line.agent.page}/#/coverage`);
  await published(line.client, 'oven/air', '20');
  await page.locator('.hazard-watched', { hasText: 'Residue heats itself.' }).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);

test('a hazard whose only rule is out of service is not watched, and says who put it there', async () => {
  await published(line.client, 'oven/surface', '20');
  const { page, context, complaints } = await open(browser, `${line.agent.page}/#/coverage`);
  const of = (state: string) =>
    page.locator(`.hazard-${state}`, { hasText: 'Residue can light itself.' });
  await of('watched').waitFor();
  const done = await post(line.agent.page, '/api/alarms/m%2Foven%2Fhot/out-of-service', {
    reason: 'new gauge',
  });
  expect(done.status).toBe(200);
  await of('not-watched').getByText('Reason: new gauge').waitFor();
  await of('not-watched')
    .getByText(/Out of service, since \d\d:\d\d.*Stays so until/)
    .waitFor();
  expect(await sidewaysPx(page)).toBe(0);
  expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([]);
  expect(complaints).toEqual([]);
  await context.close();
}, 120_000);
