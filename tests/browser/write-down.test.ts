/** A person writes down at the station: that something happened, and a reading; and finds no link. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type AgentProcess, startAgentProcess } from '../agent-process.ts';
import { signalOf } from '../wire/agent-http.ts';
import { prepSite } from '../wire/prep-site.ts';
import { buildPage } from './bench-line.ts';
import { launch, type OpenOptions, open, sidewaysPx } from './chromium.ts';

let agent: AgentProcess;
let browser: Browser;
const folder = mkdtempSync(join(tmpdir(), 'forebond-write-'));
beforeAll(async () => {
  buildPage();
  [agent, browser] = await Promise.all([
    startAgentProcess({ site: prepSite(3_600_000), folder: join(folder, 'data') }),
    launch(),
  ]);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await agent.kill();
  rmSync(folder, { recursive: true, force: true });
});

const url = (): string => `${agent.page}/#/station/${encodeURIComponent('m/prep')}`;
const form = (page: Page, name: string) => page.locator('details', { hasText: name });

test('a rack is said to be blasted: its clock runs here and on another page', async () => {
  const mine = await open(browser, url());
  const other = await open(browser, url());
  await other.page.getByText('Clocks that run').waitFor();
  const { page } = mine;
  await page.getByText('Something happened').click();
  const here = form(page, 'Something happened');
  // Nothing is chosen beforehand, so nothing can be sent by a slip of the hand.
  expect(await here.getByRole('button', { name: 'Write it down' }).count()).toBe(0);
  await here.getByText('Blasted', { exact: true }).click();
  await here.getByText('The rack came out of the blaster.').waitFor();
  await here.getByLabel('Rack: its name or number').fill('R-12');
  const send = here.getByRole('button', { name: 'Write it down' });
  for (const target of [
    send,
    here.getByText('Earlier'),
    here.getByText('Blasted', { exact: true }),
  ])
    expect((await target.boundingBox())!.height).toBeGreaterThanOrEqual(48);
  await send.click();
  // Late in the evening that is another day.
  for (const { page: each } of [mine, other])
    await each
      .getByText(/^(Rack )?R-12: blasted \d\d:\d\d, too old from (\S+ ){0,2}\d\d:\d\d\.$/)
      .waitFor();
  expect(await here.getByLabel('Rack: its name or number').inputValue()).toBe('');
  expect(await sidewaysPx(page)).toBe(0);
  expect([...mine.complaints, ...other.complaints]).toEqual([]);
  await Promise.all([mine.context.close(), other.context.close()]);
});

test('earlier is a date and a time; one that lies ahead is refused with what to do', async () => {
  const { page, context } = await open(browser, url());
  await page.getByText('Something happened').click();
  const here = form(page, 'Something happened');
  await here.getByText('Bin emptied').click();
  expect(await here.getByLabel('its name or number').count()).toBe(0);
  await here.getByText('Earlier').click();
  await here.getByLabel(/Date and time/).fill('2199-01-01T06:00');
  await here.getByRole('button', { name: 'Write it down' }).click();
  await here.getByText(/it lies .* ahead of this clock/).waitFor();
  await here.getByLabel(/Date and time/).fill('2024-01-05T06:00');
  await here.getByRole('button', { name: 'Write it down', exact: true }).click();
  await here.getByText(/^5 Jan 2024 06:00|^5 Jan 2024, 06:00/).waitFor();
  await here.getByRole('button', { name: 'Yes, it is right: write it down' }).click();
  await page.getByText(/^Bin emptied: last .* too late since/).waitFor();
  await context.close();
});

test('a reading is entered in the unit of its instrument, and refused where it cannot be', async () => {
  const { page, context } = await open(browser, url());
  await page.getByText('Enter a reading').click();
  const here = form(page, 'Enter a reading');
  const value = here.getByLabel('Value in pH');
  await value.fill('12');
  await here.getByRole('button', { name: 'Write it down' }).click();
  await here.getByText(/12 \[pH\] lies outside what m\/prep\/ph can be/).waitFor();
  await value.fill('8.4');
  await here.getByRole('button', { name: 'Write it down' }).click();
  await page.locator('.signal-row', { hasText: 'Ph' }).getByText('8.4').waitFor();
  expect((await signalOf(agent.page, 'm/prep/ph')).value).toBe(8.4);
  await context.close();
});

const looks: readonly (readonly [string, OpenOptions])[] = [
  ['light, phone', { ground: 'light' }],
  ['dark, narrow, text twice as large', { size: 'narrow', ground: 'dark' }],
];
describe.each(looks)('%s', (_, look) => {
  test('axe finds nothing, and nothing is wider than what shows', async () => {
    const { page, context, complaints } = await open(browser, url(), look);
    await page.getByText('Something happened').waitFor();
    await page.evaluate(() => {
      for (const each of document.querySelectorAll('details')) each.open = true;
    });
    await page.getByText('Blasted', { exact: true }).click();
    for (const earlier of await page.getByText('Earlier').all()) await earlier.click();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    expect(await sidewaysPx(page)).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });
});

test('without a link it is not sent, and says so', async () => {
  const { page, context } = await open(browser, url());
  await page.getByText('Enter a reading').click();
  const here = form(page, 'Enter a reading');
  await here.getByLabel('Value in pH').fill('8.1');
  await context.setOffline(true);
  await here.getByRole('button', { name: 'Write it down' }).click();
  await here.getByText('Not sent.').waitFor({ timeout: 11_000 });
  // What was typed stays, to be sent again.
  expect(await here.getByLabel('Value in pH').inputValue()).toBe('8.1');
  expect((await signalOf(agent.page, 'm/prep/ph')).value).toBe(8.4);
  await context.close();
});
