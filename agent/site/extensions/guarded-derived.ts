/** A derived kind of the site's own as the engine meets it: guarded at every call. */
import type {
  DerivedKind,
  DerivedNow,
  FormulaKind,
  KeepingKind,
  ResultOf,
  SettledKind,
} from '#rules/derive/derived-kind.ts';
import { isFormula, isKeeping } from '#rules/derive/derived-kind.ts';
import type { Timer } from '#rules/kinds/kind.ts';
import { isKnown, quality } from '#rules/signal/quality.ts';
import { Guard, shown, Wrong } from './guard.ts';
import { compiled, savedEnvelope } from './guarded-rule.ts';
import { notPlain } from './plain.ts';
import { isRecord, isResult } from './read-answers.ts';
import type { CallWatch } from './watch.ts';

interface Envelope {
  /** null where it could not begin. */
  own: unknown;
}

export function guardedDerived(
  kind: DerivedKind,
  extension: string,
  watch: CallWatch,
): DerivedKind {
  const guard = new Guard(extension, kind.name, watch);
  const shape = { ...shapeOf(guard, kind), extension };
  if (isFormula(kind)) return { ...shape, compute: computing(guard, kind) };
  const { written } = kind;
  const settings = { written, compile: (read: never) => compiled(guard, kind, read) };
  return isKeeping(kind)
    ? { ...shape, ...settings, ...keeping(guard, kind) }
    : { ...shape, ...settings, settled: settling(guard, kind) };
}

function shapeOf(guard: Guard, kind: DerivedKind) {
  const { name, summary, inputs, unit, saidIn, digits, source, range, result } = kind;
  return {
    ...{ name, summary, inputs, unit, digits, source },
    ...(saidIn === undefined ? {} : { saidIn }),
    ...(range === undefined ? {} : { range }),
    ...(result === undefined
      ? {}
      : {
          result: (input: ResultOf) =>
            guard.call<ResultOf | null>(
              'result',
              null,
              () => result.call(kind, input),
              (answer) => (answer === null || isResultOf(answer) ? answer : wrongAnswer(answer)),
            ),
        }),
  };
}

const isResultOf = (value: unknown): value is ResultOf =>
  isRecord(value) &&
  typeof value.unit === 'string' &&
  (value.digits === null || Number.isInteger(value.digits));

const wrongAnswer = (answer: unknown): Wrong => new Wrong(`answered ${shown(answer)}`);

function computing(guard: Guard, kind: FormulaKind): FormulaKind['compute'] {
  return (inputs) => {
    guard.enter();
    try {
      const result: unknown = kind.compute(inputs);
      if (isResult(result)) return result;
      guard.fault('compute', `answered ${shown(result)}, no finite number`);
    } catch (error) {
      guard.threw('compute', error);
    } finally {
      guard.leave();
    }
    return null;
  };
}

/** One that failed says so in the quality of the sample. */
function fail(now: DerivedNow): null {
  now.doubt = quality.ownKindFailed;
  return null;
}

function settling(guard: Guard, kind: SettledKind): SettledKind['settled'] {
  return (settings, now) => {
    guard.enter();
    try {
      return checked(guard, 'settled', kind.settled(settings, now), now);
    } catch (error) {
      guard.threw('settled', error);
    } finally {
      guard.leave();
    }
    return fail(now);
  };
}

function checked(guard: Guard, what: string, result: unknown, now: DerivedNow): number | null {
  if (isResult(result) && isKnown(now.doubt)) return result;
  guard.fault(
    what,
    isResult(result)
      ? `set the doubt ${shown(now.doubt)}, no quality code`
      : `answered ${shown(result)}, no finite number`,
  );
  return fail(now);
}

type Keeps = Omit<
  KeepingKind<unknown, Envelope>,
  keyof ReturnType<typeof shapeOf> | 'written' | 'compile' | 'source' | 'extension'
>;

function keeping(guard: Guard, kind: KeepingKind): Keeps {
  const { start } = kind;
  const quiet = (what: string, memory: Envelope, work: () => void): void => {
    if (memory.own === null) return;
    guard.call(what, undefined, work, () => undefined);
  };
  return {
    version: kind.version,
    begin: (settings, at) => ({
      own: guard.call<unknown>('begin', null, () => kind.begin(settings, at), plainOrWrong),
    }),
    step: (settings, memory, now, timer) => stepped(guard, kind, settings, memory, now, timer),
    ...(start === undefined
      ? {}
      : {
          start: (settings, memory, at, now) =>
            quiet('start', memory, () => start.call(kind, settings, memory.own, at, now)),
        }),
    gap: (settings, memory, fromMs, toMs) =>
      quiet('gap', memory, () => kind.gap(settings, memory.own, fromMs, toMs)),
    shift: (memory, deltaMs) => quiet('shift', memory, () => kind.shift(memory.own, deltaMs)),
    migrate: (old, version) => {
      const { own } = old as Envelope;
      const carried = guard.call<unknown>(
        'migrate',
        null,
        () => kind.migrate?.(own, version) ?? null,
        plainOrWrong,
      );
      return carried === null ? null : { own: carried };
    },
    save: (memory) => savedEnvelope(memory),
  };
}

function plainOrWrong(memory: unknown): unknown {
  if (!isRecord(memory)) return new Wrong(`its memory is ${shown(memory)}, not an object`);
  const found = notPlain(memory);
  return found === null ? memory : new Wrong(`its memory ${found}`);
}

function stepped(
  guard: Guard,
  kind: KeepingKind,
  settings: unknown,
  memory: Envelope,
  now: DerivedNow,
  timer: Timer,
): number | null {
  if (memory.own === null) {
    guard.fault('begin', 'it has no memory to go on with');
    return fail(now);
  }
  const { at } = now;
  guard.enter();
  try {
    const result: unknown = kind.step(settings, memory.own, now, timer);
    guard.checkMemory('step', memory.own);
    guard.checkTimer('step', timer, null, at);
    return checked(guard, 'step', result, now);
  } catch (error) {
    timer.at = null;
    guard.threw('step', error);
    return fail(now);
  } finally {
    guard.leave();
  }
}
