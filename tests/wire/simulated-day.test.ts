/**
 * Days on a simulated clock: whatever the order of beats, ticks, new instances, commands, restarts
 * and steps of the clock, a replay of the folder gives exactly what the ledger holds.
 * More of them: FIRST_DAY=100 DAYS=100.
 */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { chance, ledgerLines, SimulatedAgent, sourceOf } from './simulated-agent.ts';
import { worksSite } from './works-site.ts';

const source = await sourceOf(worksSite);
const morning = Date.UTC(2027, 2, 1, 6);

beforeEach(() => {
  vi.useFakeTimers({
    toFake: ['setTimeout', 'clearTimeout', 'setImmediate', 'clearImmediate', 'performance'],
  });
});
afterEach(() => {
  vi.useRealTimers();
});

/** One simulated day: clumps of traffic with everything in them, hours of quiet in between. */
class Day {
  readonly agent: SimulatedAgent;
  private readonly random: () => number;
  private value = 22;
  readonly mode: 'wall' | 'samples';

  constructor(seed: number, mode: 'wall' | 'samples') {
    this.mode = mode;
    this.random = chance(seed);
    const folder = mkdtempSync(join(tmpdir(), 'forebond-day-'));
    this.agent = new SimulatedAgent(source, folder, morning, mode);
    const busy = chance(seed + 1_000_000);
    this.agent.busyMs = () => (busy() < 0.02 ? Math.floor(busy() * 12) : 0);
  }

  private one<T>(of: readonly T[]): T {
    return of[Math.floor(this.random() * of.length)]!;
  }

  private publish(): void {
    const { agent, random } = this;
    this.value = Math.min(34, Math.max(14, this.value + (random() - 0.5) * 6));
    const v = this.value.toFixed(1);
    const owned = (late: number): string =>
      JSON.stringify({ v: Number(v), t: agent.trueMs - Math.floor(random() * late) });
    const [topic, payload] = this.one<readonly [string, string]>([
      ['room/air', random() < 0.1 ? 'warm' : v],
      ['room/humidity', (40 + random() * 50).toFixed(0)],
      ['room/run', random() < 0.3 ? '0' : '1'],
      ['room/wall', random() < 0.1 ? '{"v":1e400}' : owned(this.one([1, 500, 5_000]))],
      [`bench/cell-${Math.floor(random() ** 2 * 40)}/t`, v],
      [`zone/zone-${Math.floor(random() ** 2 * 40)}/t`, owned(this.one([1, 600]))],
      ['nowhere', v],
    ]);
    const times = random() < 0.05 ? 2 : 1;
    for (let i = 0; i < times; i += 1)
      agent.core.live.take(topic, Buffer.from(payload), false, random() < 0.5 ? 1 : 0, () => {});
  }

  private command(): void {
    const { live, desk } = this.agent.core;
    const occurrence = this.one(desk.atHand())?.id ?? 'm/room/none@1';
    const untilMs = this.agent.trueMs + 60_000;
    const hold = this.one(desk.heldNow())?.id ?? 'none';
    const by = 'operator-1';
    const command = this.one([
      { kind: 'command', verb: 'acknowledge', occurrence, by },
      { kind: 'command', verb: 'reset', occurrence, by },
      { kind: 'command', verb: 'shelve', occurrence, by, reason: 'being mended', untilMs },
      {
        kind: 'command',
        verb: 'hold',
        what: 'lot',
        item: `lot-${this.one([1, 2])}`,
        by,
        reason: 'x',
      },
      { kind: 'command', verb: 'lift', hold, disposition: 'released', by, reason: 'x' },
    ] as const);
    live.command(command);
  }

  private clump(): void {
    const { agent, random } = this;
    for (let i = 0; i < 60; i += 1) {
      if (random() < 0.05) this.command();
      else this.publish();
      if (random() < 0.3) continue;
      // Half the time to just before the next point of the grid, where two moments meet.
      const toGrid = 20 - (agent.trueMs % 20) - this.one([0, 1, 2]);
      agent.pass(random() < 0.5 ? Math.max(1, toGrid) : 1 + Math.floor(random() * 300), 100);
    }
  }

  private between(): void {
    const { agent, random } = this;
    const what = random();
    if (what < 0.2) {
      const before = agent.stop();
      const after = new Set(this.again());
      // Derived ones too, each under its own signal.
      expect(before.filter((sample) => !after.has(sample))).toEqual([]);
    } else if (what < 0.35) {
      agent.crash();
      this.again();
    }
    if (what >= 0.35 && what < 0.5 && this.mode === 'wall')
      agent.wallOffsetMs += this.one([3_000, 3_600_000, -5_000, -1_200_000]);
    if (what >= 0.5 && what < 0.6) agent.pass(3_600_000, 60_000);
    agent.pass(this.one([20, 1_500, 15_000]));
  }

  private again(): string[] {
    const { agent, random } = this;
    vi.advanceTimersByTime(this.one([1, 500, 30_000]));
    if (random() < 0.3 && this.mode === 'wall') agent.wallOffsetMs -= this.one([10, 5_000]);
    return agent.start();
  }

  async run(): Promise<void> {
    const { agent } = this;
    agent.start();
    for (let i = 0; i < 12; i += 1) {
      this.clump();
      this.between();
      if (this.random() < 0.15) await agent.core.sealIfDue(true);
    }
    this.clump();
    agent.stop();
  }
}

const { FIRST_DAY = '1', DAYS = '8' } = process.env;
const seeds = Array.from({ length: Number(DAYS) }, (_, i) => i + Number(FIRST_DAY));

for (const mode of ['wall', 'samples'] as const) {
  test.each(seeds)(
    `a day by the ${mode} clock, seed %i: a replay gives what the ledger holds`,
    async (seed) => {
      const day = new Day(seed, mode);
      const { agent } = day;
      try {
        await day.run();
        const { effects, others } = ledgerLines(agent.folder);
        expect(others.filter((type) => type === 'recovered-differs')).toEqual([]);
        expect(effects.length).toBeGreaterThan(20);
        expect(agent.replayed()).toEqual(effects);
      } finally {
        agent.remove();
      }
    },
  );
}

test('a derived sample made on the way to a change of plan keeps its signal', () => {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-day-'));
  const agent = new SimulatedAgent(source, folder, morning, 'wall');
  try {
    agent.start();
    const take = (topic: string, value: string): void =>
      agent.core.live.take(topic, Buffer.from(value), false, 1, () => {});
    take('room/air', '20.0');
    take('room/humidity', '50');
    agent.pass(30, 30);
    // Due 100 ms after its inputs; nobody looks before a new cell adds a signal before it.
    agent.jump(110);
    take('bench/cell-1/t', '21.0');
    agent.pass(100);
    const samples = agent.stop();
    // Sonntag 1990 by rules/derive/dew-point.ts: 20 °C at 50 % has a dew point of 9.3 °C.
    expect(samples.filter((sample) => / 9\.3 /.test(sample))).toEqual([
      expect.stringMatching(/^m\/room\/dew /),
    ]);
  } finally {
    agent.remove();
  }
});
