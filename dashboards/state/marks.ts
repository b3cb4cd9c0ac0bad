/** A station's marks and clocks: read when its page opens, and again when somebody says one. */
import type { MarksView } from '../../agent/web/contract.ts';
import { get } from './api.ts';
import { useBoard } from './board.ts';
import { type Read, useRead } from './read.ts';

export function useMarks(station: string): Read<MarksView> {
  const said = useBoard((board) => board.marksSaid);
  return useRead(
    () => get<MarksView>(`/api/marks?station=${encodeURIComponent(station)}`),
    [station, said],
  );
}
