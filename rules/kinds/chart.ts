/**
 * `chart`: readings that no longer scatter about their baseline by chance.
 *
 * The run rules of a named set (rules/process/run-rules.ts) over points of a signal; made for hand
 * readings, each a point, as film on a panel. Told at the point that completes a pattern, over at
 * the first that completes none. A gap breaks no run: readings by hand are far apart anyway. A
 * gate that closes ends the answer and not the run.
 */
import { z } from 'zod/mini';
import { brokenRunRules, runPointsMax } from '../process/run-rules.ts';
import { withoutDust } from '../quantity/quantity.ts';
import type { EpochMs } from '../signal/sample.ts';
import {
  type Baseline,
  type BaselineSettings,
  baselineBegin,
  baselineGap,
  baselinePoint,
  baselineShift,
  baselineWritten,
  compileBaseline,
} from './baseline.ts';
import {
  answerDue,
  answered,
  answerSay,
  answerStand,
  compileDelays,
  type Delayed,
  type Delays,
  delayedBegin,
  delayedGap,
  delayedShift,
} from './delay.ts';
import type { RuleKind } from './kind.ts';
import { patternName, patternSentence, runRuleSets } from './run-words.ts';
import { delaySettings } from './settings.ts';

export interface ChartSettings extends Delays, BaselineSettings {
  readonly runRules: keyof typeof runRuleSets;
}

export interface ChartMemory {
  readonly answer: Delayed;
  readonly baseline: Baseline;
  /** Of the latest points, oldest first, as many as the longest pattern looks back. */
  scores: number[];
  /** The last point. */
  value: number | null;
  /** The first pattern of the set that it completed; of the last that did. */
  pattern: string | null;
  at: EpochMs | null;
}

export const chart: RuleKind<ChartSettings, ChartMemory> = {
  name: 'chart',
  version: 1,
  summary:
    'Readings that no longer scatter about their baseline by chance, as a control chart shows; for hand readings.',
  written: z.strictObject({
    ...baselineWritten,
    run_rules: z.optional(
      z.enum(['western-electric', 'nelson']).check(
        z.meta({
          description:
            'western-electric, four rules, 8 on one side, unless given; or nelson, eight rules, 9 on one side, which find more and are wrong more often.',
        }),
      ),
    ),
    ...delaySettings,
  }),
  compile: (read) => ({
    ...compileBaseline(read),
    ...compileDelays(read),
    runRules: read.text('run_rules') === 'nelson' ? 'nelson' : 'western-electric',
  }),
  begin: (settings) => ({
    answer: delayedBegin(),
    baseline: baselineBegin(settings),
    scores: [],
    value: null,
    pattern: null,
    at: null,
  }),
  reopen(_settings, memory) {
    baselineGap(memory.baseline);
    Object.assign(memory.answer, delayedBegin());
  },
  stand: answerStand,
  sample(settings, memory, reading, timer) {
    // The engine lays the latest before a rule whose gate opens; it may be one it has had.
    if (reading.at === memory.at) return answered(memory);
    memory.at = reading.at;
    const { scores, baseline } = memory;
    const point = baselinePoint(settings, baseline, reading.value, reading.judged);
    if (point === null) return answered(memory);
    scores.push((point - baseline.reference!) / baseline.sigma!);
    if (scores.length > runPointsMax) scores.shift();
    const set = runRuleSets[settings.runRules];
    const first = brokenRunRules(scores, scores.length, set)?.[0];
    memory.value = point;
    if (first !== undefined) memory.pattern = patternName(set.rules[first]!);
    return answerSay(settings, memory, first !== undefined, reading.judged, timer);
  },
  deadline: answerDue,
  gap(_settings, memory, fromMs, toMs) {
    delayedGap(memory.answer, toMs - fromMs);
    baselineGap(memory.baseline);
  },
  shift(memory, deltaMs) {
    delayedShift(memory.answer, deltaMs);
    baselineShift(memory.baseline, deltaMs);
    if (memory.at !== null) memory.at += deltaMs;
  },
  evidence(_settings, { answer, baseline, value, pattern, at }) {
    const { reference } = baseline;
    return {
      ...(at === null ? {} : { at }),
      ...(value === null ? {} : { value: withoutDust(value) }),
      ...(reference === null ? {} : { reference: withoutDust(reference) }),
      ...(value === null || reference === null
        ? {}
        : {
            difference: withoutDust(Math.abs(value - reference)),
            side: value < reference ? 'low' : 'high',
          }),
      ...(pattern === null ? {} : { pattern }),
      ...(answer.sinceMs === null ? {} : { sinceMs: answer.sinceMs }),
    };
  },
  sentence: ({ pattern }) => patternSentence(pattern),
};
