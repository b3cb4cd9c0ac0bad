/** One hot floor under three rules: one card, each alarm with its own answer, none shelved that must not be. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { alarms } from '../wire/agent-http.ts';
import { type BenchLine, benchSite, startBenchLine } from './bench-line.ts';
import { launch, open } from './chromium.ts';

const limit = (high: string, more: object) => ({
  kind: 'band',
  signal: 'floor',
  high,
  deadband: '2 K',
  on_delay: '0 s',
  signal_word: 'WARNING',
  consequence: 'Dried residue can light itself with no spark.',
  actions: ['Lower the heat at the outside control.'],
  ...more,
});
const { 'oven-1': oven, ...others } = benchSite.lines['mounts-2'];
const site = {
  ...benchSite,
  lines: {
    'mounts-2': {
      ...others,
      'oven-1': {
        ...oven,
        rules: {
          'pressure-low': oven.rules['pressure-low'],
          early: limit('92 Cel', { priority: 'medium' }),
          act: limit('102 Cel', { priority: 'high' }),
          'at-limit': limit('112 Cel', { priority: 'high', latching: true, highly_managed: true }),
        },
      },
    },
  },
};

let line: BenchLine;
let browser: Browser;
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(site), launch()]);
  await line.floor(118);
  await line.pressure(560);
});
afterAll(async () => {
  await browser.close();
  await line.stop();
});

const stateOf = async (rule: string): Promise<string | undefined> =>
  (await alarms(line.agent.page)).find((alarm) => alarm.rule === `mounts-2/oven-1/${rule}`)?.state;

const spaced = (text: string | null): string => (text ?? '').replaceAll('\u00a0', ' ');

const people = async (page: Page) => {
  const entries = page.locator('.band-people .entry');
  await entries.first().waitFor();
  return entries;
};

test('the worst is on top, the milder ones are folded below it, each with its own answer', async () => {
  const { page, context, complaints } = await open(browser, `${line.agent.page}/#/`);
  const entries = await people(page);
  const [entry] = await entries.all();
  expect(await entries.count()).toBe(1);
  expect(await entry!.locator('.sentence').textContent()).toContain('112');
  expect(spaced(await entry!.locator('.ruler-ends').textContent())).toContain(
    'limit 112 °C; others at 92, 102 °C',
  );
  expect(await entry!.locator('.also li').allTextContents()).toEqual([
    expect.stringMatching(/^Close to the limit, limit 102.°C.*not answered$/),
    expect.stringMatching(/^Early warning, limit 92.°C.*not answered$/),
  ]);
  // A tap on the folded line goes to that alarm, though the card is one target else.
  await entry!.getByRole('link', { name: /^Close to the limit/ }).click();
  // The milder's own page points up to the worse one, whose steps go first.
  const worse = page.locator('.worse-stands');
  await worse.getByText('A worse alarm stands:').waitFor();
  expect(await worse.getByRole('link').textContent()).toContain('112');
  await page.getByRole('button', { name: 'Acknowledge' }).click();
  await expect.poll(() => stateOf('act')).toBe('acknowledged');
  expect([await stateOf('early'), await stateOf('at-limit')]).toEqual([
    'unacknowledged',
    'unacknowledged',
  ]);
  await page.goto(`${line.agent.page}/#/`);
  await page
    .locator('.also li', { hasText: 'Close to the limit' })
    .getByText(/^answered \d\d:\d\d/)
    .waitFor();
  expect(await page.locator('.also li', { hasText: 'not answered' }).count()).toBe(1);
  expect(complaints).toEqual([]);
  await context.close();
});

test('a highly managed alarm is offered no shelf, and the agent refuses one with words', async () => {
  const { page, context } = await open(browser, `${line.agent.page}/#/`);
  await page.locator('.band-people .sentence').first().click();
  await page.getByText('More: pass on, shelve, reset').click();
  await page.getByText('it is about people, and highly managed').waitFor();
  expect(await page.getByRole('button', { name: 'Shelve', exact: true }).count()).toBe(0);
  await page.getByText('It can be reset once it is over and answered.').waitFor();
  const [managed] = (await alarms(line.agent.page)).filter(({ rule }) => /at-limit/.test(rule));
  const answer = await fetch(
    new URL(`/api/alarms/${encodeURIComponent(managed!.occurrence)}/shelve`, line.agent.page),
    {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ minutes: 15, reason: 'too loud' }),
    },
  );
  expect(answer.status).toBe(409);
  expect(await answer.json()).toMatchObject({
    detail: expect.stringContaining(
      'it is highly managed, so handled with special care: nobody may silence it',
    ),
  });
  expect(await stateOf('at-limit')).toBe('unacknowledged');
  await context.close();
});

test('what the agent refuses is told with its reason and what to do, and nothing is shown as done', async () => {
  const { page, context } = await open(browser, `${line.agent.page}/#/`);
  const [managed] = (await alarms(line.agent.page)).filter(({ rule }) => /at-limit/.test(rule));
  // The agent's own refusal, of another alarm than the one on the page.
  await page.route('**/shelve', (route) =>
    route.continue({
      url: `${line.agent.page}/api/alarms/${encodeURIComponent(managed!.occurrence)}/shelve`,
    }),
  );
  await page.locator('.band-shift .sentence', { hasText: 'pressure' }).click();
  await page.getByText('More: pass on, shelve, reset').click();
  await page.getByLabel(/^Why/).first().fill('sensor is being changed');
  await page.getByRole('button', { name: 'Shelve', exact: true }).click();
  const outcome = page.getByRole('alert');
  await outcome.waitFor();
  expect(await outcome.textContent()).toMatch(/nobody may silence it.*Read the present state/);
  expect(await page.getByText('Done, and on record.').count()).toBe(0);
  await context.close();
});

test('the chart names what its marks mean, and tells doubt by shape and word', async () => {
  const { page, context, complaints } = await open(browser, `${line.agent.page}/#/`);
  await page.route('**/series?**', async (route) => {
    const until = Number(new URL(route.request().url()).searchParams.get('until'));
    const points = Array.from({ length: 1_000 }, (_, i) => {
      const at = until - 3_600_000 + i * 3_600;
      return i >= 300 && i < 350 ? [at, null, null, null, 2, 2] : [at, 89, 91, 90, 2, 0];
    });
    const uncertain = points.map((_, i) => (i >= 600 && i < 700 ? 2 : 0));
    await route.fulfill({ json: { unit: 'Cel', points, uncertain, damage: [] } });
  });
  await page.evaluate(() => {
    location.hash = '#/signal/mounts-2%2Foven-1%2Ffloor?span=h1';
  });
  const legend = page.locator('.legend');
  await legend.waitFor();
  const words = await legend.locator('li').allTextContents();
  expect(words).toEqual(expect.arrayContaining(['in doubt', 'not usable', 'limit, and beyond it']));
  expect(words).not.toContain('no reading');
  await page.getByText('Readings in doubt in this time: 200.').waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});
