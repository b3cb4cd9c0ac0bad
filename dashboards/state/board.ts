/**
 * What the page knows of the line: one board, written by the loader and the live stream, read by
 * every view.
 *
 * Always true: a slice that changed is a new object, so a view that reads it can tell by identity;
 * whoever listens is told once a turn, however many events came in it.
 */
import { useEffect, useRef, useState } from 'preact/hooks';
import type {
  AlarmView,
  AsideView,
  CoverageView,
  Health,
  HoldView,
  RuleView,
  SignalView,
  SiteView,
} from '../../agent/web/contract.ts';

export interface Board {
  readonly site: SiteView | null;
  readonly signals: ReadonlyMap<string, SignalView>;
  /** By occurrence; what is open, and what closed while the page looked on. */
  readonly alarms: ReadonlyMap<string, AlarmView>;
  readonly holds: ReadonlyMap<string, HoldView>;
  /** By rule: shelved, suppressed by design, out of service. */
  readonly aside: ReadonlyMap<string, AsideView>;
  readonly coverage: CoverageView | null;
  readonly rules: ReadonlyMap<string, RuleView>;
  readonly health: Health | null;
  /** Counts complete reloads; views that fetched on their own fetch again. */
  readonly loads: number;
  /** Counts marks that were said; who shows them reads them again. */
  readonly marksSaid: number;
  /** What stands here was kept on this phone and heard then, by the phone's clock; null once it is read anew. */
  readonly kept: number | null;
  /** Why the agent refused to be read; null once it went through. */
  readonly problem: string | null;
}

let board: Board = {
  site: null,
  signals: new Map(),
  alarms: new Map(),
  holds: new Map(),
  aside: new Map(),
  coverage: null,
  rules: new Map(),
  health: null,
  loads: 0,
  marksSaid: 0,
  kept: null,
  problem: null,
};

const listeners = new Set<() => void>();
let told = false;

/** Tells every listener once, at the end of this turn. */
export function tellListeners(): void {
  if (told) return;
  told = true;
  queueMicrotask(() => {
    told = false;
    for (const listener of [...listeners]) listener();
  });
}

export const readBoard = (): Board => board;

export function writeBoard(change: Partial<Board>): void {
  board = { ...board, ...change };
  tellListeners();
}

/** A map with one entry set. */
export function withEntry<V>(map: ReadonlyMap<string, V>, key: string, value: V): Map<string, V> {
  return new Map(map).set(key, value);
}

export function listen(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** A slice of what is known; the view is drawn again when the slice is another. */
export function useTold<T>(select: () => T): T {
  const [, draw] = useState(0);
  const drawn = useRef<T>(undefined as T);
  const value = select();
  drawn.current = value;
  const chosen = useRef(select);
  chosen.current = select;
  useEffect(
    () =>
      listen(() => {
        if (!Object.is(chosen.current(), drawn.current)) draw((n) => n + 1);
      }),
    [],
  );
  return value;
}

export const useBoard = <T>(select: (board: Board) => T): T => useTold(() => select(board));
