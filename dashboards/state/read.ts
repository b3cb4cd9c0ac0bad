/**
 * Reading from the agent for a view of its own.
 *
 * Always true: what could not be read is told apart from there being nothing; what was read before stands
 * until something newer is.
 */
import { useEffect, useState } from 'preact/hooks';
import { NoAnswer, Refused } from './api.ts';
import { useBoard } from './board.ts';

export type Unread =
  | { readonly kind: 'refused'; readonly code: string; readonly why: string; readonly fix: string }
  | { readonly kind: 'no-answer' };

export interface Read<T> {
  /** What was read last; null before anything was. */
  readonly found: T | null;
  /** Why the latest reading brought nothing; null where it did, or is under way. */
  readonly failed: Unread | null;
  readonly again: () => void;
}

/** An error of the program itself is thrown on. */
export function unreadOf(error: unknown): Unread {
  if (error instanceof Refused) {
    const { code, detail, fix } = error.problem;
    return { kind: 'refused', code, why: detail, fix };
  }
  if (error instanceof NoAnswer) return { kind: 'no-answer' };
  throw error;
}

/** Read when the view opens, when `by` changes, when the board was read anew, and when asked to again. */
export function useRead<T>(read: () => Promise<T>, by: readonly unknown[]): Read<T> {
  const loads = useBoard((board) => board.loads);
  const [turn, setTurn] = useState(0);
  const [state, setState] = useState<Omit<Read<T>, 'again'>>({ found: null, failed: null });
  useEffect(() => {
    let wanted = true;
    const take = (next: Partial<Read<T>>): void => {
      if (wanted) setState((before) => ({ ...before, ...next }));
    };
    read().then(
      (found) => take({ found, failed: null }),
      (error: unknown) => take({ failed: unreadOf(error) }),
    );
    return () => {
      wanted = false;
    };
  }, [...by, loads, turn]);
  const again = (): void => {
    setState((before) => ({ ...before, failed: null }));
    setTurn((n) => n + 1);
  };
  return { ...state, again };
}
