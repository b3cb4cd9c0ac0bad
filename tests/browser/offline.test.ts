/** The page opened without the agent: the last state with its age, plainly old, and nothing can be acknowledged. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { en } from '../../dashboards/text/en.ts';
import { alarms } from '../wire/agent-http.ts';
import { type BenchLine, startBenchLine } from './bench-line.ts';
import { cableTo } from './cable.ts';
import { launch, open, sidewaysPx } from './chromium.ts';
import { startStaffed } from './staffed-page.ts';

let line: BenchLine;
let browser: Browser;
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(), launch()]);
  await line.floor(118);
}, 90_000);
afterAll(async () => {
  await browser?.close();
  await line?.stop();
});

const isKept = (page: Page): Promise<boolean> =>
  page.evaluate(async () => (await caches.match('/last-state')) !== undefined);

/** The worker has its shell, and the state is kept. */
async function readied(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready);
  await expect
    .poll(
      () =>
        page.evaluate(
          async () =>
            (await caches.match('/')) !== undefined &&
            (await caches.match('/last-state')) !== undefined,
        ),
      { timeout: 30_000 },
    )
    .toBe(true);
}

const another = async (context: BrowserContext, url: string): Promise<Page> => {
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await page.goto(url);
  return page;
};

const lastSeen = /^Last seen \d\d:\d\d, \d+\s(s|min) ago; no connection\.$/;

test('with the network off it shows what it last knew and how old that is; back on, it is live', async () => {
  const cable = await cableTo(line.agent.page);
  const { page: first, context } = await open(browser, `${cable.page}/#/`);
  await first.locator('.band-people .entry').first().waitFor();
  await readied(first);
  await first.close();
  cable.pull();

  const page = await another(context, `${cable.page}/#/`);
  await page.getByText(lastSeen).waitFor();
  const card = page.locator('.band-people .entry', { hasText: 'past the limit' });
  await card.waitFor();
  expect(await page.locator('.heard').count()).toBe(0);
  await card.locator('.sentence').click();
  // Nothing can be acknowledged or put aside; what to do still stands there.
  await page.getByText(en.keptNoAnswer).waitFor();
  expect(await page.getByRole('button', { name: en.acknowledge }).count()).toBe(0);
  expect(await page.getByText(en.more).count()).toBe(0);
  await page.getByText('Lower the heat at the outside control.').waitFor();
  await page.getByText(lastSeen).waitFor();
  expect(await sidewaysPx(page)).toBe(0);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  expect((await alarms(line.agent.page)).some(({ state }) => state === 'acknowledged')).toBe(false);

  cable.plug();
  await page.locator('.heard').waitFor();
  expect(await page.locator('.stale').count()).toBe(0);
  await page.getByRole('button', { name: en.acknowledge }).waitFor();
  await context.close();
  cable.close();
}, 120_000);

test('what is older than a day, or of another build, is not shown', async () => {
  const cable = await cableTo(line.agent.page);
  const { page: first, context } = await open(browser, `${cable.page}/#/line`);
  await readied(first);
  await first.close();
  cable.pull();
  for (const change of [{ heardAt: Date.now() - 86_500_000 }, { build: 'another' }]) {
    const page = await context.newPage();
    await page.goto(`${cable.page}/#/line`);
    await page.evaluate(async (other) => {
      const cache = await caches.open('state-1');
      const kept = await (await cache.match('/last-state'))!.json();
      await cache.put('/last-state', new Response(JSON.stringify({ ...kept, ...other })));
    }, change);
    await page.reload();
    await page.getByText(en.waitingLong).waitFor({ timeout: 30_000 });
    expect(await page.locator('.counts').count()).toBe(0);
    await page.close();
  }
  await context.close();
  cable.close();
}, 120_000);

test('whoever signs out leaves nothing kept on the phone', async () => {
  const staffed = await startStaffed();
  const page = await staffed.visit(browser, staffed.administrator, '#/me');
  await readied(page);
  await page.getByRole('button', { name: en.signOut }).click();
  await page.getByRole('heading', { name: en.signIn }).waitFor();
  expect(await isKept(page)).toBe(false);
  await page.context().close();
  await staffed.stop();
}, 120_000);
