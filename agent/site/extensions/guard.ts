/**
 * Between the agent and a kind that somebody else wrote: every call is watched, nothing thrown gets
 * through, nothing that makes no sense is passed on.
 *
 * Always true: what is answered in place of a failed call follows from the call alone, so that a
 * replay answers the same.
 */
import type { Timer } from '#rules/kinds/kind.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { clauseOf, faultOf } from './load.ts';
import { notPlain } from './plain.ts';
import type { CallWatch } from './watch.ts';

/** Deadlines further away are a slip. */
const aheadMsMax = 400 * 86_400_000;
/** A deadline that follows a deadline keeps this distance, or it would fire without end. */
const againMsMin = 100;
const checkMemoryEvery = 256;

export class Guard {
  readonly extension: string;
  /** The kind's name, for messages. */
  readonly name: string;
  private readonly watch: CallWatch;
  private calls = 0;
  /** What failed last, for whoever must say it to people at once. */
  lastFault = '';

  constructor(extension: string, name: string, watch: CallWatch) {
    this.extension = extension;
    this.name = name;
    this.watch = watch;
  }

  /** Switched off: nobody may ask it anything. */
  get isOff(): boolean {
    return this.watch.isOff(this.extension);
  }

  enter(): void {
    this.watch.enter(this.extension);
  }

  leave(): void {
    this.watch.leave(this.extension);
  }

  threw(what: string, error: unknown): void {
    this.fault(what, clauseOf(faultOf(error)));
  }

  fault(what: string, words: string): void {
    this.lastFault = `${this.name}.${what}: ${words}`;
    this.watch.fault(this.extension, this.lastFault);
  }

  /** A call that is not asked for each sample; `instead` where it fails. */
  call<T>(what: string, instead: T, work: () => unknown, read: (answer: unknown) => T | Wrong): T {
    this.enter();
    try {
      const answer = read(work());
      if (!(answer instanceof Wrong)) return answer;
      this.fault(what, answer.words);
    } catch (error) {
      this.threw(what, error);
    } finally {
      this.leave();
    }
    return instead;
  }

  /** A deadline that makes no sense is put back to what it was. */
  checkTimer(what: string, timer: Timer, before: EpochMs | null, now: EpochMs): void {
    const { at } = timer;
    if (at === null || at === before) return;
    const soonest = what === 'deadline' ? now + againMsMin : now;
    if (Number.isFinite(at) && at >= soonest && at <= now + aheadMsMax) return;
    timer.at = before;
    this.fault(what, `set the deadline ${String(at)}, at ${now}`);
  }

  /** Looks at the memory now and then; always where `now` is asked for. */
  checkMemory(what: string, memory: unknown, now = false): boolean {
    this.calls += 1;
    if (!now && this.calls % checkMemoryEvery !== 0) return true;
    const found = notPlain(memory);
    if (found !== null) this.fault(what, `its memory ${found}`);
    return found === null;
  }
}

/** Why an answer cannot be used, in a clause. */
export class Wrong {
  readonly words: string;
  constructor(words: string) {
    this.words = words;
  }
}

/** What somebody gave, in few words. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return JSON.stringify(value.slice(0, 40));
  if (typeof value === 'object' && value !== null)
    return Array.isArray(value) ? 'a list' : 'an object';
  return typeof value === 'function' ? 'a function' : String(value);
}
