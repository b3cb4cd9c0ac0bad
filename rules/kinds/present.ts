/**
 * `present`: a value beyond its limits while things are there; each that was there with it is held.
 *
 * A store that froze spoils every container in it, not the one last brought. From one mark to another
 * an item is there; once value and item have been together for the delay, it is passed on to be held,
 * one by one, those that come later too. The value alone raises it, unless it `needs_item`. Time
 * nobody saw does not count. A hand reading that tells of a delivery, or of one drum, says nothing of
 * what comes after it (`at_reading`, `last_only`).
 */

import { z } from 'zod/mini';
import { sameItem } from '../hold/item.ts';
import type { EpochMs } from '../signal/sample.ts';
import { type BandMemory, type BandSettings, band, bandOf } from './band.ts';
import { itemsMax } from './clocks.ts';
import type { Evidence, Marking, RuleKind, Severity, Timer } from './kind.ts';
import {
  deadbandSetting,
  durationSetting,
  quantitySetting,
  type SettingsReader,
} from './settings.ts';

export interface PresentSettings {
  readonly band: BandSettings;
  readonly needsItem: boolean;
  readonly atReading: boolean;
  readonly lastOnly: boolean;
}

interface Item {
  readonly item: string;
  /** From when its time beside the value counts; when it came, unless less was seen. */
  fromMs: EpochMs;
  /** A reading came while it was there. */
  read: boolean;
  /** It has been told. */
  told: boolean;
}

export interface PresentMemory {
  readonly band: BandMemory;
  /** The first to come first. */
  readonly items: Item[];
  readonly passed: string[];
  /** Nothing was known to be there: the place stands for it, until the value is well again. */
  place: boolean;
}

function compile(read: SettingsReader): PresentSettings {
  const [low, high] = [read.limit('low'), read.limit('high')];
  if (low === null && high === null)
    read.report({
      path: [],
      problem: 'without a limit it judges nothing',
      fix: 'give low, high or both',
    });
  const [came, left] = read.marks;
  if (came == null || (left !== undefined && left !== came))
    read.report({
      path: [],
      problem: `it is about ${came ?? 'the place'}, from one mark to another of ${left ?? came ?? 'the place'}`,
      fix: 'name two marks of the same: of racks, containers, lots or shots',
    });
  const lastOnly = read.flag('last_only', false);
  return {
    band: bandOf(read, { lowLow: null, low, high, highHigh: null }, read.difference('deadband', 0)),
    needsItem: read.flag('needs_item', false),
    atReading: lastOnly || read.flag('at_reading', false),
    lastOnly,
  };
}

/** Since when the value has been beyond; null while it is not. */
function beyondSince({ level: [first] }: BandMemory): EpochMs | null {
  return first.answer ? first.sinceMs : first.changeAt;
}

const bandDue = ({ onDelayMs }: BandSettings, { level: [first] }: BandMemory): EpochMs | null =>
  first.changeAt === null || first.answer ? null : first.changeAt + onDelayMs;

/** Passes on what has been there long enough, and asks to be called when the next one has. */
function judge(
  settings: PresentSettings,
  memory: PresentMemory,
  now: EpochMs,
  timer: Timer,
): Severity {
  const { onDelayMs } = settings.band;
  const since = beyondSince(memory.band);
  let due = bandDue(settings.band, memory.band) ?? Number.POSITIVE_INFINITY;
  for (const each of memory.items) {
    if (since === null) each.told = false;
    if (since === null || each.told || (settings.atReading && !each.read)) continue;
    const at = Math.max(each.fromMs, since) + onDelayMs;
    if (at > now) due = Math.min(due, at);
    else {
      each.told = true;
      memory.passed.push(each.item);
    }
  }
  timer.at = Number.isFinite(due) ? due : null;
  return raised(settings, memory) ? 1 : 0;
}

function raised(settings: PresentSettings, { band: value, items, place }: PresentMemory): boolean {
  const told = items.some((each) => each.told);
  if (settings.needsItem) return told;
  return value.level[0].answer && (!settings.atReading || place || told);
}

/** As `judge`, after the value may have been beyond for its delay; with nothing there the place is held. */
function judgeValue(
  settings: PresentSettings,
  memory: PresentMemory,
  wasBeyond: boolean,
  now: EpochMs,
  timer: Timer,
): Severity {
  judge(settings, memory, now, timer);
  const beyond = memory.band.level[0].answer;
  if (!beyond) memory.place = false;
  else if (!wasBeyond && !settings.needsItem && !memory.items.some(({ told }) => told)) {
    memory.place = true;
    memory.passed.push('');
  }
  return raised(settings, memory) ? 1 : 0;
}

function mark(
  settings: PresentSettings,
  memory: PresentMemory,
  { item, at, judged, input }: Marking,
  timer: Timer,
): Severity {
  const { items } = memory;
  const known = items.findIndex((each) => sameItem(each.item, item));
  if (input === 1) {
    if (known >= 0 && items[known]!.fromMs <= at) items.splice(known, 1);
  } else if (item !== null) {
    if (settings.lastOnly) items.splice(0);
    else if (known >= 0) return judge(settings, memory, judged, timer);
    items.push({ item, fromMs: at, read: false, told: false });
  }
  return judge(settings, memory, judged, timer);
}

function evidence(settings: PresentSettings, memory: PresentMemory): Evidence {
  const told = memory.items.filter((each) => each.told);
  const first = told[0];
  const seen = band.evidence(settings.band, memory.band);
  const since = beyondSince(memory.band);
  return {
    ...seen,
    requiredMs: settings.band.onDelayMs,
    ...(first === undefined ? {} : { item: first.item, items: told.length }),
    ...(first === undefined || since === null || !settings.needsItem
      ? {}
      : { sinceMs: Math.max(first.fromMs, since) }),
  };
}

export const present: RuleKind<PresentSettings, PresentMemory> = {
  name: 'present',
  version: 1,
  summary:
    'A value beyond its limits while things are there; every rack, container, lot or shot that was there with it for the delay is held, one by one.',
  written: z.strictObject({
    low: z.optional(quantitySetting('Alarm below this.')),
    high: z.optional(quantitySetting('Alarm above this.')),
    deadband: deadbandSetting,
    on_delay: z.optional(
      durationSetting(
        'How long the value must be beyond before the alarm is raised, and how long each thing must be there meanwhile before it is held.',
      ),
    ),
    inclusive: z.optional(
      z
        .boolean()
        .check(z.meta({ description: 'true: a value exactly at the limit counts as beyond it.' })),
    ),
    at_reading: z.optional(
      z.boolean().check(
        z.meta({
          description:
            'true: a reading tells only of what is there when it comes, as a logger of the delivery it came with. What comes later is held by a reading of its own.',
        }),
      ),
    ),
    last_only: z.optional(
      z.boolean().check(
        z.meta({
          description:
            'true: a reading tells only of the one thing named last, as a probe of the drum it was put in.',
        }),
      ),
    ),
    needs_item: z.optional(
      z.boolean().check(
        z.meta({
          description:
            'true: raised only for things that are there. Else the value alone raises it, and where nothing is known to be there, the station’s container or the whole place is held.',
        }),
      ),
    ),
  }),
  takes: { least: 1, most: 1, units: 'any', roles: ['the value'] },
  marks: {
    least: 1,
    most: 2,
    roles: ['what says that a thing came', 'what says that it left'],
  },
  compile,
  outlives: true,
  begin: (settings, at, timer) => ({
    band: band.begin(settings.band, at, timer),
    items: [],
    passed: [],
    place: false,
  }),
  sample(settings, memory, reading, timer) {
    for (const each of memory.items) each.read = true;
    const wasBeyond = memory.band.level[0].answer;
    band.sample(settings.band, memory.band, reading, timer);
    return judgeValue(settings, memory, wasBeyond, reading.judged, timer);
  },
  mark,
  refuses: (_settings, memory, { item, input }) =>
    input === 0 &&
    memory.items.length >= itemsMax &&
    !memory.items.some((each) => sameItem(each.item, item))
      ? `${itemsMax} are there already; write down first which of them left`
      : null,
  passed: ({ passed }) => (passed.length === 0 ? passed : passed.splice(0)),
  deadline(settings, memory, at, timer) {
    const wasBeyond = memory.band.level[0].answer;
    band.deadline!(settings.band, memory.band, at, timer);
    return judgeValue(settings, memory, wasBeyond, at, timer);
  },
  gap(settings, memory, fromMs, toMs, timer) {
    const since = beyondSince(memory.band);
    if (since !== null)
      for (const each of memory.items) {
        if (each.told) continue;
        const counts = Math.max(each.fromMs, since);
        if (counts < toMs) each.fromMs = counts + toMs - Math.max(fromMs, counts);
      }
    band.gap(settings.band, memory.band, fromMs, toMs, timer);
    if (since !== null) timer.at = toMs + 1;
  },
  shift(memory, deltaMs) {
    band.shift(memory.band, deltaMs);
    for (const each of memory.items) each.fromMs += deltaMs;
  },
  evidence,
  limits: ({ band: settings }) => band.limits!(settings),
  sentence: (seen) => band.sentence(seen),
};
