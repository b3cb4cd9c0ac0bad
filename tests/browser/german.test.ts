/**
 * Every place in German: no word of the English catalogue where German should stand, and no word broken in
 * two. What the agent says in English is marked as English and not looked at; the site's own names are
 * what the site calls things.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { de } from '../../dashboards/text/de.ts';
import { en } from '../../dashboards/text/en.ts';
import { ownName, placeName, ruleName } from '../../dashboards/text/names.ts';
import { alarms, get, post, until } from '../wire/agent-http.ts';
import { type BenchLine, benchSite, startBenchLine } from './bench-line.ts';
import { launch, open } from './chromium.ts';
import { goTo, places, withRuns } from './places.ts';

let line: BenchLine;
let browser: Browser;
let occurrence: string;
let names: string[];
beforeAll(async () => {
  [line, browser] = await Promise.all([startBenchLine(), launch()]);
  await line.floor(118);
  await line.pressure(560);
  const { page } = line.agent;
  await post(page, '/api/holds', { what: 'rack', item: 'Nr. 41', reason: 'dünn gemessen' });
  const out = `/api/alarms/${encodeURIComponent('mounts-2/mixer-3/lost-agitator')}/out-of-service`;
  await post(page, out, { reason: 'neuer Fühler' });
  const hot = await until(
    async () => (await alarms(page)).find(({ rule }) => rule.endsWith('floor-hot')),
    (found) => found !== undefined,
    20_000,
  );
  occurrence = hot!.occurrence;
  names = await siteNames(page);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await line?.stop();
});

interface Covered {
  readonly stations: readonly {
    readonly not_worked_out?: readonly { readonly signal: string }[];
  }[];
}
type Ids = readonly { readonly id: string }[];

/** As they stand on the page, the longest first, so that none is cut out of another. */
async function siteNames(page: string): Promise<string[]> {
  const { signals } = (await get<{ signals: Ids }>(page, '/api/signals')).body;
  const { rules } = (await get<{ rules: Ids }>(page, '/api/rules')).body;
  const { stations: covered } = (await get<Covered>(page, '/api/coverage')).body;
  const workedOut = covered.flatMap(({ not_worked_out: lacking = [] }) => lacking);
  const known = [...signals, ...rules].map(({ id }) => id);
  const ids = [...known, ...workedOut.map(({ signal }) => signal)];
  const stations = [...new Set(ids.map((id) => id.split('/').slice(0, 2).join('/')))];
  const topics = JSON.stringify(benchSite).match(/[a-z]+\/[+a-z/]+/g) ?? [];
  const all = [...ids, ...stations, ...stations.map((id) => id.split('/')[0]!), benchSite.site];
  const said = all.flatMap((id) => {
    const bare = id.split('/').at(-1)!.replaceAll('-', ' ');
    return [placeName(id), ownName(id), bare, ...ruleName(id).split(': ').slice(1)];
  });
  return [...new Set([...said, ...topics])].sort((a, b) => b.length - a.length);
}

const wordsOf = (text: string): string[] => text.toLowerCase().match(/\p{L}{3,}/gu) ?? [];
const textsOf = (catalogue: object): string[] =>
  Object.values(catalogue).flatMap((text) =>
    typeof text === 'string' ? [text] : Object.values<string>(text),
  );
/** Placeholders have English names in every language. */
const wordsIn = (catalogue: object): Set<string> =>
  new Set(textsOf(catalogue).flatMap((text) => wordsOf(text.replace(/\{?\$\w+\}?|\.match/g, ' '))));
const german = wordsIn(de);
const english = new Set([...wordsIn(en)].filter((word) => !german.has(word)));

/** Texts and labels that are neither marked as English nor as of the site. */
const spoken = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const isEnglish = (of: Element | null): boolean =>
      ['en', ''].includes(of?.closest('[lang]')?.getAttribute('lang') ?? 'de');
    const walk = document.createTreeWalker(document.getElementById('page')!, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node !== null; node = walk.nextNode())
      if (!isEnglish(node.parentElement)) found.push(node.textContent ?? '');
    for (const each of document.querySelectorAll('[aria-label], [title], [placeholder]'))
      if (!isEnglish(each))
        for (const name of ['aria-label', 'title', 'placeholder'])
          found.push(each.getAttribute(name) ?? '');
    return found;
  });

function leftovers(texts: readonly string[]): string[] {
  return texts.flatMap((text) => {
    const rest = names.reduce((left, name) => left.replaceAll(name, ' '), text);
    return wordsOf(rest)
      .filter((word) => english.has(word))
      .map((word) => `${word}: ${text.slice(0, 120)}`);
  });
}

/** Words whose letters stand on more than one line. */
const broken = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const walk = document.createTreeWalker(document.getElementById('page')!, NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    for (let node = walk.nextNode(); node !== null; node = walk.nextNode())
      for (const { 0: word, index } of (node.textContent ?? '').matchAll(/\p{L}+/gu)) {
        range.setStart(node, index);
        range.setEnd(node, index + word.length);
        const tops = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (tops.size > 1) found.push(word);
      }
    return found;
  });

test('no English word is left, and no word is broken, at any place', async () => {
  const { page, context, complaints } = await open(browser, `${line.agent.page}/#/`, {
    language: 'de-DE',
  });
  await withRuns(page);
  const found: string[] = [];
  for (const place of places(occurrence)) {
    await goTo(page, place);
    const texts = await spoken(page);
    expect(texts.length, place[0]).toBeGreaterThan(10);
    found.push(...leftovers(texts).map((each) => `${place[0]}: ${each}`));
    found.push(...(await broken(page)).map((each) => `${place[0]}: broken: ${each}`));
  }
  expect([...new Set(found)]).toEqual([]);
  expect(complaints).toEqual([]);
  await context.close();
}, 180_000);

test('what the site wrote itself stays as it wrote it, in no language that anybody named', async () => {
  const { page, context } = await open(
    browser,
    `${line.agent.page}/#/alarm/${encodeURIComponent(occurrence)}`,
    { language: 'de-DE' },
  );
  await page.locator('.alarm').waitFor();
  const own = [
    'Lower the heat at the outside control.',
    'open the oven to look',
    'Hot surfaces, fire.',
    'Dried residue can light itself with no spark.',
  ];
  for (const text of own) {
    const all = await page.locator('main').getByText(text).all();
    expect(all.length, text).toBeGreaterThan(0);
    for (const each of all)
      expect(await each.evaluate((of) => of.closest('[lang]')?.getAttribute('lang')), text).toBe(
        '',
      );
  }
  await context.close();
});

test('a box that is ill says so in German', async () => {
  const { page, context } = await open(browser, `${line.agent.page}/#/line`, {
    language: 'de-DE',
  });
  await page.route('**/api/stream', async (route) => {
    const health = {
      condition: 'out-of-specification',
      parts: { engine: 'good', clock: 'out-of-specification' },
      notes: {
        clock:
          'The system clock is behind or was set back; samples are marked. Check the time source.',
      },
    };
    const body = `event: health\ndata: ${JSON.stringify(health)}\n\n`;
    await route.fulfill({ contentType: 'text/event-stream', body });
  });
  await page.reload();
  await page.locator('.ill').waitFor();
  expect(await page.locator('.ill').textContent()).toContain('Uhr');
  expect(leftovers(await spoken(page))).toEqual([]);
  await context.close();
});
