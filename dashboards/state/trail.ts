/**
 * The last hour of a signal: read once, then grown by what is heard, and cut to its span. Every
 * ruler and evidence chart of a signal shares one.
 */
import { useEffect } from 'preact/hooks';
import type { Series } from '../../agent/web/contract.ts';
import { get } from './api.ts';
import { readBoard, tellListeners, useBoard, useTold } from './board.ts';
import { nowMs } from './link.ts';

export const trailMs = 3_600_000;
const trailPoints = 240;

/** When and how much; null where a reading came that was not usable. */
export type TrailPoint = readonly [at: number, value: number | null];

interface Trail {
  points: readonly TrailPoint[];
  readers: number;
  asked: boolean;
  /** The agent could not be asked for it: no trail is no quiet hour. */
  unread: boolean;
}

const trails = new Map<string, Trail>();
const none: readonly TrailPoint[] = [];

async function read(id: string, trail: Trail): Promise<void> {
  if (trail.asked) return;
  trail.asked = true;
  const until = Math.round(nowMs()) + 1;
  const query = `since=${until - trailMs}&until=${until}&points=${trailPoints}`;
  try {
    const series = await get<Series>(`/api/signals/${encodeURIComponent(id)}/series?${query}`);
    const kept = series.points.map(([at, , , mean]): TrailPoint => [at, mean]);
    const newest = kept.at(-1)?.[0] ?? 0;
    trail.points = [...kept, ...trail.points.filter(([at]) => at > newest)];
    trail.unread = false;
  } catch {
    trail.unread = true; // said below the ruler; the next load asks again
  } finally {
    trail.asked = false;
    tellListeners();
  }
}

/** Adds the latest reading where it is a new one; at most as many points as a trail has twice over. */
function grow(id: string, trail: Trail): void {
  const signal = readBoard().signals.get(id);
  if (signal === undefined || signal.at === null) return;
  const last = trail.points.at(-1);
  if (last !== undefined && signal.at - last[0] < trailMs / trailPoints / 2) return;
  const since = nowMs() - trailMs;
  const kept = trail.points.filter(([at]) => at >= since).slice(-2 * trailPoints);
  trail.points = [...kept, [signal.at, signal.value]];
}

/** The trail of a signal while a view shows it. */
export function useTrail(id: string): readonly TrailPoint[] {
  const loads = useBoard((board) => board.loads);
  useBoard((board) => board.signals.get(id)?.at);
  useEffect(() => {
    const trail = trails.get(id) ?? { points: none, readers: 0, asked: false, unread: false };
    trails.set(id, trail);
    trail.readers += 1;
    if (loads > 0) void read(id, trail);
    return () => {
      trail.readers -= 1;
      if (trail.readers === 0) trails.delete(id);
    };
  }, [id, loads]);
  return useTold(() => {
    const trail = trails.get(id);
    if (trail === undefined) return none;
    grow(id, trail);
    return trail.points;
  });
}

/** Its last hour could not be read. */
export const useTrailUnread = (id: string): boolean =>
  useTold(() => trails.get(id)?.unread === true);
