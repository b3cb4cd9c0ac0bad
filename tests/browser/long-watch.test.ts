/** A day's chart at once, and thirty signals live for a while: measured, and nothing may pile up. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type BenchLine, startBenchLine } from './bench-line.ts';
import { launch, open } from './chromium.ts';
import { cellsTick, watchCells, weigh } from './weigh.ts';

let line: BenchLine;
let browser: Browser;
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(), launch()]);
});
afterAll(async () => {
  await browser.close();
  await line.stop();
});

test('a day at 1 Hz is drawn soon after it arrived', async () => {
  const { page, context, complaints } = await open(browser, `${line.agent.page}/#/`);
  await line.floor(90);
  const dayS = 86_400;
  await page.route('**/series?**', async (route) => {
    const until = Number(new URL(route.request().url()).searchParams.get('until'));
    const points = Array.from({ length: 1_000 }, (_, i) => {
      const at = until - dayS * 1_000 + (i + 0.5) * dayS;
      const mean = 80 + 10 * Math.sin(i / 40);
      // An hour without a reading, and one whose readings were not usable.
      if (i > 300 && i < 340) return null;
      if (i > 600 && i < 640) return [at, null, null, null, 86, 86];
      return [at, mean - 1, mean + 1, mean, 86, 0];
    });
    const kept = points.filter((point) => point !== null);
    const body = { unit: 'Cel', points: kept, uncertain: kept.map(() => 0), damage: [] };
    await route.fulfill({ json: body });
  });
  await page.evaluate(() => {
    location.hash = '#/signal/mounts-2%2Foven-1%2Ffloor?span=d1';
  });
  await page.locator('.plot canvas').waitFor();
  await expect
    .poll(() => page.evaluate(() => performance.getEntriesByName('chart-drawn').length))
    .toBeGreaterThan(0);
  const tookMs = await page.evaluate(() => {
    const at = (name: string): number => performance.getEntriesByName(name)[0]!.startTime;
    return at('chart-drawn') - at('chart-arrived');
  });
  console.log(`a day of 1 Hz data: drawn ${tookMs.toFixed(1)} ms after it arrived (aim 100 ms)`);
  expect(tookMs).toBeLessThan(1_000);
  expect(complaints).toEqual([]);
  await context.close();
});

const watchedS = 20;
const signals = 30;

test('thirty signals live: no growth of nodes, listeners or heap', async () => {
  const { page, context, complaints } = await open(browser, `${line.agent.page}/#/`);
  const stop = cellsTick(line.client, signals);
  try {
    const session = await watchCells(page, context, signals);
    await page.waitForTimeout(4_000);
    const before = await weigh(session);
    await page.waitForTimeout(watchedS * 1_000);
    const after = await weigh(session);
    console.log(`${signals} signals, ${watchedS} s: ${JSON.stringify({ before, after })}`);
    // A trail gains a point now and then; nothing else may be kept.
    expect(after.nodes).toBeLessThanOrEqual(before.nodes + 50);
    expect(after.listeners).toBeLessThanOrEqual(before.listeners + 5);
    expect(after.heapBytes).toBeLessThanOrEqual(before.heapBytes * 1.2 + 500_000);
    expect(complaints).toEqual([]);
  } finally {
    stop();
    await context.close();
  }
}, 60_000);
