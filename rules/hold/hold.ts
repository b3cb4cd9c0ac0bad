/**
 * Holds: a stop on a container, rack, lot or shot. A rule or a person sets one; only a person lifts
 * it, with a disposition; it outlives the alarm that set it and is listed until then.
 */

import type { EpochMs } from '../signal/sample.ts';
import { sameItem } from './item.ts';

export const holdWhats = ['container', 'rack', 'lot', 'shot'] as const;
export type HoldWhat = (typeof holdWhats)[number];

export const dispositions = [
  'released',
  'released-after-test',
  'reworked',
  'scrapped',
  'returned',
] as const;
export type Disposition = (typeof dispositions)[number];

export interface Hold {
  readonly id: string;
  readonly what: HoldWhat;
  readonly item: string;
  readonly since: EpochMs;
  /** A person's id, or `rule:<id>`. */
  readonly by: string;
  readonly reason: string;
  readonly occurrence: string | null;
}

export const sameThing = (
  a: Pick<Hold, 'what' | 'item'>,
  b: Pick<Hold, 'what' | 'item'>,
): boolean => a.what === b.what && sameItem(a.item, b.item);

/** The holds that stand. Plain data inside; the engine keeps it in its snapshot. */
export class Holds {
  /** Ids are counted, so that the same inputs give the same ids. */
  private count: number;
  private readonly standing: Map<string, Hold>;

  constructor(saved: { readonly count: number; readonly standing: readonly Hold[] } | null = null) {
    this.count = saved?.count ?? 0;
    this.standing = new Map(saved?.standing.map((hold) => [hold.id, hold]));
  }

  /** Sets a hold; null where the same setter already holds the same item. */
  set(hold: Omit<Hold, 'id'>): Hold | null {
    for (const other of this.standing.values())
      if (sameThing(other, hold) && other.by === hold.by) return null;
    this.count += 1;
    const set = { id: `hold-${this.count}`, ...hold };
    this.standing.set(set.id, set);
    return set;
  }

  /** One that stood before the engine began keeps its id; `count` ids were given by then. */
  carry(hold: Hold, count: number): Hold {
    this.count = Math.max(this.count, count);
    this.standing.set(hold.id, hold);
    return hold;
  }

  /** Lifts a hold; null where none of this id stands. */
  lift(id: string): Hold | null {
    const hold = this.standing.get(id) ?? null;
    this.standing.delete(id);
    return hold;
  }

  /** How many other holds stand on the same thing: it is on hold until the last is lifted. */
  others(hold: Pick<Hold, 'id' | 'what' | 'item'>): number {
    return this.list().filter((other) => other.id !== hold.id && sameThing(other, hold)).length;
  }

  list(): Hold[] {
    return [...this.standing.values()];
  }

  save(): { count: number; standing: Hold[] } {
    return { count: this.count, standing: this.list() };
  }
}
