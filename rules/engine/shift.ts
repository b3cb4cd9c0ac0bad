/** The engine's state with every time moved: the clock was set anew. Memories are moved by their kinds. */
import type { EpochMs } from '../signal/sample.ts';
import { alarmShifted } from './alarm.ts';
import { heatsShifted } from './rack-heat-state.ts';
import type { EngineState } from './state.ts';

export function shifted(saved: EngineState, deltaMs: number): EngineState {
  const move = (at: EpochMs | null): EpochMs | null => (at === null ? null : at + deltaMs);
  return {
    ...saved,
    now: saved.now + deltaMs,
    latest: each(saved.latest, (l) => ({ ...l, at: l.at < 0 ? l.at : l.at + deltaMs })),
    rules: each(saved.rules, (r) => ({
      ...r,
      deadline: move(r.deadline),
      frozenAt: move(r.frozenAt),
    })),
    derived: each(saved.derived, (d) => ({
      ...d,
      computedAt: move(d.computedAt),
      due: move(d.due),
      ...(d.keeping === undefined
        ? {}
        : { keeping: { ...d.keeping, blindSince: move(d.keeping.blindSince) } }),
    })),
    runs: each(saved.runs ?? {}, (r) => ({
      ...r,
      opened: r.opened + deltaMs,
      seenAt: move(r.seenAt),
    })),
    ...(saved.racks === undefined ? {} : { racks: heatsShifted(saved.racks, deltaMs) }),
    marks: each(saved.marks ?? {}, (m) => ({ ...m, at: m.at + deltaMs })),
    ...(saved.off === undefined
      ? {}
      : { off: each(saved.off, (o) => ({ ...o, sinceMs: o.sinceMs + deltaMs })) }),
    alarms: each(saved.alarms, (a) => alarmShifted(a, deltaMs)),
  };
}

const each = <T, U>(all: Readonly<Record<string, T>>, of: (one: T) => U): Record<string, U> =>
  Object.fromEntries(Object.entries(all).map(([key, one]) => [key, of(one)]));
