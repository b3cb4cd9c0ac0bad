/** What is kept of the heat of racks, as plain data, and how it changes. */

import type { HeatCount } from '../derive/derived-kind.ts';
import { itemKey } from '../hold/item.ts';
import type { EpochMs } from '../signal/sample.ts';

/** Raise it when the shape changes, and teach `takenUp` the old one. */
export const heatsVersion = 1;

/** One more, and the one that had no heat for the longest leaves. */
export const racksMax = 2_000;

/** Equivalent milliseconds by way of counting (`countKey`). */
type ByCount = Record<string, number>;

export interface RackHeat {
  ms: ByCount;
  /** What it had when its last stay began. */
  base: ByCount;
  /** When its last stay began. */
  since: EpochMs;
  /** It has had heat that nobody saw. */
  partial: boolean;
  /** When it had heat last. */
  at: EpochMs;
}

export interface OvenHeat {
  /** A load is in; null while nothing has said. */
  open: boolean | null;
  openedAt: EpochMs | null;
  closedAt: EpochMs | null;
  /** Of the load that is in, or was last. */
  load: ByCount;
  loadPartial: boolean;
  /** A rack of this load has been named. */
  named: boolean;
  /** In the order in which they were named. */
  inside: { item: string; since: EpochMs }[];
  /** Where none is inside: the one that left last. */
  left: string | null;
  /** Of the metal; `seenAt` null before the first and after a time nobody saw. */
  value: number;
  seenAt: EpochMs | null;
}

export interface SavedHeats {
  readonly version: number;
  readonly keys: readonly string[];
  readonly racks: Readonly<Record<string, RackHeat>>;
  readonly ovens: Readonly<Record<string, OvenHeat>>;
}

export const countKey = ({ referenceC, kinetics }: HeatCount): string =>
  kinetics.by === 'z'
    ? `${referenceC} z ${kinetics.zK}`
    : `${referenceC} Ea ${kinetics.activationKJPerMol}`;

export const newOven = (keys: readonly string[]): OvenHeat => ({
  open: null,
  openedAt: null,
  closedAt: null,
  load: Object.fromEntries(keys.map((key) => [key, 0])),
  loadPartial: true,
  named: false,
  inside: [],
  left: null,
  value: 0,
  seenAt: null,
});

/**
 * What was saved, under today's ways of counting. By one that is new nobody counted what racks had
 * before: there their sums are partial. Of another version nothing is taken up.
 */
export function takenUp(
  saved: SavedHeats | undefined,
  keys: readonly string[],
): Pick<SavedHeats, 'racks' | 'ovens'> {
  if (saved === undefined || saved.version !== heatsVersion) return { racks: {}, ovens: {} };
  const whole = keys.every((key) => saved.keys.includes(key));
  const counted = (of: ByCount): ByCount =>
    Object.fromEntries(keys.map((key) => [key, of[key] ?? 0]));
  const { racks, ovens } = structuredClone(saved);
  return {
    racks: mapped(racks, (rack) => ({
      ...rack,
      ms: counted(rack.ms),
      base: counted(rack.base),
      partial: rack.partial || !whole,
    })),
    ovens: mapped(ovens, (oven) => ({
      ...oven,
      load: counted(oven.load),
      loadPartial: oven.loadPartial || !whole,
    })),
  };
}

const mapped = <T>(all: Readonly<Record<string, T>>, of: (one: T) => T): Record<string, T> =>
  Object.fromEntries(Object.entries(all).map(([key, one]) => [key, of(one)]));

/** So much more; null where nobody can say how much. */
export function added(rack: RackHeat, key: string, worthMs: number | null, at: EpochMs): void {
  if (worthMs === null) rack.partial = true;
  rack.ms[key] = (rack.ms[key] ?? 0) + (worthMs ?? 0);
  rack.at = at;
}

export function beginStay(rack: RackHeat, at: EpochMs): void {
  rack.base = { ...rack.ms };
  rack.since = at;
  rack.at = Math.max(rack.at, at);
}

/** Other parts hang on it since `at`: of its last stay it keeps what came after. */
export function renewed(rack: RackHeat, at: EpochMs): void {
  const all = at <= rack.since;
  for (const key of Object.keys(rack.ms)) {
    rack.ms[key] = all ? rack.ms[key]! - (rack.base[key] ?? 0) : 0;
    rack.base[key] = 0;
  }
  if (all) return;
  // Said of the midst of a stay: how much of it came after is not known.
  rack.since = at;
  rack.partial = true;
}

/** Keeps the number of racks in its bound; none that is in an oven leaves. */
export function oldestLeaves(racks: Map<string, RackHeat>, ovens: readonly OvenHeat[]): void {
  if (racks.size <= racksMax) return;
  const inside = new Set(ovens.flatMap((oven) => oven.inside.map(({ item }) => itemKey(item))));
  let oldest: string | null = null;
  for (const [item, { at }] of racks) {
    if (inside.has(item) || at === 0) continue;
    if (oldest === null || at < racks.get(oldest)!.at) oldest = item;
  }
  if (oldest !== null) racks.delete(oldest);
}

/** Every time in it moved: the clock was set anew. */
export function heatsShifted(saved: SavedHeats, deltaMs: number): SavedHeats {
  const move = (at: EpochMs | null): EpochMs | null => (at === null ? null : at + deltaMs);
  return {
    ...saved,
    racks: mapped(saved.racks as Record<string, RackHeat>, (rack) => ({
      ...rack,
      since: rack.since + deltaMs,
      at: rack.at + deltaMs,
    })),
    ovens: mapped(saved.ovens as Record<string, OvenHeat>, (oven) => ({
      ...oven,
      openedAt: move(oven.openedAt),
      closedAt: move(oven.closedAt),
      seenAt: move(oven.seenAt),
      inside: oven.inside.map(({ item, since }) => ({ item, since: since + deltaMs })),
    })),
  };
}
