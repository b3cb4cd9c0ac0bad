/** Every signal with its latest reading, its limits, and the raw sensor behind it. */
import type { Binding } from '#rules/plan/binding.ts';
import type { PlanSignal } from '#rules/plan/plan.ts';
import { toleranceOf } from '#rules/plan/sensor.ts';
import type { SignalView } from '../web/contract.ts';
import type { SensorView } from '../web/sensor-contract.ts';
import type { Core } from './core.ts';
import { noLimits, rulerLimits } from './ruler-limits.ts';
import type { Latest } from './sample-book.ts';
import { signalView } from './views.ts';

export function signalViews(core: Core): SignalView[] {
  const { plan, bindings } = core.plans.now;
  const limits = rulerLimits(plan);
  const behind = bindingsBySignal(bindings);
  return plan.signals.map((signal, i) => {
    const view = signalView(
      signal,
      core.samples.latest(i) ?? lastKnown(core, signal.id),
      core.samples.lateAt(i),
      limits.get(i) ?? noLimits,
    );
    const binding = behind.get(i);
    return { ...view, yes_no: isYesNo(signal, binding), sensor: sensorView(binding, view.value) };
  });
}

/** Whole numbers from 0 to 1. */
const isYesNo = ({ unit, digits }: PlanSignal, binding: Binding | undefined): boolean =>
  unit === '1' && digits === 0 && binding?.low === 0 && binding.high === 1;

/** Before a signal speaks again after a start: what the engine knew of it. */
function lastKnown({ live }: Core, id: string): Latest | null {
  const engine = live.running;
  const index = engine?.plan.signals.findIndex((signal) => signal.id === id) ?? -1;
  return index < 0 ? null : (engine?.present.signals.latest(index) ?? null);
}

function bindingsBySignal(bindings: readonly Binding[]): ReadonlyMap<number, Binding> {
  const found = new Map<number, Binding>();
  for (const binding of bindings) {
    if (binding.signal !== null) found.set(binding.signal, binding);
    for (const signal of binding.instances.values()) found.set(signal, binding);
  }
  return found;
}

function sensorView(binding: Binding | undefined, value: number | null): SensorView | null {
  if (binding?.sensor === undefined) return null;
  const { sensor, unit } = binding;
  const tolerance = value === null ? null : toleranceOf(sensor, value);
  return { kind: sensor.kind, sends: unit.code, tolerance };
}
