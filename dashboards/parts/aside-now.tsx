/** What holds beneath what is put aside: its condition, or that nobody can tell. */
import type { AsideView } from '../../agent/web/contract.ts';
import { useBoard } from '../state/board.ts';
import { nowMs, useNow } from '../state/link.ts';
import { asideNow } from './aside-words.ts';

export function AsideNow({ aside }: { readonly aside: AsideView }) {
  useNow(10_000);
  const signals = useBoard((board) => board.signals);
  const said = asideNow(aside, signals, nowMs());
  return said === null ? null : <em>{said}</em>;
}
