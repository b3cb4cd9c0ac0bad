/** People in a real browser: the first link, inviting by QR code, coming in on a phone, signing out, another role. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { type AgentProcess, startAgentProcess } from '../agent-process.ts';
import { benchSite, buildPage } from './bench-line.ts';
import { launch, type OpenOptions, sidewaysPx, sizes } from './chromium.ts';

const password = 'purple tractor under ninth bridge';

let place: string;
let agent: AgentProcess;
let browser: Browser;
beforeAll(async () => {
  buildPage();
  place = mkdtempSync(join(tmpdir(), 'forebond-page-'));
  const folder = join(place, 'data');
  [agent, browser] = await Promise.all([
    startAgentProcess({ site: benchSite, folder, words: ['--people'] }),
    launch(),
  ]);
});
afterAll(async () => {
  await browser.close();
  await agent.stop();
  rmSync(place, { recursive: true, force: true });
});

/** A browser of somebody’s own, at a link. */
async function visit(url: string, look: OpenOptions = {}): Promise<Page> {
  const { size = 'phone', ground = 'light' } = look;
  const { width, height, textPx } = sizes[size];
  const context = await browser.newContext({
    ...{ viewport: { width, height }, colorScheme: ground, timezoneId: 'Europe/Dublin' },
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(8_000);
  await page.goto(url);
  await page.evaluate((px) => {
    document.documentElement.style.fontSize = `${px}px`;
  }, textPx);
  return page;
}

/** Kept to be looked at where FOREBOND_SHOTS names a folder. */
async function shot(page: Page, name: string): Promise<void> {
  const folder = process.env.FOREBOND_SHOTS;
  if (folder !== undefined)
    await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
}

async function faults(page: Page): Promise<string[]> {
  await page.evaluate(() => {
    for (const each of document.querySelectorAll('details')) each.open = true;
  });
  const { violations } = await new AxeBuilder({ page }).analyze();
  const wider = await sidewaysPx(page);
  return [
    ...violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`)),
    ...(wider > 0 ? [`${wider} px wider than what shows`] : []),
  ];
}

const looks: readonly OpenOptions[] = [
  { ground: 'light' },
  { ground: 'dark' },
  { size: 'narrow' },
  { size: 'desk', ground: 'dark' },
];

/** The link that the agent prints after its ready line. */
const firstLink = (): Promise<string> =>
  vi.waitFor(() => /first administrator {2}(\S+)/.exec(agent.stdout())![1]!, 5_000);

/** An administrator says where Bob's messages go by e-mail; the entry says what is there. */
async function giveAddress(ann: Page): Promise<void> {
  const entry = ann.locator('li', { hasText: 'Bob Doyle' });
  await entry.getByText('no e-mail address').waitFor();
  await entry.getByLabel('E-mail address').fill('bob@works.example');
  await entry.getByRole('button', { name: 'Save the address' }).click();
  await entry.getByText('bob@works.example').waitFor();
}

async function takeAddressAway(bob: Page): Promise<void> {
  await bob.evaluate(() => {
    location.hash = '#/phone';
  });
  expect(await bob.getByLabel('E-mail address').inputValue()).toBe('bob@works.example');
  await bob.getByLabel('E-mail address').fill('');
  await bob.getByRole('button', { name: 'Save the address' }).click();
  await bob.getByRole('status').getByText('Done').waitFor();
  expect(await faults(bob)).toEqual([]);
}

test('from the first link to somebody else who looks on', async () => {
  const link = await firstLink();
  expect(link).toContain('/#/invitation/');
  for (const look of looks) {
    const shown = await visit(link, look);
    await shown.getByRole('button', { name: 'Begin' }).waitFor();
    await shot(shown, `invitation-${look.size ?? look.ground}`);
    expect(await faults(shown)).toEqual([]);
    await shown.context().close();
  }
  const ann = await visit(link);
  await ann.getByLabel('Your name, as people say it').fill('Ann Byrne');
  await ann.getByLabel('Password', { exact: false }).first().fill('passwordpassword');
  await ann.getByRole('button', { name: 'Begin' }).click();
  await ann.getByRole('alert').getByText('tried first').waitFor();
  await ann.getByLabel('Password', { exact: false }).first().fill(password);
  await ann.getByRole('button', { name: 'Begin' }).click();
  await ann.locator('.counts').waitFor();

  await ann.evaluate(() => {
    location.hash = '#/people';
  });
  await ann.getByText('Invite somebody').click();
  await ann.getByLabel('Name', { exact: true }).fill('Bob Doyle');
  await ann.locator('input[name=invite-role][value=reader]').check();
  await ann.getByRole('button', { name: 'Make the link' }).click();
  // Bound to this machine: a code would lead a phone to itself.
  await ann.getByText(/no phone reaches the link/).waitFor();
  expect(await ann.locator('.qr').count()).toBe(0);
  const invitation = await ann.getByLabel('The link').inputValue();
  for (const ground of ['light', 'dark'] as const) {
    await ann.emulateMedia({ colorScheme: ground });
    await shot(ann, `people-${ground}`);
    expect(await faults(ann)).toEqual([]);
  }

  await giveAddress(ann);

  const bob = await visit(invitation);
  await bob.getByText('Bob Doyle, you are invited').waitFor();
  await bob.getByLabel('Password', { exact: false }).first().fill(password);
  await bob.getByRole('button', { name: 'Begin' }).click();
  await bob.locator('.counts').waitFor();
  await bob.evaluate(() => {
    location.hash = '#/me';
  });
  await bob.getByText('You are Bob Doyle, reader.').waitFor();
  await shot(bob, 'me');
  expect(await bob.getByRole('link', { name: 'People' }).count()).toBe(0);
  expect(await faults(bob)).toEqual([]);

  await takeAddressAway(bob);

  // The page of whoever is removed shows nothing any more, without a touch.
  await ann.getByRole('button', { name: 'Remove Bob Doyle' }).click();
  await bob.getByRole('heading', { name: 'Sign in' }).waitFor();
  expect(await bob.locator('.counts').count()).toBe(0);
  await bob.context().close();
  await ann.context().close();
}, 90_000);

test('signing in, wrong and right, and out again', async () => {
  for (const look of looks) {
    const shown = await visit(`${agent.page}/`, look);
    await shown.getByRole('button', { name: 'Sign in' }).waitFor();
    await shot(shown, `sign-in-${look.size ?? look.ground}`);
    expect(await faults(shown)).toEqual([]);
    await shown.context().close();
  }
  const page = await visit(`${agent.page}/#/me`);
  await page.getByLabel('Name').fill('ann byrne');
  await page.getByLabel('Password').first().fill('not the one');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.getByRole('alert').getByText('do not belong together').waitFor();
  await page.getByLabel('Password').first().fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.locator('.counts').waitFor();
  await page.evaluate(() => {
    location.hash = '#/me';
  });
  expect(await page.evaluate(() => document.cookie)).toBe('');
  await page.getByRole('button', { name: 'Sign out here' }).click();
  await page.getByRole('button', { name: 'Sign in' }).waitFor();
  await page.context().close();
}, 60_000);
