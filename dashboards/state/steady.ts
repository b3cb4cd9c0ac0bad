/**
 * Entries that stay where they are while somebody may be about to touch one: the order shown is
 * the order that was, until no finger is down and 5 s have passed since the last.
 */
import { useEffect, useRef, useState } from 'preact/hooks';

const restMs = 5_000;

export interface Steady<T> {
  readonly shown: T;
  /** There is a newer order, held back. */
  readonly held: boolean;
  readonly show: () => void;
}

/** `key` tells whether two orders are the same. */
export function useSteady<T>(next: T, key: (order: T) => string): Steady<T> {
  const [shown, setShown] = useState(next);
  const [, draw] = useState(0);
  const touch = useRef({ down: false, until: 0 });
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const rest = (): void => {
      touch.current = { down: false, until: Date.now() + restMs };
      clearTimeout(timer);
      timer = setTimeout(() => draw((n) => n + 1), restMs + 20);
    };
    const down = (): void => {
      touch.current = { down: true, until: Number.POSITIVE_INFINITY };
    };
    document.addEventListener('pointerdown', down);
    document.addEventListener('pointerup', rest);
    document.addEventListener('pointercancel', rest);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('pointerdown', down);
      document.removeEventListener('pointerup', rest);
      document.removeEventListener('pointercancel', rest);
    };
  }, []);
  const differs = key(next) !== key(shown);
  const isTouched = touch.current.down || Date.now() < touch.current.until;
  if (differs && !isTouched) setShown(next);
  return {
    shown: differs && !isTouched ? next : shown,
    held: differs && isTouched,
    show: () => {
      touch.current = { down: false, until: 0 };
      setShown(next);
    },
  };
}
