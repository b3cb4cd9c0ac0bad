import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { alarms } from '../wire/agent-http.ts';
import { type BenchLine, startBenchLine } from './bench-line.ts';
import { cableTo } from './cable.ts';
import { launch, open, sidewaysPx } from './chromium.ts';

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

test('no network: not sent, stale; and when it is back, live again, and nothing was sent behind anybody', async () => {
  await line.floor(118);
  const cable = await cableTo(line.agent.page);
  const mine = await open(browser, `${cable.page}/#/`, { size: 'desk' });
  const other = await open(browser, `${line.agent.page}/#/`);
  const { page } = mine;
  const floor = '.band-people .entry:has-text("past the limit")';
  await page.locator(`${floor} .sentence`).click();
  const button = page.getByRole('button', { name: 'Acknowledge' });
  await button.waitFor();
  cable.pull();
  await button.click();
  await page.getByText('Not sent.').waitFor({ timeout: 11_000 });
  await page.locator('.stale').waitFor({ timeout: 25_000 });
  // No forecast and no clock goes on while nobody can know.
  expect(await page.locator('.ahead').count()).toBe(0);
  expect(await sidewaysPx(page)).toBe(0);
  expect(await page.locator('.heard').count()).toBe(0);
  cable.plug();
  await page.locator('.heard').waitFor({ timeout: 15_000 });
  expect(await page.locator('.stale').count()).toBe(0);
  await page.waitForTimeout(1_000);
  const [alarm] = (await alarms(line.agent.page)).filter(({ rule }) => /floor-hot/.test(rule));
  expect(alarm!.state).toBe('unacknowledged');
  await other.page.locator(floor).getByText('not answered').waitFor();
  // The same tap again, with a link.
  await button.click();
  await other.page
    .locator(floor)
    .getByText(/^answered \d\d:\d\d/)
    .waitFor();
  expect(other.complaints).toEqual([]);
  await Promise.all([mine.context.close(), other.context.close()]);
  cable.close();
}, 90_000);

test('the agent gone: stale after 15 s, clocks stand, an answer is not sent and says so', async () => {
  // Raised anew: an alarm that nobody has answered.
  await line.floor(90);
  await line.floor(118);
  const { page, context } = await open(browser, `${line.agent.page}/#/`, { size: 'narrow' });
  await page.locator('.band-people .sentence', { hasText: 'past the limit' }).click();
  const button = page.getByRole('button', { name: 'Acknowledge' });
  await button.waitFor();
  await line.agent.kill();
  await button.click();
  await page.getByText('Not sent.').waitFor({ timeout: 11_000 });
  // What else could not be read meanwhile says so too.
  const outcome = page.locator('.outcome', { hasText: 'Not sent.' });
  expect(await outcome.textContent()).toContain('tell the next person yourself');
  // It is not shown as answered, and nothing waits to be sent.
  expect(await page.getByText('not answered', { exact: true }).count()).toBe(1);
  expect(await page.locator('.stale').count()).toBe(0);
  await page.locator('.stale').waitFor({ timeout: 20_000 });
  expect(await page.locator('.stale').textContent()).toMatch(
    /Last seen \d\d:\d\d, \d+\ss ago; no connection\./,
  );
  expect(await page.locator('.heard').count()).toBe(0);
  expect(await sidewaysPx(page)).toBe(0);
  await context.close();
}, 60_000);
