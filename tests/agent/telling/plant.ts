/** An agent without its doors, under a clock of the test's own, that tells people on a far side. */
import { onTestFinished, vi } from 'vitest';
import type { Occurrence } from '#agent/alarms/occurrence.ts';
import type { TellablePerson } from '#agent/notify/contract.ts';
import { openStore } from '#agent/store/store.ts';
import { Core } from '#agent/wiring/core.ts';
import { tendTelling } from '#agent/wiring/telling.ts';
import type { SheetWritten } from '#rules/material/sheet.ts';
import type { RotaEntryWritten, TellingWritten } from '#rules/site/telling-schema.ts';
import { weekEntry } from '#rules/telling/settings.ts';
import { siteOf } from '../../rules/plan/site.ts';
import { FarSide } from './far-side.ts';

export const monday = Date.UTC(2026, 10, 23, 6);
export const sensors = 14;

/** Fourteen sensors, a rule each: the first three high, the next three low, the rest medium. */
export const lines = (managed: readonly number[] = [], gated: readonly number[] = []): string => {
  const all = Array.from({ length: sensors }, (_, i) => i);
  const priority = (i: number): string => (i < 3 ? 'high' : i < 6 ? 'low' : 'medium');
  return `
l:
  s:
    kind: custom
    signals:
${all.map((i) => `      t${i}: { topic: t${i}, payload: { kind: plain }, unit: Cel }`).join('\n')}
    rules:
${all
  .map(
    (i) =>
      `      r${i}: { kind: band, signal: t${i}, high: 30 Cel, on_delay: 0 s, priority: ${priority(i)}, consequence: C., actions: [A.]${managed.includes(i) ? ', highly_managed: true' : ''}${gated.includes(i) ? `, gate: { signal: t${sensors - 1}, low: 1 Cel }` : ''} }`,
  )
  .join('\n')}
`;
};

export const person = (
  id: string,
  role: TellablePerson['role'],
  addresses: TellablePerson['addresses'] = { email: null, push: true },
): TellablePerson => ({ id, name: id, role, language: 'en', addresses });

export interface PlantOptions {
  readonly folder: string;
  readonly people: readonly TellablePerson[];
  readonly telling?: TellingWritten;
  /** Sensors whose rule is highly managed. */
  readonly managed?: readonly number[];
  /** Sensors whose rule is judged only while the last sensor reads 1 or more. */
  readonly gated?: readonly number[];
  readonly answer?: ConstructorParameters<typeof FarSide>[2];
}

export class Plant {
  nowMs = monday;
  readonly phones: FarSide;
  readonly mail: FarSide;
  readonly faults: unknown[] = [];
  core: Core;
  private readonly options: PlantOptions;

  constructor(options: PlantOptions) {
    this.options = options;
    this.phones = new FarSide('push', () => this.nowMs, options.answer);
    this.mail = new FarSide('email', () => this.nowMs, options.answer);
    // Beats come when the test says so.
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setImmediate', 'clearImmediate'] });
    onTestFinished(() => {
      this.close();
      vi.useRealTimers();
    });
    this.core = this.begun();
  }

  send(sensor: number, value: number): void {
    const bytes = new TextEncoder().encode(String(value));
    this.core.live.take(`t${sensor}`, bytes, false, 0, () => undefined);
  }

  /** One look of the agent, and what it sent is answered. */
  async tick(forMs: number): Promise<void> {
    this.nowMs += forMs;
    this.look();
    for (let i = 0; i < 12; i += 1) await Promise.resolve();
  }

  async pass(forMs: number, stepMs = 10_000): Promise<void> {
    for (const until = this.nowMs + forMs; this.nowMs < until; )
      await this.tick(Math.min(stepMs, until - this.nowMs));
  }

  look(): void {
    tendTelling(this.core);
    this.core.live.tick();
  }

  async acknowledge(occurrence: string, by: string): Promise<void> {
    const done = this.core.live.command({ kind: 'command', verb: 'acknowledge', occurrence, by });
    await this.tick(100);
    await done;
  }

  /** Ends as a killed process does: what is on its way may arrive, and nobody hears of it. */
  killed(downMs = 1_000): void {
    this.close();
    this.nowMs += downMs;
    this.phones.life += 1;
    this.mail.life += 1;
    this.core = this.begun();
  }

  occurrence(id: string): Occurrence {
    const row = this.core.store.read.occurrence(id);
    if (row === null) throw new Error(`there is no occurrence ${id}`);
    return JSON.parse(row.detail) as Occurrence;
  }

  ledger(type: string): Record<string, unknown>[] {
    return [...this.core.store.read.ledgerAfter(0)]
      .map(({ record }) => JSON.parse(record) as Record<string, unknown>)
      .filter((record) => record.type === type);
  }

  private begun(): Core {
    const { folder, people, telling, managed, gated } = this.options;
    const store = openStore(folder, { now: () => this.nowMs, ballastBytes: 0 });
    const site = {
      ...siteOf(lines(managed, gated)),
      materials: {},
      ...(telling === undefined ? {} : { telling }),
    };
    const week = (telling?.rota ?? []).filter(
      (entry): entry is Exclude<RotaEntryWritten, { calendar: string }> => !('calendar' in entry),
    );
    return new Core({
      store,
      source: { site, materials: {} as Record<string, SheetWritten> },
      mode: 'wall',
      clock: { wallMs: () => this.nowMs, monotonicMs: () => this.nowMs },
      version: 'test',
      sealEveryMs: 1e12,
      tell: () => undefined,
      warn: () => undefined,
      telling: () => ({
        persons: { list: () => people },
        channels: [this.phones, this.mail],
        webhooks: () => Object.keys(this.options.telling?.webhooks ?? {}),
        rota: () => ({ timezone: site.timezone, entries: week.map(weekEntry) }),
        gone: () => undefined,
        ready: () => true,
        fault: (error) => this.faults.push(error),
      }),
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
