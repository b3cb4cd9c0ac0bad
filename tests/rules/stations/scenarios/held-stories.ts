/** Something on hold is used: the same short story at every station that has a mark for it. */
import type { HoldWhat } from '#rules/hold/hold.ts';
import type { Story } from '../scenario.ts';

/** It is on hold, is used all the same, and is released. */
export const usedOnHold = (what: HoldWhat, mark: string, item: string): Story => ({
  title: `${item}, a ${what} on hold, is used all the same; quality releases it a quarter of an hour later.`,
  tell: (line) => {
    line.hold(1, what, item).mark(5, mark, item).waitTo(20).lift(20, item).waitTo(21);
  },
});
