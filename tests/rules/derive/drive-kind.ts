/** One derived kind with settings through the engine: readings in, what it comes to out. */
import { derivedKinds } from '#rules/derive/derived.ts';
import { isFormula, isKeeping } from '#rules/derive/derived-kind.ts';
import { derivedSettingsReader } from '#rules/derive/settings-reader.ts';
import type { SavedDerived } from '#rules/engine/state.ts';
import type { SettingsProblem } from '#rules/kinds/settings.ts';
import type { Plan } from '#rules/plan/plan.ts';
import { Drive } from '../engine/drive.ts';
import { smallPlan } from '../engine/small-plan.ts';

export const msPerH = 3_600_000;
export const msPerMin = 60_000;

export interface Told {
  readonly at: number;
  readonly value: number;
  readonly quality: number;
}

type Written = Readonly<Record<string, unknown>>;

/** Problems of what was written, and what the kind made of it. */
export function compiledBy(
  name: string,
  written: Written,
  inputs: readonly string[],
  unit = 'Cel',
): { readonly settings: unknown; readonly problems: readonly SettingsProblem[] } {
  const kind = derivedKinds.get(name)!;
  if (isFormula(kind)) throw new Error(`${name} has no settings`);
  const problems: SettingsProblem[] = [];
  return {
    settings: kind.compile(derivedSettingsReader(written, unit, inputs, problems)),
    problems,
  };
}

/** `inputs`: of the kind, those that are given, in its order, each a signal of that name. */
export class KindDrive {
  drive: Drive;

  constructor(name: string, written: Written, inputs: readonly string[], unit = 'Cel', now = 0) {
    this.drive = new Drive(planOf(name, written, inputs, unit), now);
  }

  /** Readings of one input, each advanced to its own time. */
  values(input: string, ...pairs: readonly (readonly [at: number, value: number])[]): this {
    this.drive.values(input, ...pairs);
    return this;
  }

  bad(input: string, at: number): this {
    this.drive.offer({ signal: input, at, quality: 100 }).advance(at);
    return this;
  }

  advance(to: number): this {
    this.drive.advance(to);
    return this;
  }

  /** Nobody looked in between. */
  gap(fromMs: number, toMs: number): this {
    this.drive.input({ kind: 'gap', judged: fromMs + 1, fromMs, toMs }).advance(toMs);
    return this;
  }

  /** The clock is set anew. */
  rebase(at: number, deltaMs: number): this {
    this.drive.input({ kind: 'rebase', judged: at + 1, deltaMs }).advance(at + 1);
    return this;
  }

  /** What a snapshot holds of it. */
  get saved(): SavedDerived {
    return this.drive.engine.save().derived['z-out']!;
  }

  /** Through a snapshot, as after a restart. */
  restarted(): this {
    const told = this.drive.derived;
    this.drive = Drive.resume(this.drive);
    this.drive.derived.unshift(...told);
    return this;
  }

  get told(): readonly Told[] {
    return this.drive.derived.map((line) => {
      const [, , at, value, quality] = line.split(' ').map(Number);
      return { at: at!, value: value!, quality: quality! };
    });
  }

  get last(): Told {
    return this.told.at(-1)!;
  }
}

function planOf(name: string, written: Written, inputs: readonly string[], unit: string): Plan {
  const kind = derivedKinds.get(name)!;
  const units = inputs.map((input) => kind.inputs.find((known) => known.name === input)!.unit);
  const own = units.map((code) => (code === 'any' ? unit : code));
  const result = kind.result?.({ unit: own[0]!, digits: 3 }) ?? kind;
  return smallPlan({
    signals: {
      ...Object.fromEntries(inputs.map((input, i) => [input, { unit: own[i]!, digits: 3 }])),
      'z-out': { unit: result.unit, digits: result.digits },
    },
    derived: { 'z-out': { inputs, ...workOf(name, written, inputs, own[0]!) } },
    ...heatsOf(name, written, inputs, own[0]!),
  });
}

/** For a kind that is told what racks carry: one oven, whose racks nobody names. */
function heatsOf(name: string, written: Written, inputs: readonly string[], unit: string) {
  const kind = derivedKinds.get(name)!;
  if (isFormula(kind) || isKeeping(kind) || kind.counts === undefined) return {};
  const by = kind.counts(compiledBy(name, written, inputs, unit).settings);
  const [metal = '', loaded = null] = inputs;
  return {
    heats: {
      ovens: [{ station: 'l/o', metal, loaded, arrived: 'l/o/in', left: 'l/o/out' }],
      counts: [{ ...by, oven: 0, signal: 'z-out' }],
      fresh: [],
    },
  };
}

function workOf(name: string, written: Written, inputs: readonly string[], unit: string) {
  const kind = derivedKinds.get(name)!;
  if (isFormula(kind)) return { compute: (x: ArrayLike<number>) => kind.compute(x) };
  const { settings, problems } = compiledBy(name, written, inputs, unit);
  if (problems.length > 0) throw new Error(JSON.stringify(problems));
  if (isKeeping(kind)) return { keeps: { kind, settings, fingerprint: 'test' } };
  return {
    settled: (now: Parameters<typeof kind.settled>[1]) => kind.settled(settings, now),
    ...(kind.counts === undefined ? {} : { carries: 0 }),
  };
}
