/**
 * A rule kind of the site's own as the engine meets it: guarded at every call.
 *
 * Its memory stands in an envelope with its last answer, which is what a call that failed answers.
 */
import type { Reading, RuleKind, Severity, Timer } from '#rules/kinds/kind.ts';
import type { SettingsReader } from '#rules/kinds/settings.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { Guard, shown, Wrong } from './guard.ts';
import { frozen, notPlain } from './plain.ts';
import {
  isRecord,
  isSeverity,
  noLimits,
  readEvidence,
  readLimits,
  readSentence,
} from './read-answers.ts';
import { type CallWatch, fileOf } from './watch.ts';

interface Envelope {
  answer: Severity;
  /** null where it could not begin. */
  own: unknown;
}

export function guardedRule(kind: RuleKind, extension: string, watch: CallWatch): RuleKind {
  const guard = new Guard(extension, kind.name, watch);
  const { name, version, summary, written } = kind;
  return {
    ...{ name, version, summary, written, extension },
    ...(kind.takes === undefined ? {} : { takes: kind.takes }),
    compile: (read) => compiled(guard, kind, read),
    ...asked(guard, kind),
    ...kept(guard, kind),
    ...told(guard, kind),
  } satisfies RuleKind as RuleKind;
}

/** Settings are plain data, and frozen: nothing is kept in them. Problems go to the reader. */
export function compiled(
  guard: Guard,
  kind: { readonly compile: (read: never) => unknown },
  read: Pick<SettingsReader, 'report'>,
): unknown {
  const made = guard.call<unknown>(
    'compile',
    failed,
    () => kind.compile(read as never),
    (settings) => {
      const found = notPlain(settings);
      return found === null ? frozen(settings) : new Wrong(`its settings ${found}`);
    },
  );
  if (made !== failed) return made;
  const fix = `mend ${fileOf(guard.extension)}`;
  read.report({ path: [], problem: guard.lastFault, fix });
  return null;
}

const failed = Symbol('failed');

type Asked = Pick<RuleKind<unknown, Envelope>, 'sample' | 'deadline' | 'without'>;

function asked(guard: Guard, kind: RuleKind): Asked {
  const answer = (what: string, memory: Envelope, severity: unknown): Severity => {
    if (!isSeverity(severity)) guard.fault(what, `answered ${shown(severity)}, not 0, 1 or 2`);
    else {
      if (severity !== memory.answer) guard.checkMemory(what, memory.own, true);
      memory.answer = severity;
    }
    return memory.answer;
  };
  /** Its own copy: what it does to it, it does to itself. */
  const reading: Reading = { at: 0, judged: 0, value: 0, quality: 0, input: 0 };
  return {
    sample: (settings, memory, given, timer) => {
      if (memory.own === null) return missing(guard, memory);
      const before = timer.at;
      reading.at = given.at;
      reading.judged = given.judged;
      reading.value = given.value;
      reading.quality = given.quality;
      reading.input = given.input;
      guard.enter();
      try {
        const severity: unknown = kind.sample(settings, memory.own, reading, timer);
        guard.checkMemory('sample', memory.own);
        guard.checkTimer('sample', timer, before, given.judged);
        return answer('sample', memory, severity);
      } catch (error) {
        timer.at = before;
        guard.threw('sample', error);
        return memory.answer;
      } finally {
        guard.leave();
      }
    },
    ...(kind.deadline === undefined
      ? {}
      : {
          deadline: (settings, memory, at, timer) => {
            if (memory.own === null) return missing(guard, memory);
            guard.enter();
            try {
              const severity: unknown = kind.deadline!(settings, memory.own, at, timer);
              guard.checkTimer('deadline', timer, null, at);
              return answer('deadline', memory, severity);
            } catch (error) {
              timer.at = null;
              guard.threw('deadline', error);
              return memory.answer;
            } finally {
              guard.leave();
            }
          },
        }),
    ...(kind.without === undefined
      ? {}
      : {
          without: (memory, input, timer) => {
            const before = timer.at;
            quiet(guard, 'without', memory, timer, before ?? 0, () =>
              kind.without!(memory.own, input, timer),
            );
          },
        }),
  };
}

function missing(guard: Guard, memory: Envelope): Severity {
  guard.fault('begin', 'it has no memory to go on with');
  return memory.answer;
}

/** A call that answers nothing. */
function quiet(
  guard: Guard,
  what: string,
  memory: Envelope,
  timer: Timer,
  now: EpochMs,
  work: () => void,
): void {
  if (memory.own === null) return;
  const before = timer.at;
  guard.enter();
  try {
    work();
    guard.checkTimer(what, timer, before, now);
  } catch (error) {
    timer.at = before;
    guard.threw(what, error);
  } finally {
    guard.leave();
  }
}

type Kept = Pick<
  RuleKind<unknown, Envelope>,
  'begin' | 'reopen' | 'gap' | 'shift' | 'migrate' | 'save'
>;

function kept(guard: Guard, kind: RuleKind): Kept {
  return {
    begin: (settings, at, timer) => {
      const memory: Envelope = { answer: 0, own: null };
      guard.enter();
      try {
        const own: unknown = kind.begin(settings, at, timer);
        if (!isRecord(own)) guard.fault('begin', `gave ${shown(own)}, not an object`);
        else if (guard.checkMemory('begin', own, true)) memory.own = own;
        guard.checkTimer('begin', timer, null, at);
      } catch (error) {
        timer.at = null;
        guard.threw('begin', error);
      } finally {
        guard.leave();
      }
      return memory;
    },
    ...(kind.reopen === undefined
      ? {}
      : {
          reopen: (settings, memory, at, timer) => {
            memory.answer = 0;
            quiet(guard, 'reopen', memory, timer, at, () =>
              kind.reopen!(settings, memory.own, at, timer),
            );
          },
        }),
    gap: (settings, memory, fromMs, toMs, timer) =>
      quiet(guard, 'gap', memory, timer, fromMs, () =>
        kind.gap(settings, memory.own, fromMs, toMs, timer),
      ),
    shift: (memory, deltaMs) =>
      quiet(guard, 'shift', memory, { at: null }, 0, () => kind.shift(memory.own, deltaMs)),
    migrate: (old, version) => migrated(guard, kind, old, version),
    save: (memory) => savedEnvelope(memory),
  };
}

function migrated(guard: Guard, kind: RuleKind, old: unknown, version: number): Envelope | null {
  const { answer, own } = old as Envelope;
  const carried = guard.call<unknown>(
    'migrate',
    null,
    () => kind.migrate?.(own, version) ?? null,
    (memory) => {
      const found = notPlain(memory);
      return found === null ? memory : new Wrong(`its memory ${found}`);
    },
  );
  return carried === null ? null : { answer, own: carried };
}

/** A copy, so that what a snapshot holds is what it would go on with. */
export function savedEnvelope<M extends { own: unknown } | null>(memory: M): M {
  if (memory === null) return memory;
  const own: unknown = notPlain(memory.own) === null ? structuredClone(memory.own) : null;
  return { ...memory, own };
}

type Told = Pick<RuleKind<unknown, Envelope>, 'evidence' | 'limits' | 'sentence'>;

function told(guard: Guard, kind: RuleKind): Told {
  const { limits } = kind;
  return {
    evidence: (settings, memory) =>
      memory?.own == null || guard.isOff
        ? {}
        : guard.call('evidence', {}, () => kind.evidence(settings, memory.own), readEvidence),
    sentence: (evidence) =>
      guard.isOff
        ? kind.summary
        : guard.call(
            'sentence',
            kind.summary,
            () => kind.sentence(structuredClone(evidence)),
            readSentence,
          ),
    ...(limits === undefined
      ? {}
      : {
          limits: (settings) =>
            guard.isOff
              ? noLimits
              : guard.call('limits', noLimits, () => limits.call(kind, settings), readLimits),
        }),
  };
}
