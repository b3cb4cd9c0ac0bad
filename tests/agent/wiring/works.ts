/** The agent without its doors, in this process, on a folder and under a clock of the test's own. */
import { DatabaseSync } from 'node:sqlite';
import { onTestFinished, vi } from 'vitest';
import { pathsOf } from '#agent/store/data-folder.ts';
import { openStore } from '#agent/store/store.ts';
import { Core } from '#agent/wiring/core.ts';
import type { SheetWritten } from '#rules/material/sheet.ts';
import { siteOf } from '../../rules/plan/site.ts';

export const start = Date.UTC(2026, 10, 25, 9, 0, 0);

export const sourceOf = (lines: string) => ({
  site: { ...siteOf(lines), materials: {} },
  materials: {} as Record<string, SheetWritten>,
});

/** An adhesive store with a dew point to compute, readings with their own time, and a wildcard. */
export const works = (rules = ''): string => `
l:
  s:
    kind: adhesive-store
    container: drum-3
    signals:
      wall: { topic: wall, payload: { kind: plain }, unit: Cel, expect_every: 60 s }
      air: { topic: air, payload: { kind: plain }, unit: Cel }
      humidity: { topic: humidity, payload: { kind: plain }, unit: "%" }
      bottom: { topic: bottom, payload: { kind: json, value: /v, time: /t }, unit: Cel }
    rules: { ${rules} }
  c:
    kind: custom
    signals:
      a: { topic: "cells/+/a", names: [cell], payload: { kind: plain }, unit: Cel }
    rules:
      high: { kind: band, signal: a, high: 30 Cel, priority: low, consequence: C., actions: [A.] }
`;

export interface KeptSample {
  readonly at: number;
  readonly value: number;
  readonly quality: number;
}

export class Works {
  readonly folder: string;
  nowMs: number;
  /** Beside it; a test that sets the clock holds the two apart. */
  monotonicAheadMs = 0;
  core: Core;
  readonly warnings: string[] = [];
  acknowledged = 0;
  private lines: string;

  constructor(folder: string, lines = works(), nowMs = start) {
    this.folder = folder;
    this.lines = lines;
    this.nowMs = nowMs;
    // Beats come when the test says so.
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setImmediate', 'clearImmediate'] });
    onTestFinished(() => {
      this.close();
      vi.useRealTimers();
    });
    this.core = this.begun();
  }

  /** A message at QoS 1, then the clock goes on. */
  send(topic: string, payload: string | number, forMs = 1_000): this {
    const bytes = new TextEncoder().encode(String(payload));
    this.core.live.take(topic, bytes, false, 1, () => {
      this.acknowledged += 1;
    });
    return this.pass(forMs);
  }

  pass(forMs: number): this {
    const until = this.nowMs + forMs;
    while (this.nowMs < until) {
      this.nowMs = Math.min(until, this.nowMs + 100);
      this.core.live.tick();
    }
    return this;
  }

  /** Ends in order and begins again `downMs` after the engine's last moment. */
  restart(downMs = 0, lines = this.lines): this {
    this.core.live.stop();
    this.core.store.note();
    this.core.store.stopRun(this.core.live.engineNow!);
    return this.again(downMs, lines);
  }

  /** Ends as a killed process does: what is not committed is gone. */
  killed(downMs = 0, lines = this.lines): this {
    return this.again(downMs, lines);
  }

  /** Changes the database while nobody has it open. */
  tampered(sql: string): this {
    this.core.live.stop();
    this.close();
    const db = new DatabaseSync(pathsOf(this.folder).database);
    db.exec(sql);
    db.close();
    return this.again(0, this.lines);
  }

  /** The engine's state, as a snapshot would have it. */
  get state(): unknown {
    return JSON.parse(JSON.stringify(this.core.live.running!.save()));
  }

  /** The open segment, by the names of its signals. */
  get open(): Record<string, KeptSample[]> {
    const { samples, columns } = this.core;
    return Object.fromEntries(
      samples.storedSignals
        .map(
          ({ id, name }) =>
            [
              name,
              columns.copyOf(id).flatMap(({ column }) =>
                Array.from({ length: column.count }, (_, i) => ({
                  at: column.at[i]!,
                  value: column.value[i]!,
                  quality: column.quality[i]!,
                })),
              ),
            ] as const,
        )
        .filter(([, kept]) => kept.length > 0)
        .sort(([a], [b]) => (a < b ? -1 : 1)),
    );
  }

  ledger(type: string): Record<string, unknown>[] {
    return [...this.core.store.read.ledgerAfter(0)]
      .map(({ record }) => JSON.parse(record) as Record<string, unknown>)
      .filter((record) => record.type === type);
  }

  private again(downMs: number, lines: string): this {
    this.nowMs = this.core.live.engineNow! + downMs;
    this.close();
    this.lines = lines;
    this.core = this.begun();
    return this;
  }

  private begun(): Core {
    const store = openStore(this.folder, { now: () => this.nowMs, ballastBytes: 0 });
    return new Core({
      store,
      source: sourceOf(this.lines),
      mode: 'wall',
      clock: { wallMs: () => this.nowMs, monotonicMs: () => this.nowMs + this.monotonicAheadMs },
      version: 'test',
      sealEveryMs: 3_600_000,
      tell: () => undefined,
      warn: (facts, message) => this.warnings.push(`${message} ${JSON.stringify(facts)}`),
    });
  }

  private close(): void {
    vi.clearAllTimers();
    try {
      this.core.store.close();
    } catch (error) {
      if (!String(error).includes('not open')) throw error;
    }
  }
}
