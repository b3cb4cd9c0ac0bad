/** A time that a person enters is the site's, whatever zone the phone keeps; one that lies far back is asked about once. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type AgentProcess, startAgentProcess } from '../agent-process.ts';
import { prepSite } from '../wire/prep-site.ts';
import { buildPage } from './bench-line.ts';
import { launch, open } from './chromium.ts';

const timezone = 'Europe/London';
let agent: AgentProcess;
let browser: Browser;
const folder = mkdtempSync(join(tmpdir(), 'forebond-site-time-'));
beforeAll(async () => {
  buildPage();
  const site = { ...prepSite(36_000_000), timezone };
  [agent, browser] = await Promise.all([
    startAgentProcess({ site, folder: join(folder, 'data') }),
    launch(),
  ]);
}, 90_000);
afterAll(async () => {
  await browser?.close();
  await agent?.kill();
  rmSync(folder, { recursive: true, force: true });
});

/** As a field for date and time has it, at the site. */
const atSite = (at: number): string =>
  new Date(at).toLocaleString('sv-SE', { timeZone: timezone }).replace(' ', 'T').slice(0, 16);

const url = (): string => `${agent.page}/#/station/${encodeURIComponent('m/prep')}`;

test.each([
  [
    'en-IE',
    'Something happened',
    'Earlier',
    'Write it down',
    /at the site, in the zone Europe\/London; this phone has another/,
  ],
  [
    'de-DE',
    'Etwas ist geschehen',
    'Früher',
    'Eintragen',
    /am Werk, in der Zone Europe\/London; dieses Telefon hat eine andere/,
  ],
] as const)(
  '%s: entered in Tokyo it is the time of the site, and stands as it was entered',
  async (language, something, earlier, send, label) => {
    const { page, context, complaints } = await open(browser, url(), {
      zone: 'Asia/Tokyo',
      language,
    });
    await page.getByText(something).click();
    const here = page.locator('details', { hasText: something });
    await here.getByText('Blasted', { exact: true }).click();
    await here.locator('input[list]').fill(`R-${language.slice(0, 2)}`);
    await here.getByText(earlier).click();
    const entered = atSite(Date.now() - 5 * 60_000);
    await here.getByLabel(label).fill(entered);
    await here.getByRole('button', { name: send, exact: true }).click();
    const stands = new RegExp(`^R-${language.slice(0, 2)}: blasted \\D*${entered.slice(11)}`);
    await page.getByText(stands).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  },
);

test('on a phone of the site no zone is named; a year that is wrong by a slip is asked about, and not sent', async () => {
  const { page, context } = await open(browser, url(), { zone: timezone });
  const sent: string[] = [];
  page.on('request', (request) => {
    if (request.method() === 'POST') sent.push(request.postData() ?? '');
  });
  await page.getByText('Something happened').click();
  const here = page.locator('details', { hasText: 'Something happened' });
  await here.getByText('Bin emptied').click();
  await here.getByText('Earlier').click();
  await here.getByLabel('Date and time', { exact: true }).fill('2020-03-01T06:00');
  const write = here.getByRole('button', { name: 'Write it down', exact: true });
  await write.click();
  await here.getByText(/^1 Mar 2020,? 06:00: that is \d+ years ago\. Is it right\?$/).waitFor();
  await write.click();
  await here.getByText('Is it right?').waitFor();
  expect(sent).toEqual([]);
  // Mended, within a day, it goes at once.
  await here.getByLabel('Date and time', { exact: true }).fill(atSite(Date.now() - 60_000));
  expect(await here.getByText('Is it right?').count()).toBe(0);
  await write.click();
  await page.getByText(/^Bin emptied: last/).waitFor();
  await here.getByLabel('Date and time', { exact: true }).fill('2021-03-01T06:00');
  await write.click();
  await here.getByRole('button', { name: 'Yes, it is right: write it down' }).click();
  await expect.poll(() => sent.length).toBe(2);
  expect(JSON.parse(sent[1]!)).toMatchObject({ at: Date.parse('2021-03-01T06:00Z') });
  await context.close();
});
