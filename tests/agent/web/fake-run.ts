/** An oven run for tests. */
import type { RunView } from '#agent/web/run-contract.ts';

const openedMs = 1_767_225_600_000; // 2026-01-01T00:00:00Z

export const run = (over: Partial<RunView> = {}): RunView => ({
  id: `mounts-2/oven-1@${openedMs}`,
  line: 'mounts-2',
  station: 'oven-1',
  opened: openedMs,
  closed: openedMs + 1_800_000,
  why: 'unloaded',
  readings: 180,
  peak: 88.4,
  lowest: 21.5,
  steepest_per_min: 6.2,
  above_ms: 700_000,
  upper_ms: 0,
  unobserved_ms: 10_000,
  under: false,
  over: false,
  limits: { above: 65, above_for_ms: 600_000, peak: 100, upper: null, upper_for_ms: null },
  ...over,
});
