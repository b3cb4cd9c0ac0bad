/**
 * `age`: too long since something was said to have happened, item by item.
 *
 * From one mark until another of the same item, or one of two others; for ever, where there is none;
 * until the same mark again, in any case. A mark of a place is one clock, and runs from the beginning of
 * observation until somebody says it the first time. Age is wall time: things age while nobody
 * looks, so neither downtime nor a lost signal stops it. An item that passed a limit has passed
 * it, even where a longer one holds again.
 */

import { z } from 'zod/mini';
import { sameItem } from '../hold/item.ts';
import type { EpochMs } from '../signal/sample.ts';
import {
  type AgeClock,
  addClock,
  type Clocks,
  endClock,
  itemsMax,
  leastDue,
  passLimits,
  type Span,
  worstOf,
} from './clocks.ts';
import type { Evidence, Marking, RuleKind, Severity, Timer } from './kind.ts';
import { compileSeason, inSeason, type Season, seasonSetting } from './season.ts';
import { durationSetting, quantitySetting, type SettingsReader } from './settings.ts';

export interface AgeSettings {
  readonly usual: Span;
  /** In force while the signal's value lies beyond `bound`. */
  readonly damp: (Span & { readonly above: number }) | null;
  /** The mark is of the place itself. */
  readonly ofPlace: boolean;
  /** No other mark ends it. */
  readonly endless: boolean;
  /** A clock that runs is not begun anew. */
  readonly once: boolean;
  /** What happened at another time of the year begins no clock. */
  readonly season: Season | null;
}

export interface AgeMemory extends Clocks {
  damp: boolean;
  /** When it was last looked at. */
  seenAt: EpochMs;
}

const earlyShare = 0.8;

const spanNow = (settings: AgeSettings, memory: AgeMemory): Span =>
  memory.damp && settings.damp !== null ? settings.damp : settings.usual;

function judge(settings: AgeSettings, memory: AgeMemory, now: EpochMs, timer: Timer): Severity {
  memory.seenAt = now;
  const span = spanNow(settings, memory);
  passLimits(memory, span, now);
  timer.at = leastDue(memory, span);
  return worstOf(memory)?.severity ?? 0;
}

function evidence(settings: AgeSettings, memory: AgeMemory): Evidence {
  const { clocks, seenAt } = memory;
  const { limitMs } = spanNow(settings, memory);
  const worst = worstOf(memory);
  if (worst === null) return { requiredMs: limitMs };
  const ageMs = Math.max(0, seenAt - worst.sinceMs);
  return {
    sinceMs: worst.sinceMs,
    reachedMs: ageMs,
    requiredMs: limitMs,
    leftMs: Math.max(0, limitMs - ageMs),
    items: clocks.filter(({ severity }) => severity > 0 && severity === worst.severity).length,
    ...(worst.item === null ? {} : { item: worst.item }),
  };
}

function compileSpan(
  read: SettingsReader,
  key: 'limit' | 'damp_limit',
  share: number,
  earlyMs: number | null,
): Span {
  const limitMs = read.duration(key, Number.POSITIVE_INFINITY);
  if (limitMs === 0)
    read.report({
      path: [key],
      problem: 'everything would be too old at once',
      fix: 'make it more than 0 s',
    });
  return { limitMs, earlyMs: Math.min(limitMs, earlyMs ?? Math.round(share * limitMs)) };
}

function compile(read: SettingsReader): AgeSettings {
  const share = read.share('early');
  const earlyMs = share === null && read.has('early') ? read.duration('early', 0) : null;
  const usual = compileSpan(read, 'limit', share ?? earlyShare, earlyMs);
  if ((share ?? 0) > 1 || (earlyMs ?? 0) > read.duration('limit', Number.POSITIVE_INFINITY))
    read.report({
      path: ['early'],
      problem: 'it comes after the limit',
      fix: 'make it shorter than limit, as "80 %"',
    });
  const above = read.has('damp_above') ? read.limit('damp_above') : null;
  const given = ['damp_limit', 'damp_above'].filter((key) => read.has(key));
  if (read.signalCount > 0 && given.length === 1)
    read.report({
      path: [given[0]!],
      problem: 'damp_limit and damp_above belong together',
      fix: 'give both, or neither',
    });
  const [from, ...ends] = read.marks;
  const odd = ends.find((end) => end !== from);
  if (odd !== undefined)
    read.report({
      path: [],
      problem: `it begins with a mark of ${named(from)} and ends with one of ${named(odd)}`,
      fix: 'name marks of the same',
    });
  return {
    usual,
    damp:
      read.signalCount === 0 || above === null || !read.has('damp_limit')
        ? null
        : { ...compileSpan(read, 'damp_limit', share ?? earlyShare, earlyMs), above },
    ofPlace: from == null,
    endless: ends.length === 0,
    once: read.flag('once', false),
    season: compileSeason(read),
  };
}

const named = (what: string | null | undefined): string => what ?? 'the place';

function mark(settings: AgeSettings, memory: AgeMemory, marking: Marking, timer: Timer): Severity {
  const { item, at, judged, input } = marking;
  if (input === 0 && inSeason(settings.season, at)) addClock(memory, item, at);
  else endClock(memory, item, at);
  return judge(settings, memory, judged, timer);
}

function refuses(
  { once }: AgeSettings,
  { clocks }: AgeMemory,
  { item, input, at }: Marking,
): string | null {
  if (input !== 0) return null;
  const known = clocks.find((clock) => sameItem(clock.item, item));
  if (known === undefined)
    return clocks.length >= itemsMax
      ? `${itemsMax} clocks run already; write down first what became of the oldest`
      : null;
  return once && known.said && at > known.sinceMs
    ? 'its time runs already and does not begin anew; write down first what became of it'
    : null;
}

export const age: RuleKind<AgeSettings, AgeMemory> = {
  name: 'age',
  version: 1,
  summary:
    'Too long since somebody wrote down that something happened: to a rack, container, lot or shot, or at the place.',
  written: z.strictObject({
    limit: durationSetting('How old it may become; at this age it is too old.'),
    early: z.optional(
      z.string().check(
        z.regex(
          /^(\d+(\.\d+)?|\.\d+)\s+(%|ms|s|min|h|d)$/,
          'write a share or a duration, as "80 %" or "20 h"',
        ),
        z.meta({
          description:
            'When to say so beforehand: a share of the limit or an age; 80 % unless given.',
        }),
      ),
    ),
    damp_limit: z.optional(
      durationSetting('The limit that holds instead while the signal is above damp_above.'),
    ),
    damp_above: z.optional(quantitySetting('Above this value of the signal, damp_limit holds.')),
    season_from: z.optional(
      seasonSetting('Only what happened from this day of the year on counts, as "10-15".'),
    ),
    season_until: z.optional(seasonSetting('And until this day, as "04-15".')),
    once: z.optional(
      z.boolean().check(
        z.meta({
          description:
            'true: while its clock runs, the mark that began it may not be said again of a later time; a new label or another bake makes nothing younger. Write down first what ended it.',
        }),
      ),
    ),
  }),
  takes: { least: 0, most: 1, units: 'any', roles: ['what makes it age faster, as the humidity'] },
  marks: {
    least: 1,
    most: 3,
    roles: ['where the clock begins', 'where it ends', 'where it ends too'],
  },
  compile,
  outlives: true,
  begin(settings, at, timer) {
    const memory: AgeMemory = { clocks: [], passed: [], damp: false, seenAt: at };
    if (settings.ofPlace && settings.endless)
      memory.clocks.push({ item: null, sinceMs: at, severity: 0, said: false });
    judge(settings, memory, at, timer);
    return memory;
  },
  sample(settings, memory, reading, timer) {
    const damp = settings.damp !== null && reading.value > settings.damp.above;
    if (damp === memory.damp) return worstOf(memory)?.severity ?? 0;
    memory.damp = damp;
    return judge(settings, memory, reading.judged, timer);
  },
  mark,
  refuses,
  passed: ({ passed }) => (passed.length === 0 ? passed : passed.splice(0)),
  clocks: (settings, memory) => {
    const { earlyMs, limitMs } = spanNow(settings, memory);
    return memory.clocks.map(({ item, sinceMs, said, severity }: AgeClock) => ({
      item,
      sinceMs,
      said,
      severity,
      earlyMs: sinceMs + earlyMs,
      dueMs: sinceMs + limitMs,
    }));
  },
  deadline: judge,
  // What the signal last said goes on to hold; without any word of it the usual limit does.
  without() {},
  gap(settings, memory, _fromMs, toMs, timer) {
    const due = leastDue(memory, spanNow(settings, memory));
    timer.at = due === null ? null : Math.max(due, toMs + 1);
  },
  shift(memory, deltaMs) {
    memory.seenAt += deltaMs;
    for (const clock of memory.clocks) clock.sinceMs += deltaMs;
  },
  evidence,
  sentence: ({ item, leftMs = 0 }) => {
    const what = item === undefined ? '{$signal}' : '{$item}';
    return leftMs > 0
      ? `${what}: {$reached} since {$clock}, {$left} left of {$required}.`
      : `${what}: {$reached} since {$clock}, and no more than {$required} is allowed.`;
  },
};
