/**
 * From a reading to a sample: its value in the canonical unit, its times, its quality, its flags.
 *
 * A signal without a time of its own: `at = judged = beat`. With one: `at` is the payload's time
 * and `judged = max(at + hold, beat)`; then
 *   - more than the tolerance ahead of `now`: bad, and `at` is the beat;
 *   - more than the signal's lateness behind the beat: stored as late, never judged;
 *   - a time already taken: the first wins; the same value again is dropped, another is stored
 *     as a conflict. Late samples are not compared, nor are those whose message could not be read.
 * By the samples' own clock the beat is the greatest `at` seen, and nothing is in the future.
 *
 * Where several marks would fit, the stored quality is the first of: bad, conflict, clock,
 * retained, the sensor's own word, what a raw sensor or its cold junction says, jump, calibration
 * overdue. All are counted. A raw reading is turned into what it measures here, so that the store,
 * the rules and a replay know only that.
 */
import { type Binding, canonicalReading } from '#rules/plan/binding.ts';
import { fromCanonical, sameDimension, toCanonical, unitOf } from '#rules/quantity/unit.ts';
import { isBad, type QualityCode, quality } from '#rules/signal/quality.ts';
import { type EpochMs, type SampleBatch, sampleFlag, unjudgedFlags } from '#rules/signal/sample.ts';
import type { IntakeCause, Tally } from './cause.ts';
import type { ReadingSink } from './decode.ts';
import { quantise } from './quantise.ts';
import { RawReading } from './raw-reading.ts';
import type { SignalMemory } from './signal-memory.ts';

export interface ArrivalLimits {
  readonly beatMs: number;
  readonly futureToleranceMs: number;
}

/** `wall`: beats come from the shell. `samples`: engine time is the samples' own. */
export type IntakeClock = 'wall' | 'samples';

/** A signal as intake feeds it: its binding, its plan index, its memory. */
export interface Target {
  /** `line/station/signal`. */
  readonly id: string;
  readonly binding: Binding;
  readonly signal: number;
  readonly memory: SignalMemory;
  /** What is known of its cold junction; null where no other signal is one. */
  readonly beside: SignalMemory | null;
}

/** A message that could not be read, or whose time cannot be right, takes no time of its signal. */
export const takesTime = (code: QualityCode): boolean =>
  code !== quality.undecodable && code !== quality.future;

export class Arrival implements ReadingSink {
  /** Set before each message. */
  target!: Target;
  out!: SampleBatch;
  retained = false;
  beatMs: EpochMs = 0;
  nowMs: EpochMs = 0;
  /** True while the payload's time counts whatever the binding says: recorded data. */
  recorded = false;
  readonly bySamples: boolean;
  clockInDoubt = false;
  /** By the samples' clock: the greatest `at` so far. */
  engineTimeMs: EpochMs = Number.NEGATIVE_INFINITY;
  readonly #limits: ArrivalLimits;
  readonly #tally: Tally;
  readonly #raw: RawReading;
  /** The value that was refused last as out of range; canonical. */
  beyond = 0;
  /** Found by #canonical. */
  #code: QualityCode = quality.good;

  constructor(clock: IntakeClock, limits: ArrivalLimits, tally: Tally) {
    this.bySamples = clock === 'samples';
    this.#limits = limits;
    this.#tally = tally;
    this.#raw = new RawReading(tally);
  }

  reading(
    read: number,
    timeMs: EpochMs,
    unit: string | null,
    code: QualityCode,
    cause: IntakeCause | null,
  ): void {
    const tally = this.#tally;
    const { binding } = this.target;
    tally.counters.readings += 1;
    if (cause !== null) tally.count(cause);
    this.#code = code;
    const promised = binding.hasOwnTime || this.recorded;
    const timed = promised && !Number.isNaN(timeMs);
    const value = isBad(code)
      ? 0
      : this.#canonical(read, unit, binding, timed ? timeMs : this.#beatNow());
    if (timed) this.#atItsTime(value, timeMs, binding);
    else this.#onArrival(value, promised, binding);
  }

  /** By the samples' clock, time has come to `at`. */
  passTo(at: EpochMs): void {
    if (at > this.engineTimeMs) this.engineTimeMs = at;
  }

  /** Canonical and quantised; 0 with #code bad where there is no value. */
  #canonical(read: number, unit: string | null, binding: Binding, at: EpochMs): number {
    let canonical: number;
    if (binding.sensor !== undefined) {
      canonical = this.#raw.canonical(read, unit, at, this.target, binding.sensor, this.recorded);
      const { code } = this.#raw;
      if (isBad(code) || this.#code === quality.good) this.#code = code;
      if (isBad(code)) return 0;
    } else {
      let written = read;
      if (unit !== null && unit !== binding.unit.code) {
        const from = unitOf(unit);
        if (from === null || !sameDimension(from, binding.unit)) {
          return this.#refuse(quality.wrongUnit, 'wrong-unit');
        }
        written = fromCanonical(toCanonical(read, from), binding.unit);
      }
      canonical = canonicalReading(binding, written);
    }
    if (canonical < binding.low || canonical > binding.high) {
      this.beyond = canonical;
      return this.#refuse(quality.outOfRange, 'out-of-range');
    }
    const value = quantise(canonical, binding.digits);
    return Number.isNaN(value) ? this.#refuse(quality.notFinite, 'not-finite') : value;
  }

  #refuse(code: QualityCode, cause: IntakeCause): number {
    this.#code = code;
    this.#tally.count(cause);
    return 0;
  }

  /** `promised`: it should have had a time of its own, so its message could not be read. */
  #onArrival(read: number, promised: boolean, binding: Binding): void {
    const at = this.#beatNow();
    if (at === Number.NEGATIVE_INFINITY) {
      this.#drop('before-any-time');
      return;
    }
    let value = read;
    if (promised) {
      if (!isBad(this.#code)) value = this.#refuse(quality.undecodable, 'no-time');
      this.#code = quality.undecodable;
    }
    if (this.retained) this.#tally.count('retained');
    const flags = this.retained ? sampleFlag.noSignOfLife : 0;
    this.#store(value, at, promised ? at + binding.holdMs : at, flags);
  }

  #atItsTime(read: number, timeMs: EpochMs, binding: Binding): void {
    let value = read;
    let at = timeMs;
    if (this.recorded || this.bySamples) this.passTo(at);
    else if (at - this.nowMs > this.#limits.futureToleranceMs) {
      value = this.#refuse(quality.future, 'future');
      at = this.beatMs;
    }
    const beat = this.#beatNow();
    const judged = Math.max(at + binding.holdMs, beat);
    if (beat - at > binding.latenessMs || this.#isOvertaken(at, binding)) {
      this.#tally.count('late');
      this.#store(value, at, judged, sampleFlag.late);
    } else if (binding.hasOwnTime && takesTime(this.#code)) {
      this.#storeOnce(value, at, judged, beat - binding.latenessMs);
    } else this.#store(value, at, judged, 0);
  }

  /** Entered by hand after a later one was: kept, and no longer what is so now. */
  #isOvertaken(at: EpochMs, binding: Binding): boolean {
    return binding.filter === '' && at < this.target.memory.at;
  }

  /** Stores what is new; drops what came before, marks what contradicts it. */
  #storeOnce(value: number, at: EpochMs, judged: EpochMs, oldestMs: EpochMs): void {
    const { recent } = this.target.memory;
    recent.forgetBefore(oldestMs);
    const found = recent.take(at, isBad(this.#code) ? Number.NaN : value);
    if (found === 'new') this.#store(value, at, judged, 0);
    else if (found === 'same') this.#drop('duplicate');
    else {
      this.#tally.count('conflict');
      if (!isBad(this.#code)) this.#code = quality.conflict;
      this.#store(value, at, judged, sampleFlag.conflict);
    }
  }

  #beatNow(): EpochMs {
    return this.recorded || this.bySamples ? this.engineTimeMs : this.beatMs;
  }

  #store(value: number, at: EpochMs, judged: EpochMs, flags: number): void {
    const { counters } = this.#tally;
    if (isBad(this.#code)) counters.bad += 1;
    else {
      if ((flags & unjudgedFlags) === 0) this.#watchRate(value, at);
      if (this.#code !== quality.conflict) this.#mark(at, flags);
      if (this.#code === quality.good) counters.good += 1;
      else counters.uncertain += 1;
    }
    if ((flags & unjudgedFlags) === 0) this.target.memory.note(this.#code, at);
    this.out.push(this.target.signal, at, judged, value, this.#code, flags);
  }

  /** Compares with the latest usable value; a time as near as one beat (own time: 1 ms) counts as that far. */
  #watchRate(value: number, at: EpochMs): void {
    const { binding, memory } = this.target;
    const { maxRatePerS } = binding;
    if (maxRatePerS !== null && !Number.isNaN(memory.value)) {
      const nearestMs = binding.hasOwnTime || this.recorded ? 1 : this.#limits.beatMs;
      const apartMs = Math.max(Math.abs(at - memory.at), nearestMs);
      if (Math.abs(value - memory.value) * 1000 > maxRatePerS * apartMs) {
        this.#tally.count('jump');
        if (this.#code === quality.good) this.#code = quality.jump;
      }
    }
    memory.keep(value, at);
  }

  #mark(at: EpochMs, flags: number): void {
    const { calibrationEndMs } = this.target.binding;
    if (calibrationEndMs !== undefined && at >= calibrationEndMs) {
      this.#tally.count('calibration-overdue');
      if (this.#code === quality.good) this.#code = quality.calibrationOverdue;
    }
    if (this.clockInDoubt) {
      this.#tally.count('clock');
      this.#code = quality.clock;
    } else if ((flags & sampleFlag.noSignOfLife) !== 0) this.#code = quality.retained;
  }

  #drop(cause: IntakeCause): void {
    this.#tally.count(cause);
    this.#tally.counters.dropped += 1;
  }
}
