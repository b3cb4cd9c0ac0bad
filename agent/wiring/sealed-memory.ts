/**
 * What intake must know of samples that are sealed already: a message sent again across a seal and
 * a restart is still a message sent again.
 */
import { lastInstantMs } from '#rules/signal/instant-text.ts';
import { SampleBatch } from '#rules/signal/sample.ts';
import { readRange } from '../store/range.ts';
import type { Store } from '../store/store.ts';
import type { Compiled } from './plan-book.ts';

/**
 * Signals with times of their own, loops and cold junctions, so far back as a sample may come late
 * and still be judged.
 */
export function rememberSealed(
  store: Store,
  { plan, bindings }: Compiled,
  remember: (batch: SampleBatch) => void,
): void {
  if (store.sealedSeq === 0) return;
  const known = new Set(store.read.signals().map(({ name }) => name));
  const wanted = bindings.flatMap(({ id, hasOwnTime, sensor }) => {
    const beside = sensor?.kind === 'thermocouple' ? sensor.coldJunction : null;
    const own = hasOwnTime || sensor?.kind === 'current-loop' ? [id] : [];
    return beside?.kind === 'signal' ? [...own, beside.id] : own;
  });
  const isWanted = (name: string): boolean =>
    wanted.some((id) => name === id || name.startsWith(`${id}-`));
  const signals = plan.signals.map(({ id }) => id).filter((id) => known.has(id) && isWanted(id));
  if (signals.length === 0) return;
  const latenessMs = Math.max(...plan.signals.map((signal) => signal.latenessMs));
  const sinceMs = (store.previousRun?.judgedTo ?? 0) - latenessMs;
  const index = new Map(plan.signals.map(({ id }, i) => [id, i]));
  const own = new SampleBatch();
  for (const item of readRange(store.folder, { signals, sinceMs, untilMs: lastInstantMs })) {
    // Damage is named where the record is read for people.
    if (item.kind === 'damage') continue;
    const { at, judged, value, quality, flags, signal, count } = item.batch;
    own.clear();
    for (let i = 0; i < count; i += 1) {
      const place = index.get(item.signals[signal[i]!]!.name)!;
      own.push(place, at[i]!, judged[i]!, value[i]!, quality[i]!, flags[i]!);
    }
    remember(own);
  }
}
