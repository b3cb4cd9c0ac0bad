/**
 * The heat each rack has had, summed over every oven it has been through.
 *
 * Always true: a rack's heat is the sum over its stays; a stay counts from the word that it went in
 * to the word that it came out, or to the end of the load. Whoever counts, counts by one reference
 * and one kinetics over all ovens: two ways of counting are two sums. The first rack named of a load
 * has had all of the load's heat, however late it is named. What nobody saw makes a sum partial: at
 * least so much. Between two readings the metal is taken to run straight from one to the other.
 */

import type { Carried } from '../derive/derived-kind.ts';
import { itemKey, sameItem } from '../hold/item.ts';
import type { Plan, PlanHeats, PlanOven } from '../plan/plan.ts';
import { equivalentMs } from '../process/heat-equivalent.ts';
import type { EpochMs } from '../signal/sample.ts';
import {
  added,
  beginStay,
  countKey,
  heatsVersion,
  newOven,
  type OvenHeat,
  oldestLeaves,
  type RackHeat,
  renewed,
  type SavedHeats,
  takenUp,
} from './rack-heat-state.ts';

const loadedFrom = 0.5;
/** Said so late, some of what it had is not known. */
const lateMs = 60_000;

const none: PlanHeats = { ovens: [], counts: [], fresh: [] };

export class RackHeats {
  private readonly plan: PlanHeats;
  private readonly keys: readonly string[];
  private readonly racks: Map<string, RackHeat>;
  /** As in the plan. */
  private readonly ovens: readonly OvenHeat[];
  /** Ovens that listen to a signal, by its index. */
  readonly of: readonly (readonly number[])[];
  /** Derived signals that tell it. */
  private readonly tells: readonly number[];
  private readonly marks: readonly string[];

  constructor({ heats: plan = none, ...whole }: Plan, saved: SavedHeats | undefined) {
    this.plan = plan;
    this.keys = [...new Set(plan.counts.map(countKey))];
    const known = takenUp(saved, this.keys);
    this.racks = new Map(Object.entries(known.racks).map(([item, rack]) => [itemKey(item), rack]));
    this.ovens = plan.ovens.map(({ station }) => known.ovens[station] ?? newOven(this.keys));
    this.marks = (whole.marks ?? []).map(({ id }) => id);
    this.tells = whole.derived.flatMap(({ carries }, i) => (carries === undefined ? [] : [i]));
    this.of = whole.signals.map((_, signal) =>
      plan.ovens.flatMap((o, i) => (o.metal === signal || o.loaded === signal ? [i] : [])),
    );
  }

  sample(signal: number, now: EpochMs, value: number): void {
    for (const i of this.of[signal]!) {
      const [plan, oven] = [this.plan.ovens[i]!, this.ovens[i]!];
      if (plan.loaded === signal) this.load(oven, now, value >= loadedFrom);
      if (plan.metal === signal) this.heat(plan, oven, now, value);
    }
  }

  /** The signal cannot be used from `now` on. */
  blind(signal: number, now: EpochMs): void {
    for (const i of this.of[signal]!) this.lookAway(i, now);
  }

  /** Nothing was observed from `from` on. */
  gap(from: EpochMs): void {
    for (const i of this.ovens.keys()) this.lookAway(i, from);
  }

  /** Somebody said it of a rack: whoever tells its heat, by place among the derived signals. */
  mark(mark: number, item: string | null, at: EpochMs, now: EpochMs): readonly number[] {
    if (item === null || this.tells.length === 0) return [];
    const id = this.marks[mark]!;
    let heard = this.plan.fresh.includes(id);
    if (heard) this.fresh(item, at);
    for (const [i, oven] of this.ovens.entries()) {
      const { arrived, left, loaded } = this.plan.ovens[i]!;
      if (id === arrived) this.arrive(oven, loaded !== null, item, at, now);
      else if (id === left) leave(oven, item);
      else continue;
      heard = true;
    }
    return heard ? this.tells : [];
  }

  /** Of the rack that has had most; where nobody named one, of the load itself. */
  carried(count: number): Carried {
    const by = this.plan.counts[count]!;
    const key = countKey(by);
    const oven = this.ovens[by.oven]!;
    const named = oven.inside.length > 0 ? oven.inside.map(({ item }) => item) : [oven.left];
    let most: Carried | null = null;
    for (const item of named) {
      const rack = item === null ? undefined : this.racks.get(itemKey(item));
      if (item === null || rack === undefined) continue;
      const ms = rack.ms[key] ?? 0;
      if (most === null || ms > most.ms) most = { ms, partial: rack.partial, item };
    }
    return most ?? { ms: oven.load[key] ?? 0, partial: true, item: null };
  }

  /** The rack that has had most, by the way of counting that gives this signal. */
  hottest(signal: number): string | null {
    const count = this.plan.counts.findIndex((each) => each.signal === signal);
    return count < 0 ? null : this.carried(count).item;
  }

  save(): SavedHeats {
    return structuredClone({
      version: heatsVersion,
      keys: this.keys,
      racks: Object.fromEntries(this.racks),
      ovens: Object.fromEntries(this.plan.ovens.map(({ station }, i) => [station, this.ovens[i]!])),
    });
  }

  private load(oven: OvenHeat, now: EpochMs, loaded: boolean): void {
    const was = oven.open;
    if (was === loaded) return;
    if (was === true) this.add(oven, now, oven.value);
    oven.open = loaded;
    if (!loaded) {
      oven.closedAt = now;
      return;
    }
    // Of a load that was in already when observation began nobody saw the beginning.
    oven.loadPartial = was === null;
    for (const key of this.keys) oven.load[key] = 0;
    oven.openedAt = now;
    const before = oven.closedAt ?? Number.NEGATIVE_INFINITY;
    oven.inside = oven.inside.filter(({ since }) => since > before);
    oven.left = null;
    oven.named = oven.inside.length > 0;
    if (oven.loadPartial) for (const { item } of oven.inside) this.rack(item).partial = true;
    if (oven.seenAt !== null) oven.seenAt = now;
  }

  private heat(plan: PlanOven, oven: OvenHeat, now: EpochMs, value: number): void {
    if (oven.open === true || plan.loaded === null) this.add(oven, now, value);
    oven.value = value;
    oven.seenAt = now;
  }

  /** What the metal is worth since it was seen last, to the load and to each rack inside. */
  private add(oven: OvenHeat, now: EpochMs, value: number): void {
    if (oven.seenAt === null || oven.seenAt >= now) return;
    const spanMs = now - oven.seenAt;
    const seen = new Set<string>();
    for (const { referenceC, kinetics, ...by } of this.plan.counts) {
      const key = countKey({ referenceC, kinetics, ...by });
      if (seen.has(key)) continue;
      seen.add(key);
      const worth = equivalentMs(oven.value, value, spanMs, referenceC, kinetics);
      if (worth === null) oven.loadPartial = true;
      oven.load[key] = (oven.load[key] ?? 0) + (worth ?? 0);
      for (const { item } of oven.inside) added(this.rack(item), key, worth, now);
    }
  }

  /** Until `now` the last reading held; after it nothing is known. */
  private lookAway(i: number, now: EpochMs): void {
    const [plan, oven] = [this.plan.ovens[i]!, this.ovens[i]!];
    if (oven.open === true || plan.loaded === null) {
      this.add(oven, now, oven.value);
      oven.loadPartial = true;
      for (const { item } of oven.inside) this.rack(item).partial = true;
    }
    oven.seenAt = null;
  }

  private arrive(oven: OvenHeat, followed: boolean, item: string, at: EpochMs, now: EpochMs): void {
    const { open, openedAt, closedAt } = oven;
    const before = closedAt ?? Number.NEGATIVE_INFINITY;
    const here = oven.inside.find((one) => sameItem(one.item, item));
    // Scanned twice.
    if (here !== undefined && (!followed || open === true || here.since > before)) return;
    oven.inside = oven.inside.filter((one) => !sameItem(one.item, item));
    oven.left = null;
    for (const other of this.ovens) if (other !== oven) forget(other, item);
    const rack = this.rack(item);
    beginStay(rack, at);
    const lateForThis = openedAt !== null && (open === true ? at <= before : at < openedAt);
    if (followed && open !== true && at <= before && !lateForThis) this.whole(rack, oven, now);
    else if (followed && open === true && !lateForThis) this.soFar(rack, oven, at, now);
    // It belonged to a load of which nothing is kept any more.
    if (followed && lateForThis) rack.partial = true;
    else oven.inside.push({ item, since: at });
  }

  /** Named while the load is in: the first one, or one that was in before it began, has had all of it. */
  private soFar(rack: RackHeat, oven: OvenHeat, at: EpochMs, now: EpochMs): void {
    if (!oven.named || at <= (oven.openedAt ?? now)) this.whole(rack, oven, now);
    else if (now - at > lateMs) rack.partial = true;
    oven.named = true;
  }

  private whole(rack: RackHeat, oven: OvenHeat, now: EpochMs): void {
    for (const key of this.keys) added(rack, key, oven.load[key] ?? 0, now);
    if (oven.loadPartial) rack.partial = true;
  }

  /** Other parts hang on it since `at`. */
  private fresh(item: string, at: EpochMs): void {
    const rack = this.racks.get(itemKey(item));
    if (rack === undefined) return;
    const inside = this.ovens.some((oven) => isIn(oven, item));
    if (at <= rack.since || inside) renewed(rack, at);
    else this.racks.delete(itemKey(item));
  }

  private rack(item: string): RackHeat {
    const known = this.racks.get(itemKey(item));
    if (known !== undefined) return known;
    const rack: RackHeat = {
      ms: Object.fromEntries(this.keys.map((key) => [key, 0])),
      base: Object.fromEntries(this.keys.map((key) => [key, 0])),
      since: 0,
      partial: false,
      at: 0,
    };
    this.racks.set(itemKey(item), rack);
    oldestLeaves(this.racks, this.ovens);
    return rack;
  }
}

/** It is somewhere else now. */
function forget(oven: OvenHeat, item: string): void {
  oven.inside = oven.inside.filter((one) => !sameItem(one.item, item));
  if (sameItem(oven.left, item)) oven.left = null;
}

/** Not one of a load that has left. */
const isIn = ({ open, closedAt, inside }: OvenHeat, item: string): boolean =>
  inside.some(
    (one) =>
      sameItem(one.item, item) && (open === true || closedAt === null || one.since > closedAt),
  );

function leave(oven: OvenHeat, item: string): void {
  if (!oven.inside.some((one) => sameItem(one.item, item))) return;
  oven.inside = oven.inside.filter((one) => !sameItem(one.item, item));
  oven.left = item;
}
