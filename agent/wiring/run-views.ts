/** Oven runs in the shapes of the wire, and their profiles from the series. */
import type { Plan, PlanRun } from '#rules/plan/plan.ts';
import { type KeptRun, parseRun } from '../alarms/desk.ts';
import type { Series } from '../web/contract.ts';
import type { RunQuery } from '../web/ports.ts';
import type { RunProfileView, RunView } from '../web/run-contract.ts';
import type { Core } from './core.ts';

/** The limits that a run of this station is held against now. */
function limitsOf(run: PlanRun | undefined): RunView['limits'] {
  return {
    above: run?.least?.fromC ?? null,
    above_for_ms: run?.least?.ms ?? null,
    peak: run?.peak ?? null,
    upper: run?.most?.fromC ?? null,
    upper_for_ms: run?.most?.ms ?? null,
  };
}

export function runView(kept: KeptRun, plan: Plan): RunView {
  const [line = '', station = ''] = kept.station.split('/');
  const { features } = kept;
  return {
    id: kept.run,
    line,
    station,
    opened: kept.opened,
    closed: kept.closed,
    why: kept.why,
    readings: features?.readings ?? null,
    peak: features?.peak ?? null,
    lowest: features?.lowest ?? null,
    steepest_per_min: features?.steepestPerMin ?? null,
    above_ms: features?.aboveMs ?? null,
    upper_ms: features?.upperMs ?? null,
    unobserved_ms: features?.unobservedMs ?? null,
    under: features?.under ?? null,
    over: features?.over ?? null,
    limits: limitsOf(plan.runs.find((run) => run.station === kept.station)),
  };
}

export const runViews = ({ store, plans }: Core, query: RunQuery): RunView[] =>
  store.read
    .ovenRuns(query.sinceMs, query.untilMs, query.limit, query.station)
    .map((row) => runView(parseRun(row), plans.now.plan));

type ReadSeries = (
  id: string,
  sinceMs: number,
  untilMs: number,
  points: number,
) => Promise<Series | null>;

/** null where no run has that id. Its signals are those the site has today. */
export async function runProfile(
  { store, plans }: Core,
  id: string,
  points: number,
  nowMs: number,
  read: ReadSeries,
): Promise<RunProfileView | null> {
  const row = store.read.ovenRun(id);
  if (row === null) return null;
  const { plan } = plans.now;
  const run = plan.runs.find(({ station }) => station === row.station);
  const signals =
    run === undefined ? [] : [...(run.metal === null ? [] : [run.metal]), ...run.beside];
  const until = Math.max(row.opened + 1, (row.closed ?? nowMs) + 1);
  const profile: RunProfileView['profile'] = [];
  for (const index of signals) {
    const signal = plan.signals[index]!.id;
    const series = await read(signal, row.opened, until, points);
    if (series !== null) profile.push({ signal, unit: series.unit, points: series.points });
  }
  return { run: runView(parseRun(row), plan), profile };
}
