/** Plans for tests, written down in one line a signal and one a rule. */
import { ruleKinds } from '#rules/kinds/all.ts';
import type { MarkOf } from '#rules/kinds/kind.ts';
import type { SettingsProblem } from '#rules/kinds/settings.ts';
import { settingsReader } from '#rules/kinds/settings-reader.ts';
import type {
  Plan,
  PlanFormula,
  PlanHeatCount,
  PlanHeats,
  PlanKeeping,
  PlanOven,
  PlanRule,
  PlanRun,
  PlanSettled,
  PlanSignal,
  PlanWhile,
  ShelfMost,
} from '#rules/plan/plan.ts';

export interface SmallGate {
  readonly on: string;
  readonly low?: number;
  readonly high?: number;
}

type SmallWhile = (SmallGate & { readonly because: string }) | Extract<PlanWhile, { from: string }>;

export interface SmallRule
  extends Partial<Omit<PlanRule, 'kind' | 'settings' | 'marks' | 'gates' | 'suppress'>> {
  readonly suppress?: { readonly whiles: readonly SmallWhile[]; readonly offDelayMs: number };
  readonly kind: string;
  /** The file of the site's own that its kind is said to come from. */
  readonly extension?: string;
  readonly on: string | readonly string[];
  readonly settings: Readonly<Record<string, unknown>>;
  /** Marks it judges, by id. */
  readonly by?: readonly string[];
  readonly gate?: SmallGate;
  readonly gates?: readonly SmallGate[];
}

export interface SmallRun extends Partial<Omit<PlanRun, 'loaded' | 'metal'>> {
  readonly loaded: string;
  readonly metal?: string;
}

export interface SmallHeats extends Pick<PlanHeats, 'fresh'> {
  readonly ovens: readonly (Omit<PlanOven, 'metal' | 'loaded'> & {
    readonly metal: string;
    readonly loaded: string | null;
  })[];
  readonly counts: readonly (Omit<PlanHeatCount, 'signal'> & { readonly signal: string })[];
}

export interface SmallPlan {
  readonly signals: Readonly<Record<string, Partial<PlanSignal>>>;
  readonly rules?: Readonly<Record<string, SmallRule>>;
  readonly derived?: Readonly<
    Record<
      string,
      { readonly inputs: readonly string[] } & (
        | Pick<PlanFormula, 'compute' | 'unproven' | 'extension'>
        | Pick<PlanSettled, 'settled' | 'unproven' | 'extension' | 'carries'>
        | Pick<PlanKeeping, 'keeps' | 'unproven' | 'marks' | 'extension'>
      )
    >
  >;
  readonly runs?: Readonly<Record<string, SmallRun>>;
  /** Its signals by id. */
  readonly heats?: SmallHeats;
  /** By id, `line/station/mark`. */
  readonly marks?: Readonly<Record<string, MarkOf>>;
  readonly revision?: string;
  readonly shelving?: ShelfMost;
}

export function smallPlan(small: SmallPlan): Plan {
  const ids = [
    ...new Set([...Object.keys(small.signals), ...Object.keys(small.derived ?? {})]),
  ].sort();
  const index = (id: string): number => {
    const i = ids.indexOf(id);
    if (i < 0) throw new Error(`the test names no signal ${id}`);
    return i;
  };
  const markIds = Object.keys(small.marks ?? {}).sort();
  const signals = ids.map(
    (id): PlanSignal => ({
      id,
      kind: small.derived?.[id] === undefined ? 'measured' : 'derived',
      unit: 'Cel',
      digits: 1,
      holdMs: 0,
      latenessMs: 600_000,
      expectEveryMs: null,
      ...small.signals[id],
    }),
  );
  const rules = Object.entries(small.rules ?? {})
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([id, rule]): PlanRule => {
      const {
        kind: kindName,
        on,
        settings,
        by = [],
        gate,
        gates = [],
        suppress,
        extension,
        ...rest
      } = rule;
      const bounds = ({ on: by, low, high }: SmallGate) => ({
        signal: index(by),
        low: low ?? Number.NEGATIVE_INFINITY,
        high: high ?? Number.POSITIVE_INFINITY,
      });
      const known = ruleKinds.get(kindName)!;
      const kind = extension === undefined ? known : { ...known, extension };
      const inputs = (typeof on === 'string' ? [on] : on).map(index);
      const problems: SettingsProblem[] = [];
      const compiled = kind.compile(
        settingsReader(
          settings,
          inputs.map((input) => signals[input]!),
          problems,
          by.map((id) => small.marks![id]!),
        ),
      );
      if (problems.length > 0) throw new Error(JSON.stringify(problems));
      return {
        id,
        kind,
        settings: compiled,
        fingerprint: JSON.stringify(settings),
        inputs,
        ...(by.length === 0 ? {} : { marks: by.map((id) => markIds.indexOf(id)) }),
        gates: (gate === undefined ? gates : [gate, ...gates]).map(bounds),
        class: { latching: false, selfAcknowledging: false, highlyManaged: false },
        priority: ['medium', 'high'],
        hazardToPeople: false,
        hold: null,
        ...(suppress === undefined
          ? {}
          : {
              suppress: {
                ...suppress,
                whiles: suppress.whiles.map(
                  (each): PlanWhile =>
                    'from' in each ? each : { ...bounds(each), because: each.because },
                ),
              },
            }),
        ...rest,
      };
    });
  const derived = Object.entries(small.derived ?? {}).map(([id, d]) => ({
    ...d,
    signal: index(id),
    inputs: d.inputs.map(index),
  }));
  const runs = Object.entries(small.runs ?? {}).map(
    ([station, { loaded, metal, ...rest }]): PlanRun => ({
      station,
      loaded: index(loaded),
      metal: metal === undefined ? null : index(metal),
      beside: [],
      least: null,
      peak: null,
      most: null,
      ...rest,
    }),
  );
  const marks = markIds.map((id) => ({ id, what: small.marks![id]! }));
  const revision = small.revision ?? 'test';
  const shelving = small.shelving === undefined ? {} : { shelving: small.shelving };
  const heats =
    small.heats === undefined
      ? {}
      : {
          heats: {
            fresh: small.heats.fresh,
            ovens: small.heats.ovens.map((oven) => ({
              ...oven,
              metal: index(oven.metal),
              loaded: oven.loaded === null ? null : index(oven.loaded),
            })),
            counts: small.heats.counts.map((by) => ({ ...by, signal: index(by.signal) })),
          },
        };
  return { revision, signals, rules, derived, runs, marks, ...heats, ...shelving };
}
