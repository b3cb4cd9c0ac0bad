/** What people are to write down or read by hand within a day, by what the agent counts. */
import type { ClockView, SignalView } from '../../agent/web/contract.ts';

export type Round =
  | { readonly kind: 'clock'; readonly clock: ClockView; readonly due: number }
  /** `due`: null where it was never entered. */
  | { readonly kind: 'reading'; readonly signal: SignalView; readonly due: number | null };

const aheadMs = 24 * 3_600_000;

/** The one due first first, what was never entered before all; those over are among them. `now`: the engine's time. */
export function roundsOf(
  clocks: readonly ClockView[],
  signals: Iterable<SignalView>,
  now: number,
): Round[] {
  const readings = [...signals].flatMap((signal): Round[] => {
    const { kind, at, expect_every_ms: everyMs } = signal;
    if (kind !== 'manual' || everyMs === null) return [];
    return [{ kind: 'reading', signal, due: at === null ? null : at + everyMs }];
  });
  const all: Round[] = [
    ...readings,
    ...clocks.map((clock): Round => ({ kind: 'clock', clock, due: clock.due })),
  ];
  return all
    .filter(({ due }) => due === null || due <= now + aheadMs)
    .sort((a, b) => (a.due ?? 0) - (b.due ?? 0));
}
