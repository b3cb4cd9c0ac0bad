/** Who looks at what is watched finds out why a sensor's messages are refused, and what is overdue. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { published } from '../agent-process.ts';
import { get, until } from '../wire/agent-http.ts';
import { type BenchLine, startBenchLine } from './bench-line.ts';
import { launch, open, sidewaysPx } from './chromium.ts';

const signal = { topic: 'bench/old', payload: { kind: 'plain' }, unit: 'Cel' };
const site = {
  site: 'care-works',
  timezone: 'Europe/Dublin',
  lines: {
    m: {
      bench: {
        kind: 'custom',
        signals: {
          old: { ...signal, calibrated: '2020-01-31', calibrate_every: '12 mo' },
          broken: { ...signal, topic: 'bench/broken' },
          json: { ...signal, topic: 'bench/json', payload: { kind: 'json', value: '/t' } },
        },
      },
    },
  },
};

let line: BenchLine;
let browser: Browser;
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(site), launch()]);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await line.stop();
});

test('both are said in words, with how the message began', async () => {
  await published(line.client, 'bench/broken', '<b>21,5 °C</b>');
  await published(line.client, 'bench/json', { temp: 21.5 });
  await until(
    () => get<{ topics: object[] }>(line.agent.page, '/api/refused'),
    (seen) => seen.body.topics.length > 1,
  );
  const { page, context, complaints } = await open(browser, `${line.agent.page}/#/coverage`);
  await page.getByText('Messages that cannot be used').waitFor();
  await page.getByText('bench/broken: Where the value should stand there is no number.').waitFor();
  // What a device sends is text, whatever it looks like.
  await page.getByText('It began: <b>21,5 °C</b>').waitFor();
  await page.getByText('From bench, ').first().waitFor();
  await page.getByText('Looked for /t; found nothing; there is /temp.').waitFor();
  await page.getByText('Bench old: calibrated 2020-01-31, to hold until 2021-01-31.').waitFor();
  expect(await sidewaysPx(page)).toBe(0);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  expect(complaints).toEqual([]);
  await context.close();
});
