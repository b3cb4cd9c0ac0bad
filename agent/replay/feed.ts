/**
 * A record into an engine: what was stored, in the order of judgement, judged again.
 */
import type { Engine } from '#rules/engine.ts';
import type { Input } from '#rules/input.ts';
import type { SampleBatch } from '#rules/signal/sample.ts';

/** As agent/store/reader.ts hands it out. */
export type FedItem =
  | { readonly kind: 'samples'; readonly batch: SampleBatch; readonly held: boolean }
  | { readonly kind: 'input'; readonly input: Input };

export function feedItem(engine: Engine, item: FedItem): void {
  if (item.kind === 'samples') {
    // What still waited when the clock was set back is judged by the rebase that follows.
    if (item.held) engine.offerBatch(item.batch);
    else engine.feed(item.batch);
    return;
  }
  engine.offer(item.input);
  engine.advance(item.input.judged);
}
