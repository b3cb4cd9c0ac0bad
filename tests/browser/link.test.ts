import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type BenchLine, startBenchLine } from './bench-line.ts';
import { launch, open } from './chromium.ts';

let line: BenchLine;
let browser: Browser;
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(), launch()]);
});
afterAll(async () => {
  await browser.close();
  await line.stop();
});

test('a signal lost while in alarm: nobody can tell whether it is over', async () => {
  await line.floor(118);
  const { page, context, complaints } = await open(browser, `${line.agent.page}/#/`);
  const entry = page.locator('.band-people .entry', { hasText: 'past the limit' });
  await entry.waitFor();
  await line.floor(null);
  await entry.getByText('Cannot tell whether this is over.').waitFor({ timeout: 15_000 });
  // The lost signal ranks with the hazard it kept in sight, and its needle is hollow.
  await page.locator('.band-people .entry', { hasText: 'no reading since' }).waitFor();
  await entry.locator('.needle.hollow').waitFor();
  expect(await entry.getByText(/Over since|Now 118/).count()).toBe(0);
  expect(complaints).toEqual([]);
  await context.close();
});

test('the agent gone: stale after 15 s, clocks stand, an answer is not sent and says so', async () => {
  await line.floor(118);
  const { page, context } = await open(browser, `${line.agent.page}/#/`);
  await page.locator('.band-people .sentence', { hasText: 'past the limit' }).click();
  const button = page.getByRole('button', { name: 'Acknowledge' });
  await button.waitFor();
  await line.agent.kill();
  await button.click();
  await page.getByText('Not sent.').waitFor({ timeout: 11_000 });
  expect(await page.locator('.outcome').textContent()).toContain('tell the next person yourself');
  // It is not shown as answered, and nothing waits to be sent.
  expect(await page.getByText('not answered').count()).toBe(1);
  expect(await page.locator('.stale').count()).toBe(0);
  await page.locator('.stale').waitFor({ timeout: 20_000 });
  expect(await page.locator('.stale').textContent()).toMatch(
    /No link\. As of \d\d:\d\d, \d+\ss old\./,
  );
  expect(await page.locator('.heard').count()).toBe(0);
  await context.close();
}, 60_000);
