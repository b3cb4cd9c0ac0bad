/** What could not be read is said to be unread: never as if there were nothing, and with who may read it. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { en } from '../../dashboards/text/en.ts';
import { launch } from './chromium.ts';
import { type Staffed, startStaffed } from './staffed-page.ts';

let staffed: Staffed;
let browser: Browser;
let operator: string;
let engineer: string;
beforeAll(async () => {
  [staffed, browser] = await Promise.all([startStaffed(), launch()]);
  operator = await staffed.join('Bob Doyle', 'operator');
  engineer = await staffed.join('Eve Moore', 'engineer');
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await staffed?.stop();
});

/** What a view says where there is nothing: none of it may stand where nothing could be read. */
const nothings = [
  en.personNone,
  en.tokenNone,
  en.backNone,
  en.runsNone,
  en.whoIsToldNobody,
  en.unknownRun,
  en.invitationNone,
  en.chartEmpty,
];

const shown = async (page: Page): Promise<string> =>
  (await page.locator('main').textContent()) ?? '';

test.each([
  ['operator', () => operator],
  ['engineer', () => engineer],
] as const)(
  'people as %s: who may see it, no list that seems empty, no form',
  async (role, cookie) => {
    const page = await staffed.visit(browser, cookie(), '#/people');
    await page.getByText(en.peopleWho.replace('{$role}', role)).waitFor();
    expect(await page.locator('main form, main input, main button, main summary').count()).toBe(0);
    const text = await shown(page);
    expect(nothings.filter((each) => text.includes(each))).toEqual([]);
    await page.context().close();
  },
);

test('a right that was lost meanwhile is said as well, and the form is gone', async () => {
  const page = await staffed.visit(browser, staffed.administrator, '#/line');
  const refusal = { ...problem, status: 403, code: 'PEOPLE_MAY_NOT' };
  for (const path of ['**/api/people', '**/api/tokens'])
    await page.route(path, (route) => route.fulfill(answerOf(refusal)));
  await go(page, '#/people');
  await page.getByText(problem.detail).first().waitFor();
  expect(await page.locator('main form, main input, main summary').count()).toBe(0);
  const text = await shown(page);
  expect(nothings.filter((each) => text.includes(each))).toEqual([]);
  await page.context().close();
});

const problem = {
  type: 'about:blank',
  title: 'Service Unavailable',
  status: 503,
  code: 'STORE_DISK_FULL',
  detail: 'The disk refuses to be read.',
  fix: 'Make room on it.',
};
const answerOf = (body: typeof problem) => ({
  status: body.status,
  contentType: 'application/problem+json',
  body: JSON.stringify(body),
});

async function go(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
}

const id = encodeURIComponent;
/** Every view that reads for itself, and what it reads. */
const reading: readonly (readonly [hash: string, paths: string | RegExp])[] = [
  ['#/people', '**/api/{people,tokens}'],
  ['#/me', '**/api/me/sessions'],
  ['#/telling', '**/api/telling'],
  ['#/back', '**/api/alarms?**'],
  ['#/runs', '**/api/runs?**'],
  [`#/run/${id('mounts-2/oven-1@1')}`, '**/api/runs/**'],
  ['#/performance', '**/api/performance'],
  [`#/signal/${id('mounts-2/oven-1/floor')}`, '**/series?**'],
  [`#/station/${id('mounts-2/mixer-3')}`, /api\/(marks|signals\/)/],
];

describe.each(reading)('%s', (hash, paths) => {
  test('refused, it says why and what to do', async () => {
    const page = await staffed.visit(browser, staffed.administrator, '#/line');
    await page.route(paths, (route) => route.fulfill(answerOf(problem)));
    await go(page, hash);
    await page.getByText(problem.detail).first().waitFor();
    const text = await shown(page);
    expect(text).toContain(problem.fix);
    expect(nothings.filter((each) => text.includes(each))).toEqual([]);
    await page.context().close();
  });
  test('without an answer it says that, and reads again when the agent answers', async () => {
    const page = await staffed.visit(browser, staffed.administrator, '#/line');
    await page.route(paths, (route) => route.abort());
    await go(page, hash);
    await page.getByText(en.unread).first().waitFor();
    const text = await shown(page);
    expect(nothings.filter((each) => text.includes(each))).toEqual([]);
    await page.unroute(paths);
    const again = page.getByRole('button', { name: en.readAgain });
    const readEach = async (): Promise<number> => {
      if ((await again.count()) > 0) await again.first().click();
      return again.count();
    };
    await expect.poll(readEach, { timeout: 20_000 }).toBe(0);
    await page.context().close();
  });
});

test('a first load that is refused says why, not that nobody answers', async () => {
  const context = await browser.newContext();
  const [name = '', value = ''] = staffed.administrator.split('=', 2);
  await context.addCookies([{ name, value, url: staffed.agent.page }]);
  const page = await context.newPage();
  await page.route('**/api/holds', (route) => route.fulfill(answerOf(problem)));
  await page.goto(`${staffed.agent.page}/#/`);
  await page.getByText(problem.detail).waitFor({ timeout: 20_000 });
  expect(await page.getByText(en.waitingLong).count()).toBe(0);
  await context.close();
});
