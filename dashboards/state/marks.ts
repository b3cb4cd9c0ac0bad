/** Marks and clocks of a station, or of all for null: read when a page of them opens, and again when somebody says one. */
import type { MarksView } from '../../agent/web/contract.ts';
import { get } from './api.ts';
import { useBoard } from './board.ts';
import { type Read, useRead } from './read.ts';

export function useMarks(station: string | null): Read<MarksView> {
  const said = useBoard((board) => board.marksSaid);
  return useRead(
    () =>
      get<MarksView>(
        station === null ? '/api/marks' : `/api/marks?station=${encodeURIComponent(station)}`,
      ),
    [station, said],
  );
}
