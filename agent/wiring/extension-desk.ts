/**
 * Own rules while they are live: each call is timed, what fails is counted, and what is unfit is
 * switched off by an input of the log, so that a replay does the same.
 *
 * Always true: nothing is switched off by time while a record is judged again.
 */
import type { ExtensionWatch } from '#rules/engine/switching.ts';
import type { Engine } from '#rules/engine.ts';
import type { ExtensionInput } from '#rules/input.ts';
import { counted } from '#rules/quantity/counted.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { forgetStopped, readStopped } from '../extensions/stopped.ts';
import { Watchdog } from '../extensions/watchdog.ts';
import { limits } from '../limits.ts';
import type { CallWatch } from '../site/extensions/watch.ts';

export interface ExtensionDeskParts {
  readonly folder: string;
  /** null before anything is judged. */
  readonly engine: () => Engine | null;
  /** This belongs into the log. */
  readonly row: (input: ExtensionInput) => void;
  readonly warn: (facts: object, message: string) => void;
}

/** How far apart the processor's time is read, at the least: reading it costs as much as a rule. */
const cpuMarkEveryMs = 5;

interface Faults {
  count: number;
  last: string;
}

export class ExtensionDesk implements CallWatch, ExtensionWatch {
  private readonly parts: ExtensionDeskParts;
  private readonly watchdog: Watchdog;
  private readonly faults = new Map<string, Faults>();
  private queue: { readonly extension: string; readonly why: string }[] = [];
  private live = false;
  private began = 0;
  private cpuMark = { atMs: 0, usedMs: 0 };

  constructor(parts: ExtensionDeskParts) {
    this.parts = parts;
    this.watchdog = new Watchdog(parts.folder);
  }

  // ── the engine asks ─────────────────────────────────────────────────────────────────────────

  get wanted(): { readonly extension: string; readonly why: string } | null {
    return this.queue[0] ?? null;
  }

  done(input: ExtensionInput): void {
    const { extension, off } = input;
    this.queue = this.queue.filter((each) => each.extension !== extension);
    this.faults.delete(extension);
    this.parts.row(input);
    this.parts.warn({ extension, why: off }, 'own rules were switched off');
  }

  // ── a call ──────────────────────────────────────────────────────────────────────────────────

  enter(extension: string): void {
    const place = this.live ? (this.parts.engine()?.place ?? null) : null;
    this.watchdog.enter(extension, place?.at ?? Number.NaN, place?.turn ?? 0);
    this.began = performance.now();
    if (this.began - this.cpuMark.atMs > cpuMarkEveryMs)
      this.cpuMark = { atMs: this.began, usedMs: cpuMs() };
  }

  leave(extension: string): void {
    this.watchdog.leave();
    const tookMs = performance.now() - this.began;
    if (tookMs <= limits.extensionCallCpuMsMax || !this.live) return;
    // What else the machine did in that time is not its fault; what it waited for is.
    const usedMs = cpuMs() - this.cpuMark.usedMs;
    if (
      usedMs > limits.extensionCallCpuMsMax + cpuMarkEveryMs ||
      tookMs > limits.extensionCallMsMax
    )
      this.want(extension, `one call took ${Math.round(tookMs)} ms`);
  }

  fault(extension: string, words: string): void {
    if (!this.live) return;
    const { count } = this.faults.get(extension) ?? { count: 0 };
    this.faults.set(extension, { count: count + 1, last: words });
    this.parts.warn({ extension, fault: words }, 'own rules failed');
    if (count + 1 >= limits.extensionFaultsMax)
      this.want(extension, `it failed ${counted(count + 1, 'time')}, the last time in ${words}`);
  }

  isOff(extension: string): boolean {
    return this.parts.engine()?.present.off.has(extension) === true;
  }

  // ── start and end ───────────────────────────────────────────────────────────────────────────

  /** What the last run left: own rules that never came back. `judgedTo`: where that run stood. */
  stopped(judgedTo: EpochMs): ExtensionInput | null {
    const stopped = readStopped(this.parts.folder);
    if (stopped === null) return null;
    const { extension, why } = stopped;
    // Where nothing new was judged, it was judging the record again: off from the beginning.
    const known = stopped.at !== null && stopped.at > judgedTo;
    const at = stopped.at === null ? 0 : Math.max(stopped.at, judgedTo + 1);
    const turn = known ? stopped.turn : 0;
    // Said where that run stood, so that it is known before anything else is judged.
    const judged = Math.min(judgedTo, Math.max(0, at - 1));
    return { kind: 'extension', judged, extension, off: why, at, turn };
  }

  /** It stands in the log. */
  forgetStopped(): void {
    forgetStopped(this.parts.folder);
  }

  /** From here on calls are timed and faults count. */
  goLive(): void {
    this.live = true;
  }

  close(): Promise<void> {
    return this.watchdog.close();
  }

  private want(extension: string, why: string): void {
    if (this.isOff(extension) || this.queue.some((each) => each.extension === extension)) return;
    this.queue.push({ extension, why });
  }
}

function cpuMs(): number {
  const { user, system } = process.threadCpuUsage();
  return (user + system) / 1_000;
}
