/**
 * `lost-<signal>` for every signal that promised how often it speaks, `stuck-<signal>` where the
 * station says that such a reading must move. How soon to act follows the rules that lean on the
 * signal, at most medium: losing a sensor is not yet the harm it watches for (engineering judgement).
 * Where people can be hurt by that, it is of their class: highly managed, and made no weaker.
 */
import { type Priority, priorities } from '../alarm/priority.ts';
import { ruleKinds } from '../kinds/all.ts';
import { missedMax } from '../kinds/lost.ts';
import type { RuleWritten } from '../site/rule-schema.ts';
import {
  lostLabel,
  lostNumbers,
  overdueLabel,
  overdueNumbers,
  stuckLabel,
  stuckNumbers,
} from '../stations/sensor-health.ts';
import { managedClass, plainClass, type TemplateNumber } from '../stations/station.ts';
import { compileRule } from './compile-rule.ts';
import type { Report, RuleDraft, SignalDraft, StationDraft } from './draft.ts';
import { givenBy } from './given.ts';
import { leansOn } from './people-reach.ts';

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
            label: manual ? overdueLabel : kindName === 'lost' ? lostLabel : stuckLabel,
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
