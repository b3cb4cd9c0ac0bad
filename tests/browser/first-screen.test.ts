/**
 * What a phone of 390 by 844 shows first: of a fire alarm its word, place, do-nots and first step; of the
 * list what can hurt people, what of that is put aside too, and what is over last, folded. The fire alarm is
 * the trade's own at the ignition limit (rules/stations/residue-surface.ts), in both languages.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { selfHeating } from '#rules/stations/residue-reaction.ts';
import { atLimit } from '#rules/stations/residue-surface.ts';
import { published } from '../agent-process.ts';
import { alarms } from '../wire/agent-http.ts';
import { type BenchLine, benchSite, startBenchLine } from './bench-line.ts';
import { launch, type Opened, type OpenOptions, open, sidewaysPx } from './chromium.ts';

const { 'oven-1': oven, ...others } = benchSite.lines['mounts-2'];
const { label: reaction } = selfHeating;
const filled = (text: string): string =>
  text
    .replace('{$plan}', '')
    .replace(
      '{$fumes}',
      'Fumes can be toxic even without flames, of hydrogen chloride and nitrogen oxides',
    );
const site = {
  ...benchSite,
  lines: {
    'mounts-2': {
      ...others,
      'residue-1': {
        kind: 'residue',
        signals: {
          surface: { topic: 'residue/floor', payload: { kind: 'plain' }, unit: 'Cel' },
        },
      },
      'oven-1': {
        ...oven,
        rules: {
          ...oven.rules,
          'heats-itself': {
            kind: 'band',
            signal: 'floor',
            high: '113 Cel',
            on_delay: '0 s',
            priority: 'high',
            latching: true,
            highly_managed: true,
            signal_word: reaction.word,
            sentence: '{$station} floor is {$value} hot and gets hotter with the heat off.',
            consequence: 'The residue is reacting; it can burn at any oven temperature.',
            do_not: reaction.doNot,
            actions: reaction.steps.map(filled),
            caution: filled(reaction.caution),
          },
          'pressure-low': { ...oven.rules['pressure-low'], latching: false },
        },
      },
    },
  },
};

let line: BenchLine;
let browser: Browser;
let hot: NodeJS.Timeout;
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(site), launch()]);
  await line.floor(114);
  // Said again each second, as a sensor does.
  hot = setInterval(() => void published(line.client, 'residue/floor', '118.4'), 1_000);
  await line.pressure(560);
}, 120_000);
afterAll(async () => {
  clearInterval(hot);
  await browser?.close();
  await line?.stop();
});

const url = (hash = '#/'): string => `${line.agent.page}/${hash}`;
const id = encodeURIComponent;

async function standing(rule: string): Promise<string> {
  await expect
    .poll(async () => (await alarms(line.agent.page)).some((each) => each.rule.endsWith(rule)), {
      timeout: 60_000,
    })
    .toBe(true);
  return (await alarms(line.agent.page)).find((each) => each.rule.endsWith(rule))!.occurrence;
}

async function say(path: string, body: object): Promise<void> {
  const answer = await fetch(new URL(path, line.agent.page), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  expect(await answer.text()).not.toContain('"code"');
  expect(answer.ok).toBe(true);
}

/** The box says that it is ill, as after a start that found a lock of another's. */
async function openIll(hash: string, options: OpenOptions = {}): Promise<Opened> {
  const opened = await open(browser, url(hash), options);
  const condition = 'maintenance-required';
  const note = 'A lock left behind by a run that ended was removed. Nothing is to be done.';
  const health = { condition, parts: { record: condition }, notes: { record: note } };
  const body = `event: health\ndata: ${JSON.stringify(health)}\n\n`;
  await opened.page.route('**/api/stream', (route) =>
    route.fulfill({ contentType: 'text/event-stream', body }),
  );
  await opened.page.reload();
  await opened.page.locator('.ill').waitFor();
  return opened;
}

const box = async (page: Page, selector: string) => {
  const found = await page.locator(selector).first().boundingBox();
  if (found === null) throw new Error(`${selector} is not in sight`);
  return { top: found.y, bottom: found.y + found.height };
};

describe.each(['en-IE', 'de-DE'] as const)('a fire alarm, %s', (language) => {
  test.each(['Europe/Dublin', 'Asia/Tokyo'])(
    'word, place, do-nots and the first step stand above the answer, zone %s',
    async (zone) => {
      const occurrence = await standing('residue-1/at-limit');
      const { page, context } = await openIll(`#/alarm/${id(occurrence)}`, { language, zone });
      await page.locator('.steps li').first().waitFor();
      const answer = await box(page, '.answer-bar');
      const step = await box(page, '.steps li');
      expect(answer.bottom).toBeLessThanOrEqual(844);
      const doNots = await page.locator('.do-not li').all();
      expect(doNots.length).toBe(atLimit.label.doNot.length);
      const last = (await doNots.at(-1)!.boundingBox())!;
      expect(last.y + last.height).toBeLessThanOrEqual(step.top);
      expect(step.bottom).toBeLessThanOrEqual(answer.top);
      // The care of the box comes below.
      expect((await box(page, '.ill')).top).toBeGreaterThan(step.bottom);
      expect(await sidewaysPx(page)).toBe(0);
      await context.close();
    },
  );
});

test('the list: what of people is put aside stands first, a line each; what is over comes last, folded', async () => {
  const hot = await standing('floor-hot');
  await standing('pressure-low');
  const station = await open(browser, url(`#/station/${id('mounts-2/oven-1')}`));
  // The pressure is farther past its limit; nobody is hurt by it.
  await station.page.locator('.station > .margin', { hasText: /^Floor 114/ }).waitFor();
  await station.context.close();
  await line.pressure(620);
  await expect
    .poll(
      async () =>
        (await alarms(line.agent.page)).find(({ rule }) => rule.endsWith('pressure-low'))?.state,
      { timeout: 60_000 },
    )
    .toBe('returned-unacknowledged');
  await say(`/api/alarms/${id(hot)}/shelve`, { minutes: 60, reason: 'probe is being changed' });
  const { page, context, complaints } = await open(browser, url());
  const aside = page.locator('.band-people .aside-lines li');
  await aside
    .getByText(/^Put aside at this machine until (\S+ ){0,2}\d\d:\d\d: Oven 1, Floor hot\.$/)
    .waitFor();
  expect(await aside.textContent()).toContain('probe is being changed');
  const asideBox = await box(page, '.aside-lines li');
  expect(asideBox.top).toBeLessThan((await box(page, '.band-people .entry')).top);
  expect(asideBox.bottom).toBeLessThan(844);
  // Two rules of the floor watch it; one is put aside.
  await page.locator('.counts', { hasText: /not by all their rules|not watched/ }).waitFor();
  const over = page.locator('.band-over');
  await over.getByText('Already over, not closed yet: 1').waitFor();
  const overBox = await box(page, '.band-over');
  for (const entry of await page.locator('.bands .entry').all())
    expect((await entry.boundingBox())!.y).toBeLessThan(overBox.top);
  expect(await over.locator('.entry').isVisible()).toBe(false);
  await over.locator('summary').click();
  await over.locator('.entry .sentence').waitFor();
  // Looking back, who did it, when and why stands with it.
  await page.goto(url('#/back'));
  await page
    .locator('.past-alarm')
    .getByText(/^Shelved \d\d:\d\d, at this machine: probe is being changed$/)
    .waitFor();
  expect(complaints).toEqual([]);
  await context.close();
  const sick = await openIll('#/');
  const entry = await box(sick.page, '.band-people .entry');
  expect((await box(sick.page, '.ill')).top).toBeGreaterThan(entry.bottom);
  await sick.context.close();
});

test('of residue that heats itself all steps stand on the first screen, in another zone too', async () => {
  const occurrence = await standing('heats-itself');
  const { page, context } = await openIll(`#/alarm/${id(occurrence)}`, { zone: 'Asia/Tokyo' });
  await page.locator('.steps li').first().waitFor();
  const steps = await page.locator('.steps li').all();
  expect(steps.length).toBe(reaction.steps.length);
  const last = (await steps.at(-1)!.boundingBox())!;
  expect(last.y + last.height).toBeLessThanOrEqual((await box(page, '.answer-bar')).top);
  expect((await box(page, '.zone')).top).toBeGreaterThan(last.y + last.height);
  // A number that went back is said below them.
  await line.floor(100);
  await expect
    .poll(
      async () =>
        (await alarms(line.agent.page)).find((each) => each.occurrence === occurrence)?.state,
      { timeout: 60_000 },
    )
    .toBe('latched-unacknowledged');
  await page.reload();
  const when = page.locator('.alarm > .when', { hasText: /^Over since \d\d:\d\d\. It stays/ });
  await when.waitFor();
  const over = (await when.boundingBox())!;
  const end = (await steps.at(-1)!.boundingBox())!;
  expect(end.y + end.height).toBeLessThanOrEqual((await box(page, '.answer-bar')).top);
  expect(over.y).toBeGreaterThanOrEqual(end.y + end.height);
  await context.close();
});
