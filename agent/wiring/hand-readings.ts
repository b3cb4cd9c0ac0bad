/**
 * A reading that somebody enters: what cannot be true is refused before it is kept; what is kept
 * has gone the way of every message, and the ledger says who entered it.
 */
import { type Binding, canonicalReading } from '#rules/plan/binding.ts';
import {
  canonicalUnit,
  fromCanonical,
  sameDimension,
  toCanonical,
  unitOf,
} from '#rules/quantity/unit.ts';
import { causeOf, gradeOf } from '#rules/signal/quality.ts';
import { unjudgedFlags } from '#rules/signal/sample.ts';
import { aheadFix, aheadWords } from '#rules/signal/wrong-time.ts';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import type { ReadingEntered } from '../web/ports.ts';
import type { ReadingView } from '../web/written-contract.ts';
import type { Core } from './core.ts';

/** Rejects with the errors its route names; then nothing was kept. */
export async function enterReading(core: Core, entered: ReadingEntered): Promise<ReadingView> {
  const { signal: id, value, unit, by, note } = entered;
  const index = core.signalIndex(id);
  const signal = core.plans.now.plan.signals[index];
  if (signal === undefined) throw new AgentError('WEB_SIGNAL_UNKNOWN', { id });
  const binding = core.plans.now.bindings.find((each) => each.id === id);
  if (signal.kind !== 'manual' || binding === undefined)
    throw new AgentError('WEB_READING_NOT_BY_HAND', { id });
  checkValue(binding, value, unit);
  const atMs = entered.at ?? nowOf(core);
  checkTime(core, atMs);
  let view: ReadingView | null = null;
  const kept = await core.live.enter(
    (beatMs, nowMs, out) => {
      core.intake.takeByHand(index, value, unit, atMs, beatMs, nowMs, out);
    },
    (batch, i) => {
      const code = batch.quality[i]!;
      view = {
        signal: id,
        at: batch.at[i]!,
        value: batch.value[i]!,
        unit: signal.unit,
        quality: { grade: gradeOf(code), cause: causeOf(code) },
        judged: (batch.flags[i]! & unjudgedFlags) === 0,
      };
      const written = `${value} ${unit}`;
      return { type: 'reading', ...view, written, by, ...(note === undefined ? {} : { note }) };
    },
  );
  if (!kept || view === null) throw new AgentError('WEB_READING_KNOWN', { id });
  return view;
}

function checkValue(binding: Binding, value: number, unit: string): void {
  const { id, low, high } = binding;
  const own = binding.unit.code;
  const from = unitOf(unit);
  if (from === null || !sameDimension(from, binding.unit))
    throw new AgentError('WEB_READING_UNIT', { id, unit, own });
  const canonical = canonicalReading(
    binding,
    fromCanonical(toCanonical(value, from), binding.unit),
  );
  if (canonical >= low && canonical <= high) return;
  const kept = canonicalUnit(binding.unit.canonical).code;
  throw new AgentError('WEB_READING_RANGE', { id, value, unit, low, high, kept });
}

function nowOf(core: Core): number {
  const { engineNow } = core.live;
  if (core.byWall) return core.clock.now();
  if (engineNow === null) throw new AgentError('WEB_READING_UNTIMED');
  return engineNow + 1;
}

function checkTime(core: Core, atMs: number): void {
  const now = nowOf(core);
  if (atMs - now <= limits.futureToleranceMs) return;
  const [ahead, likely] = [aheadWords(atMs, now), aheadFix(atMs, now)];
  throw new AgentError('WEB_READING_AHEAD', { ahead, likely });
}
