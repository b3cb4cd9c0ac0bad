/**
 * An agent without doors on a clock of the test's own: every beat, tick and step of the clock comes
 * when the test says. Needs fake timers for `setTimeout` and `performance`.
 */
import { rmSync } from 'node:fs';
import { vi } from 'vitest';
import { stringify } from 'yaml';
import { ledgerBody } from '#agent/alarms/desk.ts';
import type { ClockSource } from '#agent/clock/engine-clock.ts';
import { limits } from '#agent/limits.ts';
import { readSiteText } from '#agent/site/read-site.ts';
import type { SiteSource } from '#agent/site/revision.ts';
import { canonicalJson } from '#agent/store/canonical.ts';
import { ReadOnlyStore } from '#agent/store/read-only.ts';
import { openStore } from '#agent/store/store.ts';
import { Core } from '#agent/wiring/core.ts';
import { replayFolder } from '#agent/wiring/replay-folder.ts';

/** Numbers in [0, 1) from a seed: mulberry32, from memory of Tommy Ettinger's public-domain code. */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export async function sourceOf(site: object): Promise<SiteSource> {
  const read = await readSiteText(stringify(site), 'site.yaml', () => {
    throw new Error('the site has no sheets');
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.source;
}

export class SimulatedAgent {
  readonly folder: string;
  core!: Core;
  /** Added to the system's time: the clock is set by changing it. */
  wallOffsetMs = 0;
  /** Milliseconds that the agent's own work takes, added at each look at the clock. */
  busyMs = (): number => 0;
  private busySoFarMs = 0;
  private readonly source: SiteSource;
  private readonly startMs: number;
  private readonly mode: 'wall' | 'samples';

  constructor(source: SiteSource, folder: string, startMs: number, mode: 'wall' | 'samples') {
    this.source = source;
    this.folder = folder;
    this.startMs = startMs;
    this.mode = mode;
  }

  private readonly clock: ClockSource = {
    wallMs: () => Math.floor(this.startMs + this.monotonicMs() + this.wallOffsetMs),
    monotonicMs: () => this.monotonicMs(),
  };

  /** Time goes by in the middle of the agent's work: no timer is heard. */
  jump(ms: number): void {
    this.busySoFarMs += ms;
  }

  /** What a good clock would say now. */
  get trueMs(): number {
    return Math.floor(this.startMs + performance.now() + this.busySoFarMs);
  }

  private monotonicMs(): number {
    this.busySoFarMs += this.busyMs();
    return performance.now() + this.busySoFarMs;
  }

  /** Returns the unsealed samples it found. */
  start(): string[] {
    this.core = new Core({
      store: openStore(this.folder, { now: () => this.startMs, ballastBytes: 0 }),
      source: this.source,
      mode: this.mode,
      clock: this.clock,
      version: '0.0.0',
      sealEveryMs: limits.sealEveryMs,
      tell: () => {},
      warn: (facts, message) => {
        // Its story sends nonsense too.
        if (message.startsWith('a message was refused')) return;
        throw new Error(`${message} ${JSON.stringify(facts)}`);
      },
    });
    return this.openSamples();
  }

  /** Lets time go by, the clock looked at every second and the turn taken every `tickMs`. */
  pass(ms: number, tickMs = 100): void {
    for (let left = ms; left > 0; left -= tickMs) {
      vi.advanceTimersByTime(Math.min(left, tickMs));
      this.core.live.tick();
      if (this.mode === 'samples') this.core.live.idleFor(limits.samplesIdleMs);
      else if (Math.floor(performance.now() / 1_000) !== this.lookedS) this.look();
    }
  }

  private lookedS = 0;
  private look(): void {
    this.lookedS = Math.floor(performance.now() / 1_000);
    this.core.lookAtClock();
  }

  /** As the process does when it is told to stop. Returns the unsealed samples. */
  stop(): string[] {
    this.core.live.stop();
    const samples = this.openSamples();
    const { engineNow } = this.core.live;
    if (engineNow !== null) this.core.store.stopRun(engineNow);
    this.close();
    return samples;
  }

  /** What is not on disk is lost. */
  crash(): void {
    this.close();
  }

  private close(): void {
    vi.clearAllTimers();
    this.core.store.close();
  }

  remove(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** Every sample of every signal that is not sealed yet: [signal, at, judged, value, quality]. */
  private openSamples(): string[] {
    const { core } = this;
    return core.samples.storedSignals.flatMap(({ id, name }) =>
      core.columns
        .copyOf(id)
        .flatMap(({ column }) =>
          Array.from({ length: column.count }, (_, i) =>
            [name, column.at[i], column.judged[i], column.value[i], column.quality[i]].join(' '),
          ),
        ),
    );
  }

  /** What the ledger holds of effects, a canonical line each. */
  entered(): string[] {
    return ledgerLines(this.folder).effects;
  }

  replayed(): string[] {
    return replayedLines(this.source, this.folder);
  }
}

const effectTypes = new Set(['transition', 'judgeable', 'hold', 'refused', 'run', 'mark']);

/** The ledger of a folder: effects as canonical lines, and the types of all other records. */
export function ledgerLines(folder: string): { effects: string[]; others: string[] } {
  const store = ReadOnlyStore.open(folder);
  const rows = store.db.prepare('SELECT record FROM ledger ORDER BY id').all();
  store.close();
  const effects: string[] = [];
  const others: string[] = [];
  for (const { record } of rows as unknown as { record: string }[]) {
    const { id: _, told_before_kept: __, ...body } = JSON.parse(record);
    if (effectTypes.has(body.type)) effects.push(canonicalJson(body));
    else others.push(body.type);
  }
  return { effects, others };
}

/** The effects of a folder judged again, a canonical line each. */
export function replayedLines(source: SiteSource, folder: string): string[] {
  const lines: string[] = [];
  replayFolder(
    source,
    folder,
    {},
    {
      emit: (effect) => lines.push(canonicalJson(ledgerBody(effect))),
      damage: (damage) => lines.push(JSON.stringify(damage)),
    },
  );
  return lines;
}
