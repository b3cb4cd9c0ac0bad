/**
 * Suppression by design, as a rule or its station writes it. What can hurt people is suppressed only
 * where its own rule says so and somebody answers for it; what is highly managed never.
 */
import { parseDuration } from '../quantity/duration.ts';
import { didYouMean } from '../site/nearest.ts';
import type { RuleWritten } from '../site/rule-schema.ts';
import type { WhileWritten } from '../site/suppress-schema.ts';
import {
  type GateDraft,
  type Path,
  type Report,
  reportNoSignal,
  type SignalDraft,
  type StationDraft,
} from './draft.ts';
import type { AlarmClass, PlanWhile } from './plan.ts';
import type { PathOf } from './rule-settings.ts';
import { compileGate } from './rule-terms.ts';
import { sentence } from './sentence.ts';

/** A stretch between marks ends by itself: a shift, common practice, no published source. */
const atMostMsUsual = 8 * 3_600_000;
const atMostMsMost = 7 * 86_400_000;

export type WhileDraft =
  | { readonly gate: GateDraft; readonly because: string; readonly signedBy: string | null }
  | (Extract<PlanWhile, { from: string }> & {
      readonly gate?: undefined;
      readonly signedBy: string | null;
    });

export interface SuppressionDraft {
  readonly whiles: readonly WhileDraft[];
  readonly offDelayMs: number;
}

/** What is asked of the rule that it is for. */
export interface SuppressedRule {
  readonly people: boolean;
  /** null for a rule that watches a sensor. */
  readonly hazard: string | null;
  readonly class: AlarmClass;
  /** Names of the wildcards of what it judges. */
  readonly judged: readonly string[];
}

export function compileSuppression(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  rule: SuppressedRule,
  written: Partial<RuleWritten>,
  pathOf: PathOf,
  report: Report,
): SuppressionDraft | null {
  const own = listOf(written.suppress_while);
  const path = [...pathOf('suppress_while'), 'suppress_while'];
  // A station's own goes for its process alarms: a sensor that dies while the line stands is told.
  const shared =
    rule.people || rule.class.highlyManaged || rule.hazard === null
      ? []
      : listOf(station.written.suppress_while);
  if (own.length > 0) reportNever(rule, own, path, report);
  const at = (list: readonly WhileWritten[], base: Path) =>
    list.map((each, i) => ({ each, path: list.length === 1 ? base : [...base, i] }));
  const all = [...at(own, path), ...at(shared, [...station.path, 'suppress_while'])];
  if (all.length === 0) return null;
  const whiles = all.flatMap(({ each, path: where }): WhileDraft[] => {
    const one =
      'signal' in each
        ? bySignal(station, signals, rule, each, where, report)
        : byMarks(station, each, where, report);
    return one === null ? [] : [one];
  });
  const settleMs = all.map(({ each, path: where }) =>
    duration(each.settle, 0, [...where, 'settle'], report),
  );
  return { whiles, offDelayMs: Math.max(...settleMs) };
}

const listOf = (written: RuleWritten['suppress_while']): readonly WhileWritten[] =>
  written === undefined ? [] : [written].flat();

function reportNever(
  { people, class: of }: SuppressedRule,
  own: readonly WhileWritten[],
  path: Path,
  report: Report,
): void {
  if (of.highlyManaged)
    report({
      path,
      problem: 'this alarm is highly managed: nothing suppresses it',
      fix: 'Take suppress_while out.',
    });
  else if (people && own.some(({ signed_by: signedBy }) => signedBy === undefined))
    report({
      path,
      problem: 'people can be hurt by what this rule watches, and nobody answers for silencing it',
      fix: 'Take suppress_while out; or add signed_by, and say in because what protects people then.',
    });
}

function bySignal(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  { judged }: SuppressedRule,
  each: Extract<WhileWritten, { signal: string }>,
  path: Path,
  report: Report,
): WhileDraft | null {
  const signal = signals.get(each.signal);
  if (signal === undefined) {
    reportNoSignal(station, signals, each.signal, [...path, 'signal'], report);
    return null;
  }
  const words = { what: 'suppress_while', always: 'always suppresses', never: 'never suppresses' };
  const gate = compileGate(each, signal, judged, path, report, words);
  return { gate, because: each.because, signedBy: each.signed_by ?? null };
}

function byMarks(
  station: StationDraft,
  each: Extract<WhileWritten, { from: string }>,
  path: Path,
  report: Report,
): WhileDraft | null {
  const ids = (['from', 'until'] as const).map((key) => {
    const mark = station.marks.get(each[key]);
    if (mark === undefined)
      report({
        path: [...path, key],
        problem: `this station has no mark "${each[key]}"`,
        fix: `${didYouMean(each[key], [...station.marks.keys()])} Or add it under marks, with what: none.`,
      });
    else if (mark.what !== null)
      report({
        path: [...path, key],
        problem: `"${each[key]}" happens to a ${mark.what}, not to the station`,
        fix: 'Name a mark of the place itself (what: none).',
      });
    return mark?.what === null ? mark.id : null;
  });
  if (each.from === each.until)
    report({ path, problem: 'it begins and ends with the same mark', fix: 'Name two marks.' });
  const atMostMs = duration(each.at_most, atMostMsUsual, [...path, 'at_most'], report);
  if (atMostMs === 0 || atMostMs > atMostMsMost)
    report({
      path: [...path, 'at_most'],
      problem: 'a stretch between marks has an end, after 7 d at most',
      fix: 'Write how long it can take, as 8 h.',
    });
  const [from, until] = ids;
  if (from == null || until == null) return null;
  return { from, until, atMostMs, because: each.because, signedBy: each.signed_by ?? null };
}

function duration(text: string | undefined, otherwise: number, path: Path, report: Report): number {
  if (text === undefined) return otherwise;
  const read = parseDuration(text);
  if (read.ok) return read.value;
  report({ path, problem: read.problem, fix: sentence(read.fix) });
  return otherwise;
}
