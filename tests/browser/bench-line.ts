/**
 * A small line for the browser: an oven with people beside it, a mixer of a known kind, and some thirty
 * signals that only tick. Delays are short, so that seconds raise alarms. Invented.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { MqttClient } from 'mqtt';
import {
  type AgentProcess,
  addDevice,
  connectDevice,
  published,
  startAgentProcess,
} from '../agent-process.ts';
import { top } from '../tidy/source.ts';

/** Stamped on arrival, so judged at once. */
const plain = (topic: string, unit: string, more: object = {}) => ({
  topic,
  payload: { kind: 'plain' },
  unit,
  resolution: 0.1,
  ...more,
});

export const benchSite = {
  site: 'bench-works',
  timezone: 'Europe/Dublin',
  lines: {
    'mounts-2': {
      'oven-1': {
        kind: 'custom',
        signals: {
          floor: plain('oven/floor', 'Cel', { expect_every: '2 s' }),
          pressure: plain('oven/pressure', 'kPa', { resolution: 1 }),
        },
        rules: {
          'floor-hot': {
            kind: 'band',
            signal: 'floor',
            high: '112 Cel',
            high_high: '130 Cel',
            deadband: '2 K',
            on_delay: '0 s',
            priority: 'high',
            signal_word: 'WARNING',
            sentence:
              '{$station} floor: {$value}, past the limit set for dried residue, {$limit}, since {$clock}.',
            consequence: 'Dried residue can light itself with no spark.',
            do_not: ['open the oven to look'],
            actions: [
              'Smoke, glow or burning smell: fire alarm, leave, site fire plan.',
              'Lower the heat at the outside control.',
            ],
            caution: 'Hot surfaces, fire.',
          },
          'pressure-low': {
            kind: 'band',
            signal: 'pressure',
            low: '580 kPa',
            on_delay: '0 s',
            priority: 'medium',
            latching: true,
            consequence: 'The guns sag.',
            do_not: ['raise all regulators'],
            actions: ['See whether the compressor runs.'],
            caution: 'Stored pressure.',
          },
        },
      },
      'mixer-3': {
        kind: 'drum-mixer',
        container: 'drum-7',
        signals: {
          agitator: {
            topic: 'mixer/rpm',
            payload: { kind: 'plain' },
            unit: '/min',
            expect_every: '5 s',
          },
        },
      },
      bench: {
        kind: 'custom',
        signals: {
          tick: {
            topic: 'bench/+/t',
            names: ['tick'],
            payload: { kind: 'plain' },
            unit: 'Cel',
            resolution: 0.1,
          },
        },
        rules: {
          'cell-warm': {
            kind: 'band',
            signal: 'tick',
            high: '60 Cel',
            priority: 'low',
            consequence: 'Warm.',
            actions: ['Look.'],
          },
        },
      },
    },
  },
};

export interface BenchLine {
  readonly agent: AgentProcess;
  readonly client: MqttClient;
  /** A reading of the oven's floor, now and each second from now on; degrees Celsius, null for silence. */
  readonly floor: (celsius: number | null) => Promise<void>;
  readonly pressure: (kPa: number | null) => Promise<void>;
  readonly stop: () => Promise<void>;
}

/** A sensor that repeats its value each second. */
function sensor(client: MqttClient, topic: string) {
  let value: number | null = null;
  const send = async (): Promise<void> => {
    if (value !== null && client.connected) await published(client, topic, String(value));
  };
  const timer = setInterval(() => void send().catch(() => undefined), 1_000);
  return {
    set: (next: number | null): Promise<void> => {
      value = next;
      return send();
    },
    stop: () => clearInterval(timer),
  };
}

/** The page as its sources are now. Throws with the builder's words. */
export function buildPage(): void {
  // As anybody builds it: under the name of a test run it would be built for looking into.
  const env = { ...process.env, NODE_ENV: 'production' };
  const line = [join(top, 'start.js'), 'page'];
  const built = spawnSync(process.execPath, line, { encoding: 'utf8', env });
  if (built.status !== 0) throw new Error(`the page does not build:\n${built.stderr}`);
}

/** An agent that serves the page, and devices that publish to it. */
export async function startBenchLine(
  site: object = benchSite,
  env: Readonly<Record<string, string>> = {},
): Promise<BenchLine> {
  buildPage();
  const place = mkdtempSync(join(tmpdir(), 'forebond-page-'));
  const folder = join(place, 'data');
  const device = await addDevice(folder, 'bench');
  const agent = await startAgentProcess({ site, folder, env });
  const client = await connectDevice(agent.mqtt, device);
  const floor = sensor(client, 'oven/floor');
  const pressure = sensor(client, 'oven/pressure');
  return {
    agent,
    client,
    floor: floor.set,
    pressure: pressure.set,
    stop: async () => {
      floor.stop();
      pressure.stop();
      client.end(true);
      await agent.stop();
      rmSync(place, { recursive: true, force: true });
    },
  };
}
