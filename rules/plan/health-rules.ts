/**
 * `lost-<signal>` for every signal that promised how often it speaks, `stuck-<signal>` where the
 * station says that such a reading must move. How soon to act follows the rules that lean on the
 * signal, at most medium: losing a sensor is not yet the harm it watches for (engineering judgement).
 * Where people can be hurt by that, it is of their class: highly managed, made no weaker, and with a
 * signal word for people: that of the hazard, at most WARNING; CAUTION where another sensor still
 * watches for each of its hazards (engineering judgement).
 */
import { type Priority, priorities } from '../alarm/priority.ts';
import { ruleKinds } from '../kinds/all.ts';
import { missedMax } from '../kinds/lost.ts';
import { type RuleWritten, signalWords } from '../site/rule-schema.ts';
import {
  lostGuardLabel,
  lostLabel,
  lostNumbers,
  overdueLabel,
  overdueNumbers,
  stuckGuardLabel,
  stuckLabel,
  stuckNumbers,
} from '../stations/sensor-health.ts';
import { managedClass, plainClass, type TemplateNumber } from '../stations/station.ts';
import type { CardLabel } from './card.ts';
import { compileRule } from './compile-rule.ts';
import type { Report, RuleDraft, SignalDraft, StationDraft } from './draft.ts';
import { givenBy } from './given.ts';
import { leansOn } from './people-reach.ts';

type SignalWord = (typeof signalWords)[number];

const healthKinds = ['lost', 'stuck'] as const;

const watched = (signals: ReadonlyMap<string, SignalDraft>): SignalDraft[] =>
  [...signals.values()].filter((signal) => signal.kind !== 'derived');

/** Every name such a rule may have at the station, whether or not it is in force. */
export const healthRuleNames = (
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
): readonly string[] =>
  [...watched(signals).map((signal) => signal.name), ...station.broken].flatMap((name) =>
    healthKinds.map((kind) => `${kind}-${name}`),
  );

export function healthRules(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  others: readonly RuleDraft[],
  isOff: (name: string, people: boolean) => boolean,
  report: Report,
): readonly RuleDraft[] {
  const written: Readonly<Record<string, RuleWritten>> = station.written.rules ?? {};
  const rules: RuleDraft[] = [];
  const given = givenBy(station);
  for (const signal of watched(signals)) {
    const leaning = others.filter((rule) => rule.signals.some((from) => leansOn(from, signal)));
    const priority = leaningPriority(leaning);
    const guards = leaning.some((rule) => rule.people || rule.class.highlyManaged);
    for (const kindName of healthKinds) {
      const name = `${kindName}-${signal.name}`;
      const own = Object.hasOwn(written, name) ? written[name] : undefined;
      const stuckAfter =
        station.kind.signals.find((known) => known.name === signal.name)?.stuckAfter ?? null;
      const manual = signal.kind === 'manual';
      const wanted =
        kindName === 'lost' ? signal.expectEveryMs !== null : stuckAfter !== null && !manual;
      const kind = ruleKinds.get(kindName);
      if (kind === undefined) throw new RangeError(`no rule kind "${kindName}"`);
      if ((!wanted && own === undefined) || isOff(name, guards)) continue;
      rules.push(
        compileRule(
          station,
          signals,
          {
            name,
            kind,
            signals: [signal],
            numbers: healthNumbers(kindName, signal, stuckAfter),
            fixed: {},
            gate: null,
            hold: null,
            priority: [priority, priority],
            class: guards ? managedClass : plainClass,
            respond: null,
            hazard: null,
            people: guards,
            usual: usualSilence(kindName, signal),
            label: healthLabel(kindName, manual, wordFor(leaning, signal, others)),
            facts: {},
            given,
            wants: [],
          },
          { own, alike: null },
          report,
        ),
      );
    }
  }
  return rules;
}

/** The signal word for people; null where nobody can be hurt by what the signal tells. */
function wordFor(
  leaning: readonly RuleDraft[],
  signal: SignalDraft,
  others: readonly RuleDraft[],
): SignalWord | null {
  const people = leaning.filter((rule) => rule.people);
  if (people.length === 0) return null;
  const ranks = people.map(({ label }) => signalWords.indexOf(label.word));
  const [warning, caution] = [signalWords.indexOf('WARNING'), signalWords.indexOf('CAUTION')];
  const rank = Math.min(caution, Math.max(warning, Math.min(...ranks)));
  const stands = ({ hazard, station }: RuleDraft): boolean =>
    station.kind.hazards.some(({ id, apart }) => id === hazard && apart !== true) &&
    others.some((rule) => rule.hazard === hazard && readsWithout(rule, signal));
  // Of a topic with + each place has one sensor.
  const stillWatched = signal.names.length === 0 && people.every(stands);
  return stillWatched ? 'CAUTION' : signalWords[rank]!;
}

/** It judges, by a sensor, and not by this one. */
const readsWithout = ({ compiled, signals }: RuleDraft, signal: SignalDraft): boolean =>
  compiled !== null &&
  signals.some(({ kind }) => kind !== 'manual') &&
  !signals.some((from) => leansOn(from, signal));

function healthLabel(
  kind: (typeof healthKinds)[number],
  manual: boolean,
  word: SignalWord | null,
): CardLabel {
  const plain = manual ? overdueLabel : kind === 'lost' ? lostLabel : stuckLabel;
  if (word === null) return plain;
  return { ...(manual ? overdueLabel : kind === 'lost' ? lostGuardLabel : stuckGuardLabel), word };
}

const healthNumbers = (
  kind: (typeof healthKinds)[number],
  signal: SignalDraft,
  stuckAfter: string | null,
): readonly TemplateNumber[] =>
  kind === 'stuck'
    ? stuckNumbers(stuckAfter)
    : signal.kind === 'manual'
      ? overdueNumbers(signal.expectEveryMs)
      : lostNumbers;

/** What `lost` takes where nothing is written (rules/kinds/lost.ts). */
const usualSilence = (
  kind: (typeof healthKinds)[number],
  { kind: of, expectEveryMs }: SignalDraft,
): Readonly<Record<string, string>> =>
  kind === 'lost' && of !== 'manual' && expectEveryMs !== null
    ? { after: `${(missedMax * expectEveryMs) / 1_000} s` }
    : {};

/** The most urgent of the rules that lean on the signal, but not above medium; low where none does. */
function leaningPriority(leaning: readonly RuleDraft[]): Priority {
  const ranks = leaning.map((rule) => priorities.indexOf(rule.priority[0]));
  const rank = Math.max(priorities.indexOf('medium'), Math.min(...ranks, priorities.length - 1));
  return priorities[rank]!;
}
