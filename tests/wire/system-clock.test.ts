/**
 * A system clock that is wrong or set while a whole agent runs, by Debian's faketime: it goes on,
 * raises no burst of alarms, says what it thinks of the clock, enters the step, and a replay of the
 * folder gives what the ledger holds.
 */
import { existsSync, globSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { MqttClient } from 'mqtt';
import { expect, test } from 'vitest';
import {
  type AgentProcess,
  addDevice,
  connectDevice,
  published,
  scratchFolder,
  siteFile,
  startAgentProcess,
} from '#tests/agent-process.ts';
import { alarms, get, type HealthSeen, type SignalSeen, signalOf, until } from './agent-http.ts';
import { ledgerOf } from './ledger-lines.ts';
import { ledgerLines, replayedLines, sourceOf } from './simulated-agent.ts';
import { worksSite } from './works-site.ts';

/** Debian's package `faketime` keeps it under the name of the machine's kind. */
const [library = 'libfaketime is not installed'] = globSync('/usr/lib/*/faketime/libfaketime.so.1');

class ClockedWorks {
  readonly data: string;
  private readonly site: string;
  private readonly clockFile: string;
  agent!: AgentProcess;
  client!: MqttClient;

  constructor(folder: string) {
    this.data = join(folder, 'data');
    this.site = siteFile(join(folder, 'works'), worksSite);
    this.clockFile = join(folder, 'clock');
    this.setClock(0);
  }

  /** Seconds that the system's clock is off from here on. */
  setClock(offsetS: number): void {
    writeFileSync(this.clockFile, `${offsetS >= 0 ? '+' : ''}${offsetS}\n`);
  }

  async start(): Promise<void> {
    const device = existsSync(join(this.data, 'devices.json'))
      ? this.device
      : await addDevice(this.data, 'sensors');
    this.device = device;
    this.agent = await startAgentProcess({
      site: this.site,
      folder: this.data,
      env: {
        LD_PRELOAD: library,
        FAKETIME_TIMESTAMP_FILE: this.clockFile,
        FAKETIME_NO_CACHE: '1',
        FAKETIME_DONT_FAKE_MONOTONIC: '1',
      },
    });
    this.client = await connectDevice(this.agent.mqtt, device!);
  }
  private device: Awaited<ReturnType<typeof addDevice>> | undefined;

  async stop(): Promise<void> {
    this.client.end(true);
    expect((await this.agent.stop()).code).toBe(0);
  }

  /** All that speaks regularly, once; the quality of one of them. */
  async speak(): Promise<SignalSeen> {
    for (const [topic, value] of [
      ['room/air', '20.0'],
      ['room/humidity', '50'],
      ['bench/cell-1/t', '21.0'],
    ] as const)
      await published(this.client, topic, value);
    return signalOf(this.agent.page, 'a/bench/t-cell-1');
  }

  health = async (): Promise<HealthSeen> =>
    (await get<HealthSeen>(this.agent.page, '/api/health')).body;

  clockSteps(): unknown[] {
    return ledgerOf(this.data)
      .filter(({ type }) => type === 'clock')
      .map(({ step }) => step);
  }

  async replaysAlike(): Promise<void> {
    const { effects, others } = ledgerLines(this.data);
    expect(others.filter((type) => type === 'recovered-differs')).toEqual([]);
    expect(replayedLines(await sourceOf(worksSite), this.data)).toEqual(effects);
  }
}

const yearS = 365 * 86_400;
const good = { grade: 'good', cause: null };
const uncertain = { grade: 'uncertain', cause: 'the clock of this box was in doubt' };

/** Sets the clock and lets the agent speak through a second look at it. */
async function stepTo(works: ClockedWorks, offsetS: number): Promise<SignalSeen> {
  works.setClock(offsetS);
  await works.speak();
  await sleep(1_300);
  return works.speak();
}

const steps: readonly [string, number, 'ahead' | 'back' | null, object, string][] = [
  ['ten years ahead', 10 * yearS, 'ahead', good, 'maintenance-required'],
  ['an hour back', -3_600, 'back', good, 'maintenance-required'],
  ['five minutes back', -300, null, uncertain, 'out-of-specification'],
  ['to 1970', -Math.floor(Date.now() / 1_000) + 86_400, 'back', uncertain, 'out-of-specification'],
];

test.each(steps)(
  'the clock is set %s',
  async (_, offsetS, step, quality, condition) => {
    const works = new ClockedWorks(scratchFolder());
    await works.start();
    expect(await works.speak()).toMatchObject({ quality: good });
    const seen = await stepTo(works, offsetS);
    expect(seen).toMatchObject({ value: 21, quality });
    const realMs = Date.now() + offsetS * 1_000;
    if (step !== null) expect(Math.abs(seen.at! - realMs)).toBeLessThan(2_000);
    const { parts } = await works.health();
    expect(parts).toMatchObject({ engine: 'good', disk: 'good', clock: condition });

    // And right again; nothing is alarmed by any of it.
    await stepTo(works, 0);
    const right = step === null ? 'good' : 'maintenance-required';
    const { notes } = await until(works.health, ({ parts: now }) => now.clock === right);
    const way = step === 'ahead' ? 'back' : 'ahead';
    expect(notes.clock ?? '').toMatch(step === null ? /^$/ : new RegExp(` was set ${way} by `));
    expect((await works.speak()).quality).toEqual(good);
    expect(await alarms(works.agent.page, '?since=0')).toEqual([]);
    await works.stop();
    expect(works.clockSteps()).toEqual(step === null ? [] : [step, way]);
    await works.replaysAlike();
  },
  40_000,
);

test.each([
  ['an hour back', -3_600, good, 'maintenance-required'],
  ['to 1970', -Math.floor(Date.now() / 1_000) + 86_400, uncertain, 'out-of-specification'],
] as const)(
  'the clock is set %s while the agent is down',
  async (_, offsetS, quality, condition) => {
    const works = new ClockedWorks(scratchFolder());
    await works.start();
    await works.speak();
    await works.stop();
    works.setClock(offsetS);
    await works.start();
    // The very first sample counts.
    expect(await works.speak()).toMatchObject({ value: 21, quality });
    expect((await works.health()).parts).toMatchObject({ clock: condition });
    expect(await alarms(works.agent.page, '?since=0')).toEqual([]);
    await works.stop();
    expect(works.clockSteps()).toEqual(['back']);
    await works.replaysAlike();
  },
  40_000,
);
