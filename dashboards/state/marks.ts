/** A station's marks and clocks: read when its page opens, and again when somebody says one. */
import { useEffect, useState } from 'preact/hooks';
import type { MarksView } from '../../agent/web/contract.ts';
import { get } from './api.ts';
import { useBoard } from './board.ts';

/** null before they are read; what was read last where the agent does not answer. */
export function useMarks(station: string): MarksView | null {
  const [marks, setMarks] = useState<MarksView | null>(null);
  const loads = useBoard((board) => board.loads);
  const said = useBoard((board) => board.marksSaid);
  useEffect(() => {
    let left = false;
    get<MarksView>(`/api/marks?station=${encodeURIComponent(station)}`).then(
      (read) => {
        if (!left) setMarks(read);
      },
      () => {
        // The link is being opened again, and the page reads everything when it is.
      },
    );
    return () => {
      left = true;
    };
  }, [station, loads, said]);
  return marks;
}
