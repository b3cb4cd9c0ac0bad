/** A state in words, with since when: in the place of a ruler, which has nothing to measure here. */
import type { SignalView } from '../../agent/web/contract.ts';
import { readingState } from '../judge/reading.ts';
import { stateSince, wordOf } from '../judge/states.ts';
import { useTold } from '../state/board.ts';
import { nowMs, useNow } from '../state/link.ts';
import { useTrail } from '../state/trail.ts';
import { clock, span } from '../text/clock.ts';
import { say } from '../text/say.ts';

export function StateLine({ signal }: { readonly signal: SignalView }) {
  const now = useNow(10_000);
  const points = useTrail(signal.id);
  const kind = useTold(() => readingState(signal, nowMs()).kind);
  const { value } = signal;
  if (value === null) return null;
  const state = say('state')[wordOf(value, signal)];
  const since = stateSince(points, value);
  if (kind !== 'usable') return <p class="state-line">{say('stateLast', { state })}</p>;
  // By hand it is what somebody saw then, not what it has been since.
  if (signal.kind === 'manual')
    return (
      <p class="state-line">{say('stateSeen', { state, clock: clock(signal.at ?? now, now) })}</p>
    );
  if (since === null) return <p class="state-line">{state}</p>;
  return (
    <p class="state-line">
      {since.whole
        ? say('stateLonger', { state, span: span(now - since.at) })
        : say('stateSince', { state, clock: clock(since.at, now) })}
    </p>
  );
}
