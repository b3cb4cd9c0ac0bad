/**
 * The terms of a rule that are not its kind's settings: gate, hold, priority, class, time to act.
 * The site's word replaces the station's, one by one.
 */
import type { Priority } from '../alarm/priority.ts';
import type { HoldWhat } from '../hold/hold.ts';
import type { SettingsProblem } from '../kinds/settings.ts';
import { settingsReader } from '../kinds/settings-reader.ts';
import { parseDuration } from '../quantity/duration.ts';
import type { RuleWritten } from '../site/rule-schema.ts';
import type { TemplateGate } from '../stations/station.ts';
import {
  type GateDraft,
  type Path,
  type Report,
  reportNoSignal,
  type SignalDraft,
  type StationDraft,
} from './draft.ts';
import { givenBy } from './given.ts';
import type { AlarmClass, PlanHold } from './plan.ts';
import type { PathOf } from './rule-settings.ts';
import { sentence } from './sentence.ts';

export interface TermDefaults {
  readonly gate: TemplateGate | readonly TemplateGate[] | null;
  readonly hold: HoldWhat | null;
  /** Marks of the station that name what is held. */
  readonly named?: readonly string[];
  readonly priority: readonly [Priority, Priority];
  readonly class: AlarmClass;
  readonly respond: string | null;
}

export interface Terms {
  readonly gates: readonly GateDraft[];
  readonly hold: PlanHold | null;
  readonly priority: readonly [Priority, Priority];
  readonly class: AlarmClass;
  readonly respondMs: number | null;
}

/** Names of the wildcards of what a rule judges, and whether it judges marks. */
interface RuleAbout {
  readonly judged: readonly string[];
  readonly marks: boolean;
}

export function compileTerms(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  about: RuleAbout,
  written: Partial<RuleWritten>,
  defaults: TermDefaults,
  pathOf: PathOf,
  report: Report,
): Terms {
  const priority = written.priority ?? defaults.priority;
  return {
    gates: compileGates(
      station,
      signals,
      about,
      written,
      defaults.gate,
      [...pathOf('gate'), 'gate'],
      report,
    ),
    hold: compileHold(station, written, defaults),
    priority: typeof priority === 'string' ? [priority, priority] : priority,
    class: {
      latching: written.latching ?? defaults.class.latching,
      selfAcknowledging: written.self_acknowledging ?? defaults.class.selfAcknowledging,
      highlyManaged: written.highly_managed ?? defaults.class.highlyManaged,
    },
    respondMs: compileRespond(written.respond ?? defaults.respond, pathOf, report),
  };
}

function compileRespond(text: string | null, pathOf: PathOf, report: Report): number | null {
  if (text === null) return null;
  const read = parseDuration(text);
  if (read.ok) return read.value;
  report({
    path: [...pathOf('respond'), 'respond'],
    problem: read.problem,
    fix: sentence(read.fix),
  });
  return null;
}

function compileHold(
  station: StationDraft,
  written: Partial<RuleWritten>,
  { hold, named = [] }: TermDefaults,
): Terms['hold'] {
  if (written.hold === 'none') return null;
  const what = written.hold?.what ?? hold;
  if (what === null) return null;
  const item = written.hold?.item ?? station.written.container ?? station.id;
  if (named.length === 0 || what !== hold || written.hold?.item !== undefined)
    return { what, item };
  return { what, item, named: named.map((mark) => `${station.id}/${mark}`) };
}

/** The site's own, else those of the template whose signal is bound. */
function compileGates(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  about: RuleAbout,
  written: Partial<RuleWritten>,
  fallback: TermDefaults['gate'],
  path: Path,
  report: Report,
): readonly GateDraft[] {
  if (written.gate === 'none') return [];
  if (about.marks) {
    if (written.gate !== undefined)
      report({
        path,
        problem: 'a rule that judges a mark takes no gate: what was written down stays so',
        fix: 'Take gate out.',
      });
    return [];
  }
  const gates = written.gate ?? templateGates(station, fallback);
  const single = 'signal' in gates;
  const list: readonly GateWords[] = single ? [gates] : gates;
  return list.flatMap((gate, i) => {
    const at = single ? path : [...path, i];
    const signal = signals.get(gate.signal);
    if (signal !== undefined) return [compileGate(gate, signal, about.judged, at, report)];
    if (written.gate !== undefined)
      reportNoSignal(station, signals, gate.signal, [...at, 'signal'], report);
    return [];
  });
}

/** Those of the template whose bounds somebody gave. */
function templateGates(station: StationDraft, fallback: TermDefaults['gate']): GateWords[] {
  return [fallback ?? []].flat().flatMap(({ lowFrom, ...gate }) => {
    if (lowFrom === undefined) return [gate];
    const low = givenBy(station).number(...lowFrom);
    return low === null ? [] : [{ ...gate, low }];
  });
}

interface GateWords {
  readonly signal: string;
  readonly low?: string | undefined;
  readonly high?: string | undefined;
}

interface BoundsWords {
  readonly what: string;
  readonly always: string;
  readonly never: string;
}
const gateWords: BoundsWords = {
  what: 'a gate',
  always: 'is always open',
  never: 'the gate never opens',
};

/** Bounds of a signal within which something is so. */
export function compileGate(
  gate: GateWords,
  signal: SignalDraft,
  judged: readonly string[],
  path: Path,
  report: Report,
  words = gateWords,
): GateDraft {
  if (signal.names.length > 0 && signal.names.join() !== judged.join())
    report({
      path: [...path, 'signal'],
      problem: `"${gate.signal}" is many signals (${signal.names.join(', ')}), and none of them is this rule's`,
      fix: 'Gate by a signal of one topic, or of a topic with the same names.',
    });
  const problems: SettingsProblem[] = [];
  const limits = { low: gate.low, high: gate.high };
  const read = settingsReader(limits, signal, problems);
  const low = read.limit('low');
  const high = read.limit('high');
  for (const problem of problems)
    report({ ...problem, path: [...path, ...problem.path], fix: sentence(problem.fix) });
  if (problems.length === 0 && low === null && high === null)
    report({
      path,
      problem: `${words.what} without low and high ${words.always}`,
      fix: `Give it low, high or both${words === gateWords ? '; or write gate: none' : ''}.`,
    });
  if (low !== null && high !== null && low > high)
    report({
      path,
      problem: `${words.never}: low lies above high`,
      fix: 'Swap low and high.',
    });
  return {
    signal,
    low: low ?? Number.NEGATIVE_INFINITY,
    high: high ?? Number.POSITIVE_INFINITY,
  };
}
