/**
 * On- and off-delay: an answer changes only after what speaks for it has held for its delay.
 *
 * A raise therefore always implies that the condition held, as seen by every usable sample,
 * for the whole on-delay. Delays run in judged time.
 */
import type { EpochMs } from '../signal/sample.ts';
import type { Severity, Timer } from './kind.ts';
import type { SettingsReader } from './settings.ts';

export interface Delays {
  readonly onDelayMs: number;
  readonly offDelayMs: number;
}

export const compileDelays = (read: SettingsReader): Delays => ({
  onDelayMs: read.duration('on_delay', 0),
  offDelayMs: read.duration('off_delay', 0),
});

export interface Delayed {
  /** The answer given. */
  answer: boolean;
  /** Since when the samples have said otherwise; null while they agree. */
  changeAt: EpochMs | null;
  /** Since when the condition behind a true answer has held; kept for evidence. */
  sinceMs: EpochMs | null;
}

export const delayedBegin = (): Delayed => ({ answer: false, changeAt: null, sinceMs: null });

/** Takes what a sample says; returns when the answer is due to change, or null. */
export function delayedSay(
  delays: Delays,
  memory: Delayed,
  says: boolean,
  judged: EpochMs,
): EpochMs | null {
  if (says === memory.answer) {
    memory.changeAt = null;
    return null;
  }
  memory.changeAt ??= judged;
  const due = memory.changeAt + (says ? delays.onDelayMs : delays.offDelayMs);
  if (due > judged) return due;
  turn(memory);
  return null;
}

/** The deadline `at` came; an answer that is due turns. Returns when it is due otherwise, or null. */
export function delayedDue(delays: Delays, memory: Delayed, at: EpochMs): EpochMs | null {
  if (memory.changeAt === null) return null;
  const due = memory.changeAt + (memory.answer ? delays.offDelayMs : delays.onDelayMs);
  if (due > at) return due;
  turn(memory);
  return null;
}

/** `deadline` of a kind whose memory has one answer. */
export function answerDue(
  delays: Delays,
  memory: { readonly answer: Delayed },
  at: EpochMs,
  timer: Timer,
): Severity {
  timer.at = delayedDue(delays, memory.answer, at);
  return answered(memory);
}

/**
 * A reading says so, or null where it cannot tell: then what was on its way has not held, and the
 * answer stays.
 */
export function answerSay(
  delays: Delays,
  memory: { readonly answer: Delayed },
  says: boolean | null,
  judged: EpochMs,
  timer: Timer,
): Severity {
  if (says === null) {
    memory.answer.changeAt = null;
    timer.at = null;
  } else timer.at = delayedSay(delays, memory.answer, says, judged);
  return answered(memory);
}

/** `stand` of a kind whose memory has one answer. */
export function answerStand(
  _settings: unknown,
  memory: { readonly answer: Delayed },
  _severity: Severity,
  sinceMs: EpochMs,
): void {
  delayedStand(memory.answer, sinceMs);
}

/** It answers so already, since `sinceMs`. */
export function delayedStand(memory: Delayed, sinceMs: EpochMs): void {
  memory.answer = true;
  memory.changeAt = null;
  memory.sinceMs = sinceMs;
}

export const answered = (memory: { readonly answer: Delayed }): Severity =>
  memory.answer.answer ? 1 : 0;

/** Unobserved time counts for nothing. */
export function delayedGap(memory: Delayed, lengthMs: number): void {
  if (memory.changeAt !== null) memory.changeAt += lengthMs;
}

export function delayedShift(memory: Delayed, deltaMs: number): void {
  if (memory.changeAt !== null) memory.changeAt += deltaMs;
  if (memory.sinceMs !== null) memory.sinceMs += deltaMs;
}

function turn(memory: Delayed): void {
  memory.answer = !memory.answer;
  memory.sinceMs = memory.answer ? memory.changeAt : null;
  memory.changeAt = null;
}
