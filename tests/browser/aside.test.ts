import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { alarms } from '../wire/agent-http.ts';
import { type BenchLine, startBenchLine } from './bench-line.ts';
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

const url = (hash = '#/'): string => `${line.agent.page}/${hash}`;
const pressure = async () =>
  (await alarms(line.agent.page)).find(({ rule }) => rule.endsWith('pressure-low'));

async function openAlarm(page: Page): Promise<void> {
  await page.goto(url());
  await page.locator('.entry .sentence', { hasText: 'pressure' }).first().click();
  await page.getByText('More: pass on, shelve, reset').click();
}

/** Every button that is in sight is large enough for a glove. */
async function buttonsLarge(page: Page): Promise<void> {
  for (const button of await page.locator('main button:visible, main summary:visible').all())
    expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(56);
}

test('an alarm is passed on, shelved for this once, taken out of service and brought back', async () => {
  const { page, context, complaints } = await open(browser, url(), { size: 'phone' });
  await line.pressure(560);
  await openAlarm(page);
  await buttonsLarge(page);

  await page.getByRole('button', { name: 'I cannot take it: next person' }).click();
  await page.locator('.transitions', { hasText: 'Passed on' }).waitFor();
  expect((await pressure())!.state).toBe('unacknowledged');

  // What became of it is said beside it, not beside another form.
  const action = page.locator('.action', { hasText: 'I cannot take it' });
  await action.locator('.outcome').waitFor();
  expect(await page.locator('.outcome').count()).toBe(1);

  // As long as its priority allows, and no longer.
  const shelf = page.locator('form', { has: page.getByRole('button', { name: 'Shelve' }) });
  const lengths = await shelf.locator('.choice label').allTextContents();
  expect(lengths.map((each) => each.replace('\u00a0', ' '))).toEqual([
    ...['15 min', '60 min', '4 h', '8 h'],
  ]);
  // The shortest is taken, unless somebody chooses.
  expect(await shelf.getByLabel('15').isChecked()).toBe(true);
  await shelf.getByLabel('Only for this once').check();
  await shelf.getByLabel(/^Why/).fill('compressor is being serviced');
  await shelf.getByRole('button', { name: 'Shelve' }).click();
  await page.getByText(/Shelved until \d\d:\d\d/).waitFor();
  await page.goto(url('#/aside'));
  await page.getByText('compressor is being serviced').waitFor();
  await page.getByText(/^Ends by itself .*, or before, as soon as it is over\.$/).waitFor();
  await page.getByText('Its condition holds now.').waitFor();
  expect(await sidewaysPx(page)).toBe(0);
  // It is over: the shelf ends by itself, in front of whoever looks.
  await line.pressure(620);
  await page.getByText('Nothing is put aside: ').waitFor({ timeout: 3_000 });

  await line.pressure(560);
  await openAlarm(page);
  const work = page.locator('form', {
    has: page.getByRole('button', { name: 'Take out of service' }),
  });
  await page.locator('summary', { hasText: 'Take out of service' }).click();
  await work.getByLabel(/^Why/).fill('new gauge');
  expect(await work.getByLabel('60').isChecked()).toBe(true);
  await work.getByLabel('until it is brought back').check();
  await work.getByRole('button', { name: 'Take out of service' }).click();
  await page.getByText('Taken out of service.', { exact: true }).waitFor();
  await page.goto(url('#/aside'));
  await page.getByRole('heading', { name: 'Out of service', exact: true }).waitFor();
  await page.getByText('Stays so until somebody brings it back.').waitFor();
  await buttonsLarge(page);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations).toEqual([]);
  await page.getByRole('button', { name: 'Bring back into service' }).click();
  await page.getByText('Nothing is put aside: ').waitFor();
  expect((await pressure())!.state).toBe('unacknowledged');
  expect(complaints).toEqual([]);
  await context.close();
}, 60_000);

test('an alarm that does not stand goes out of service too, from the list', async () => {
  const { page, context } = await open(browser, url('#/aside'));
  await page.getByText('Take another alarm out of service').click();
  await page.getByLabel('Which alarm').selectOption({ label: 'Oven 1 floor hot' });
  await page.getByLabel(/^Why/).fill('thermocouple is drawn');
  await page.getByRole('button', { name: 'Take out of service', exact: true }).click();
  await page.locator('.aside-name', { hasText: 'Oven 1 floor hot' }).waitFor();
  await line.floor(118);
  await page.getByText('Its condition holds now.').waitFor();
  await page.goto(url());
  // On the list it stands among what can hurt people, as a line.
  await page
    .locator('.band-people .aside-lines a', { hasText: /^Out of service, .*Oven 1, Floor hot\.$/ })
    .waitFor();
  await page
    .locator('.band-people .entry', { hasText: 'Floor hot' })
    .waitFor({ state: 'detached' });
  await context.close();
}, 60_000);
