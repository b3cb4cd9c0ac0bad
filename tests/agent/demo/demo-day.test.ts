import { rmSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import type { Effect } from '#rules/input.ts';
import { ledgerLines, replayedLines } from '../../wire/simulated-agent.ts';
import {
  bandOf,
  isTransition,
  type RecordedDay,
  recordDay,
  showAtMs,
  type Transition,
} from './recorded-day.ts';

const day = await recordDay();
afterAll(() => rmSync(day.folder, { recursive: true, force: true }));
const transitions = day.effects.filter(isTransition);
const short = (id: string): string => id.slice(id.indexOf('/') + 1);

/** One alarm's life in a line, as a person would tell it. */
function told(recorded: RecordedDay): string[] {
  const lines: string[] = [];
  for (const effect of recorded.effects) {
    const line = lineOf(recorded, effect);
    if (line !== null) lines.push(line);
  }
  return lines;
}

const clock = (ms: number): string => new Date(ms).toISOString().slice(11, 19);

function lineOf(recorded: RecordedDay, effect: Effect): string | null {
  if (effect.kind === 'hold')
    return `${clock(effect.judged)}  hold ${effect.action}  ${effect.what} ${effect.item}`;
  if (effect.kind === 'judgeable')
    return `${clock(effect.judged)}  ${effect.judgeable ? 'can be judged again' : 'cannot tell whether it is over'}  ${short(effect.rule)}`;
  if (effect.kind !== 'transition') return null;
  const { transition, rule, evidence, signal, judged, priority, by } = effect;
  const card = recorded.cards.get(rule);
  if (transition === 'acknowledged' || transition === 'reset')
    return `${clock(judged)}  ${transition}  ${short(rule)}, by ${by}`;
  const unit = recorded.unitOf(signal);
  const symbol = unit === '1' ? '' : ` ${unit}`;
  const number = (value: number | undefined): string =>
    value === undefined ? '?' : `${Number(value.toPrecision(4))}${symbol}`;
  const limit =
    evidence.limit === null || evidence.limit === undefined
      ? ''
      : `, limit ${number(evidence.limit)}`;
  const words = transition === 'returned' ? '' : `  ${card?.label.word} ${priority}`;
  return `${clock(judged)}  ${transition}  ${short(rule)}  ${number(evidence.value)}${limit}${words}`;
}

test('the day is as it was when a person last read it', async () => {
  const text = [
    'A day of the demo line as it is recorded: 22.5 ordinary hours, the way into the show from',
    '22:30, and its hour from 23:00 (UTC). Read it as a shift book: each fault of the timetable must',
    'raise what it should, and what is raised must clear, latch or hold as the trade wants it.',
    'Written by `npx vitest run tests/agent/demo -u`; to be read again whenever it changes.',
    '',
    ...told(day),
    '',
  ].join('\n');
  await expect(text).toMatchFileSnapshot('../../vectors/demo-day.txt');
});

test('the folder gives the same, judged again', () => {
  const { effects } = ledgerLines(day.folder);
  expect(effects.length).toBeGreaterThan(150);
  expect(replayedLines(day.source, day.folder)).toEqual(effects);
});

test('the same seed gives the same day, another seed another', async () => {
  const again = await recordDay();
  const other = await recordDay(2);
  for (const { folder } of [again, other]) rmSync(folder, { recursive: true, force: true });
  expect(told(again)).toEqual(told(day));
  expect(told(other)).not.toEqual(told(day));
}, 180_000);

describe('the first minute', () => {
  /** Occurrences that stand unanswered a minute into the show. */
  const standing = new Map<string, Transition>();
  for (const effect of transitions) {
    if (effect.judged > showAtMs + 60_000 || effect.occurrence === null) continue;
    if (effect.to === 'normal' || effect.closes === true) standing.delete(effect.rule);
    else standing.set(effect.rule, effect);
  }
  test.each(['people can be hurt', 'before the shift ends', 'can wait'] as const)(
    'something stands in the band: %s',
    (band) => {
      const found = [...standing.values()].filter(
        ({ rule, to }) => to === 'unacknowledged' && bandOf(day.cards.get(rule)!) === band,
      );
      expect(found.map(({ rule }) => rule)).not.toEqual([]);
    },
  );
});

describe('the hour', () => {
  const from = showAtMs - 30 * 60_000;
  const inShow = transitions.filter(({ judged }) => judged >= from);

  test('every armed rule of the line has its turn, save the health of each single sensor', () => {
    const raised = new Set(inShow.filter((e) => e.transition === 'raised').map((e) => e.rule));
    const silent = [...day.cards.values()]
      .filter(
        ({ readiness, kind, id }) =>
          readiness !== 'not-armed' && !healthRule(kind) && !raised.has(id),
      )
      .map(({ id }) => id)
      // A place or rack of its own; its rule spoke for another one of them.
      .filter((id) => ![...raised].some((each) => templateOf(each) === templateOf(id)))
      .map((id) => short(templateOf(id)));
    expect([...new Set(silent)].sort()).toEqual(Object.keys(quietInTheHour).sort());
  });
  test('a sensor gone silent and one that hangs are told', () => {
    const kinds = new Set(
      inShow.filter((e) => e.transition === 'raised').map((e) => day.cards.get(e.rule)?.kind),
    );
    expect([kinds.has('lost'), kinds.has('stuck')]).toEqual([true, true]);
  });
  test('what was raised clears, stays latched, or is still under way at the end', () => {
    const open = new Map<string, Transition>();
    for (const effect of inShow)
      if (effect.transition === 'raised' || effect.transition === 'realarmed')
        open.set(effect.rule, effect);
      else if (effect.transition === 'returned') open.delete(effect.rule);
    const old = [...open.values()].filter(({ judged }) => judged < showAtMs + 25 * 60_000);
    expect(old.map(({ rule }) => rule)).toEqual([]);
    // What the last twenty minutes raised may still be under way; the rest is over by then.
    const late = [...open.values()].filter(({ judged }) => judged >= showAtMs + 40 * 60_000);
    expect([...open.keys()].sort()).toEqual(late.map(({ rule }) => rule).sort());
  });
  test('what may have frozen is on hold and stays so', () => {
    const holds = day.effects.filter((e) => e.kind === 'hold' && e.judged >= from);
    expect(holds).toContainEqual(
      expect.objectContaining({ action: 'set', what: 'container', item: 'pallet-4' }),
    );
    expect(holds.filter((e) => e.kind === 'hold' && e.action === 'lifted')).toEqual([]);
  });
  test('an alarm whose sensor is lost says that it cannot tell', () => {
    expect(
      day.effects.filter((e) => e.kind === 'judgeable' && !e.judgeable && e.judged >= from),
    ).not.toEqual([]);
  });
});

/** Rules that have no turn in the hour, and why. */
const quietInTheHour: Readonly<Record<string, string>> = {
  'air-1/blotter-late': 'the round is made; it would be late after eight hours',
  'air-1/separator-round-late': 'the round is made; it would be late after eight hours',
  'booth-1/container-held': 'nobody connects a container that is on hold',
  'booth-1/film-chart': 'a chart learns for ten days first',
  'booth-1/first-off-after-change': 'told by first-off-missing; nobody changes the pot’s drum',
  'booth-1/panel-late': 'panels are sprayed; they would be late after eight hours',
  'booth-1/relief-late': 'a year has no turn in an hour',
  'booth-1/survey-late': 'a year has no turn in an hour',
  'mixer-1/container-held': 'nobody connects a container that is on hold',
  'oven-1/profile-late': 'a quarter has no turn in an hour',
  'prebake-1/over-baked': 'the drying oven shows it',
  'prebake-1/profile-late': 'a quarter has no turn in an hour',
  'prep-1/conversion-to-coat': 'the invented line blasts, and phosphates nothing',
  'prep-1/shift-check-late': 'the check is made; it would be late after eight hours',
  'press-1/compound-held': 'nobody holds a batch of compound',
  'press-1/insert-lot-held': 'nobody holds a lot of inserts',
  'racks-1/hot-store': 'it is always winter beside this plant',
  'residue-1/act-thick': 'residue of the invented plant never lies over 10 mm',
  'residue-1/bin-unemptied': 'the bin is emptied; it would be late after eight hours',
  'residue-1/cleaning-late': 'it is cleaned; it would be late after a week',
  'store-1/freight-out-of-range-hot': 'it is always winter beside this plant',
  'tank-1/lot-held': 'nobody holds a lot of adhesive',
};

const healthRule = (kind: string): boolean => kind === 'lost' || kind === 'stuck';

/** A rule without the instance of its wildcard. */
function templateOf(id: string): string {
  return id.replace(/-(floor|shroud|filter|rack-\d+)$/, '');
}
