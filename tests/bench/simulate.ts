/**
 * The agent's core on a simulated clock: hours of a plant in seconds, through the same code.
 */
import { readFileSync } from 'node:fs';
import type { ClockSource } from '../../agent/clock/engine-clock.ts';
import { limits } from '../../agent/limits.ts';
import type { SiteSource } from '../../agent/site/revision.ts';
import { openStore } from '../../agent/store/store.ts';
import { Core } from '../../agent/wiring/core.ts';

export class SimulatedClock implements ClockSource {
  ms: number;

  constructor(ms: number) {
    this.ms = ms;
  }

  wallMs(): number {
    return this.ms;
  }

  monotonicMs(): number {
    return this.ms;
  }
}

/** A process value: a slow wave, noise of a step or two, to one decimal. */
export function processValue(signal: number, second: number): string {
  const wave = 3 * Math.sin((second + 37 * signal) / (900 + 13 * signal));
  const noise = ((second * 7919 + signal * 104_729) % 5) - 2;
  return (20 + wave + noise * 0.1).toFixed(1);
}

/** Readings are made before the clock runs; they repeat after so many. */
const payloadsPerSignal = 120;

export interface Simulated {
  readonly core: Core;
  readonly clock: SimulatedClock;
  /** One second of every signal's readings, spread over the beats of it. */
  second(): void;
  close(): void;
}

export const simulationStart = Date.UTC(2026, 10, 25);

export function simulate(
  folder: string,
  source: SiteSource,
  topics: readonly string[],
  at = simulationStart,
  readingOf: (signal: number, second: number) => string = processValue,
): Simulated {
  const clock = new SimulatedClock(at);
  const store = openStore(folder, { now: () => clock.ms });
  const core = new Core({
    store,
    source,
    mode: 'wall',
    clock,
    version: 'bench',
    sealEveryMs: limits.sealEveryMs,
    tell: () => {},
    warn: (facts, message) => process.stderr.write(`${message} ${JSON.stringify(facts)}\n`),
  });
  const beats = 1_000 / limits.beatMs;
  const payloads = topics.map((_, i) =>
    Array.from({ length: payloadsPerSignal }, (_, s) => Buffer.from(`{"v":${readingOf(i, s)}}`)),
  );
  let second = 0;
  return {
    core,
    clock,
    second() {
      for (let beat = 0; beat < beats; beat += 1) {
        for (let i = beat; i < topics.length; i += beats)
          core.live.take(topics[i]!, payloads[i]![second % payloadsPerSignal]!, false, 0, () => {});
        clock.ms += limits.beatMs;
        core.live.tick();
      }
      store.deleteDead();
      store.note();
      second += 1;
    },
    close() {
      core.live.stop();
      store.stopRun(clock.ms);
      store.close();
    },
  };
}

/** Bytes this process caused to be written to disk so far, as the kernel counts them. */
export const bytesWritten = (): number =>
  Number(/^write_bytes: (\d+)/m.exec(readFileSync('/proc/self/io', 'utf8'))?.[1]);

/** Signals of a plain bench site, each with a limit and a silence to notice; and `probe`, judged at once. */
export function plainSource(signals: number): SiteSource {
  const names = [...Array.from({ length: signals }, (_, i) => `t${i}`), 'probe'];
  return {
    site: {
      site: 'bench',
      timezone: 'UTC',
      lines: {
        line: {
          station: {
            kind: 'custom',
            signals: Object.fromEntries(
              names.map((name) => [
                name,
                {
                  topic: `line/station/${name}`,
                  payload: { kind: 'json' as const, value: '/v' },
                  unit: 'Cel',
                  resolution: 0.1,
                  expect_every: '60 s',
                },
              ]),
            ),
            rules: Object.fromEntries(names.map((name) => [`warm-${name}`, warmRule(name)])),
          },
        },
      },
    },
    materials: {},
  };
}

const warmRule = (signal: string) => ({
  kind: 'band',
  signal,
  high: '90 Cel',
  deadband: '1 K',
  on_delay: signal === 'probe' ? '0 s' : '5 s',
  priority: 'low' as const,
  consequence: 'None.',
  actions: ['None.'],
});

export const plainTopics = (signals: number): string[] =>
  Array.from({ length: signals }, (_, i) => `line/station/t${i}`);
