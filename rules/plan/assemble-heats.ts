/** Ovens that heat racks, and the signals that tell what a rack has had over all of them. */
import { type HeatCount, isFormula, isKeeping } from '../derive/derived-kind.ts';
import type { SignalIndex } from './assemble.ts';
import { idOf, type RuleDraft, type SignalDraft, type StationDraft } from './draft.ts';
import type { PlanDerived, PlanHeats, PlanHold, PlanOven } from './plan.ts';

interface CompiledOven {
  readonly station: StationDraft;
  readonly signals: ReadonlyMap<string, SignalDraft>;
}

/** Absent where nobody counts; the derived signals that do are told where. */
export function assembleHeats(
  stations: readonly CompiledOven[],
  derived: readonly PlanDerived[],
  index: SignalIndex,
): { readonly heats?: PlanHeats; readonly derived: readonly PlanDerived[] } {
  const ovens = stations.flatMap((one) => ovenOf(one, index));
  const places = ovens.map(({ station }) => station);
  const counts = stations.flatMap(({ station, signals }) =>
    [...signals.values()].flatMap((draft) => {
      const by = countOf(draft);
      const signal = index.get(idOf(station, draft.name, ''));
      const oven = places.indexOf(station.id);
      return by === null || signal === undefined || oven < 0 ? [] : [{ ...by, oven, signal }];
    }),
  );
  if (counts.length === 0) return { derived };
  const fresh = stations.flatMap(({ station }) =>
    (station.kind.marks ?? [])
      .filter((mark) => mark.fresh === true)
      .map(({ name }) => `${station.id}/${name}`),
  );
  return {
    heats: { ovens, counts, fresh },
    derived: derived.map((one) => {
      const carries = counts.findIndex(({ signal }) => signal === one.signal);
      return carries < 0 ? one : { ...one, carries };
    }),
  };
}

/** How a signal counts the heat of racks; null for any other. */
export function countOf({ derived }: SignalDraft): HeatCount | null {
  if (derived === null) return null;
  const { kind, compiled } = derived;
  return isFormula(kind) || isKeeping(kind) ? null : (kind.counts?.(compiled) ?? null);
}

/** What a rule holds: of racks whose heat it judges, by the signal of that index, the one that had most. */
export function heldBy({ hold, signals }: RuleDraft, signal: number | undefined): PlanHold | null {
  const [first] = signals;
  if (hold?.named === undefined || first === undefined || signal === undefined) return hold;
  return countOf(first) === null ? hold : { ...hold, hottest: signal };
}

function ovenOf({ station, signals }: CompiledOven, index: SignalIndex): readonly PlanOven[] {
  const { run } = station.kind;
  if (run?.racks === undefined) return [];
  const at = (name: string, unit: string): number | null =>
    signals.get(name)?.unit === unit ? (index.get(idOf(station, name, '')) ?? null) : null;
  const metal =
    at(run.metal, 'Cel') ?? (run.metalElse === undefined ? null : at(run.metalElse, 'Cel'));
  if (metal === null) return [];
  const [arrived, left] = run.racks.map((mark) => `${station.id}/${mark}`);
  return [
    { station: station.id, metal, loaded: at(run.loaded, '1'), arrived: arrived!, left: left! },
  ];
}
