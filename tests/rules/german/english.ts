/** Every English text that a reader of German is told, by where it stands. */
import { ruleKinds } from '#rules/kinds/all.ts';
import type { Evidence } from '#rules/kinds/kind.ts';
import { patternName, runRuleSets } from '#rules/kinds/run-words.ts';
import type { RunRuleSet } from '#rules/process/run-rules.ts';
import { stationKinds } from '#rules/stations/all.ts';
import {
  lostGuardLabel,
  lostLabel,
  overdueLabel,
  stuckGuardLabel,
  stuckLabel,
} from '#rules/stations/sensor-health.ts';

export interface English {
  readonly text: string;
  /** `dip-tank/bath-solids sentence` */
  readonly where: string;
  readonly doNot: boolean;
}

interface LabelLike {
  readonly sentence: string | null;
  readonly consequence: string;
  readonly steps: readonly string[];
  readonly doNot: readonly string[];
  readonly caution: string;
}

function* ofLabel(where: string, label: LabelLike): Generator<English> {
  const plain = (part: string, text: string): English => ({
    text,
    where: `${where} ${part}`,
    doNot: false,
  });
  if (label.sentence !== null) yield plain('sentence', label.sentence);
  yield plain('consequence', label.consequence);
  for (const step of label.steps) yield plain('step', step);
  for (const what of label.doNot) yield { ...plain('do not', what), doNot: true };
  if (label.caution !== '') yield plain('caution', label.caution);
}

/** By station kind: its rules' labels, what its hazards, signals and marks are. */
export const stationTexts: ReadonlyMap<string, readonly English[]> = new Map(
  [...stationKinds.values()].map((kind) => {
    const plain = (where: string, text: string): English => ({
      text,
      where: `${kind.name}/${where}`,
      doNot: false,
    });
    return [
      kind.name,
      [
        ...kind.rules.flatMap(({ name, label }) => [...ofLabel(`${kind.name}/${name}`, label)]),
        ...kind.hazards.flatMap(({ id, words, byHand }) => [
          plain(`${id} hazard`, words),
          ...(byHand === null ? [] : [plain(`${id} by hand`, byHand)]),
        ]),
        ...kind.signals.flatMap(({ name, meaning, where }) => [
          plain(`${name} meaning`, meaning),
          plain(`${name} where`, where),
        ]),
        ...kind.derived.map(({ name, meaning }) => plain(`${name} meaning`, meaning)),
        ...(kind.marks ?? []).flatMap(({ name, meaning, byWhom }) => [
          plain(`${name} meaning`, meaning),
          plain(`${name} by whom`, byWhom),
        ]),
      ],
    ];
  }),
);

/** What a station's rules and derived signals wait for, as the page says it: without where it is written. */
export const needTexts: readonly English[] = [
  ...new Set([...stationKinds.values()].flatMap((kind) => [...needsWithin(kind)])),
].map((need) => {
  const what = /^(.*) \([^()]*\)$/.exec(need)?.[1] ?? need;
  return { text: what.charAt(0).toUpperCase() + what.slice(1), where: need, doNot: false };
});

function* needsWithin(value: unknown): Generator<string> {
  if (typeof value !== 'object' || value === null) return;
  for (const [key, each] of Object.entries(value))
    if (key === 'needs' && typeof each === 'string') yield each;
    else yield* needsWithin(each);
}

/** Rules every station has. */
export const sensorTexts: readonly English[] = Object.entries({
  lostLabel,
  stuckLabel,
  lostGuardLabel,
  stuckGuardLabel,
  overdueLabel,
}).flatMap(([where, label]) => [...ofLabel(where, label)]);

/** What each rule kind judges, in one sentence. */
export const kindTexts: readonly English[] = [...ruleKinds.values()].map(({ name, summary }) => ({
  text: summary,
  where: `kind ${name} summary`,
  doNot: false,
}));

const patterns = Object.values(runRuleSets)
  .flatMap((set: RunRuleSet) => set.rules)
  .map(patternName);

/** What a kind's sentence may turn on, each with and without. */
const evidences: readonly Evidence[] = [
  {},
  { item: 'rack-22' },
  { leftMs: 60_000 },
  { item: 'rack-22', leftMs: 60_000 },
  { side: 'low' },
  { side: 'high' },
  { reference: 20 },
  { side: 'low', reference: 20 },
  { other: 1 },
  { input: 0 },
  { cause: 20 },
  ...patterns.map((pattern) => ({ pattern })),
];

/** What a rule says that brings no sentence of its own. */
export const kindSentences: readonly English[] = [...ruleKinds.values()].flatMap((kind) =>
  evidences.map((evidence) => ({
    text: kind.sentence(evidence),
    where: `kind ${kind.name} sentence`,
    doNot: false,
  })),
);
