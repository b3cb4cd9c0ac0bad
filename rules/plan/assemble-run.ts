/** A station whose loads are followed, to integers: what opens a run, and what it is held against. */
import type { DrySettings } from '../kinds/dry.ts';
import { dry } from '../kinds/dry.ts';
import type { SignalIndex } from './assemble.ts';
import { idOf, type RuleDraft, type SignalDraft, type StationDraft } from './draft.ts';
import type { PlanRun } from './plan.ts';

/** None where the station has no runs, or nothing says when it is loaded. */
export function assembleRun(
  station: StationDraft,
  signals: ReadonlyMap<string, SignalDraft>,
  rules: readonly RuleDraft[],
  index: SignalIndex,
): readonly PlanRun[] {
  const { run } = station.kind;
  if (run === undefined) return [];
  const at = (name: string, unit: string): number | null =>
    signals.get(name)?.unit === unit ? (index.get(idOf(station, name, '')) ?? null) : null;
  const loaded = at(run.loaded, '1');
  if (loaded === null) return [];
  const metal =
    at(run.metal, 'Cel') ?? (run.metalElse === undefined ? null : at(run.metalElse, 'Cel'));
  const settings = (name: string): DrySettings | null => {
    const rule = rules.find((candidate) => candidate.name === name && candidate.kind === dry);
    return rule === undefined || rule.missing.length > 0
      ? null
      : (rule.compiled as DrySettings | null);
  };
  const most = settings(run.most);
  return [
    {
      station: station.id,
      loaded,
      metal,
      beside: run.beside.flatMap((name) => at(name, 'Cel') ?? []),
      least: settings(run.least)?.least ?? null,
      peak: most?.peak ?? null,
      most: most?.most ?? null,
    },
  ];
}
