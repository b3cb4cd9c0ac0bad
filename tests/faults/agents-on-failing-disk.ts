/**
 * Whole agents, one after the other in one process, each on a disk that fails at another
 * operation: started, sent five messages with QoS 1, one of which raises an alarm, and stopped.
 *
 * Arguments: the folder that fails, the file of the disk's count, the site file, the first
 * operation to fail, the step to the next, and how long to wait for an acknowledgement. Each run
 * keeps its data in `<folder>/<operation>`. Says one JSON object a run; ends once runs no
 * longer come as far as their fault.
 */
import { mkdirSync, readFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { connectAsync } from 'mqtt';
import { pino } from 'pino';
import { startAgent } from '#agent/compose.ts';
import { AgentError } from '#agent/errors.ts';
import { readSite } from '#agent/site/read-site.ts';
import type { Agent } from '#agent/wiring/agent-options.ts';
import { armDisk } from './failing-disk.ts';
import { type FaultedRun, sentKeys } from './faulted-run.ts';

const [folder = '', countFile = '', site = '', first = '1', step = '1', ackMs = '4000'] =
  process.argv.slice(2);
const here = { host: '127.0.0.1', port: 0 };
const reading = await readSite(site);
if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
const { source } = reading;

let faults: string[] = [];
process.on('uncaughtException', (error) => faults.push(`uncaught: ${error.stack}`));
process.on('unhandledRejection', (error) => faults.push(`unhandled: ${String(error)}`));
const log = pino({ base: null, level: 'error' }, { write: (line: string) => faults.push(line) });

async function within<T>(what: string, ms: number, work: Promise<T>): Promise<T | null> {
  const late = Symbol('late');
  const first = await Promise.race([work, wait(ms, late, { ref: false })]);
  if (first !== late) return first as T;
  faults.push(`hung: ${what}`);
  return null;
}

/** The code of a refusal; anything else is a fault of its own. */
async function codeOf(work: () => Promise<unknown>): Promise<string | null> {
  try {
    await work();
    return null;
  } catch (error) {
    if (error instanceof AgentError) return error.code;
    faults.push(`threw: ${error instanceof Error ? error.stack : String(error)}`);
    return 'fault';
  }
}

async function send(agent: Agent, acknowledged: number[]): Promise<void> {
  const client = await connectAsync(agent.mqtt, { reconnectPeriod: 0 });
  for (const key of sentKeys) {
    const taken = client
      .publishAsync('hall/2/plain', `${key / 10_000}`, { qos: 1 })
      .then(() => acknowledged.push(key))
      .catch(() => undefined);
    await Promise.race([taken, wait(Number(ackMs), null, { ref: false })]);
  }
  await client.endAsync(true);
}

async function run(at: number): Promise<FaultedRun> {
  faults = [];
  const data = join(folder, String(at));
  const acknowledged: number[] = [];
  let agent: Agent | null = null;
  armDisk(folder, at);
  const start = await codeOf(async () => {
    agent = await within(
      'start',
      10_000,
      startAgent({
        source,
        folder: data,
        http: here,
        mqtt: here,
        mode: 'wall',
        log,
        ballastBytes: 65_536,
      }),
    );
  });
  const running: Agent | null = agent;
  let stop: string | null = null;
  if (running !== null) {
    await within('publishing', 30_000, send(running, acknowledged));
    stop = await codeOf(() => within('stop', 10_000, (running as Agent).stop()));
  }
  const operations = Number(readFileSync(countFile, 'utf8'));
  armDisk(folder, 0);
  return { at, operations, start, stop, acknowledged, faults };
}

mkdirSync(folder, { recursive: true });
// How many operations a run has depends a little on its timing; three that fall short are the end.
for (let at = Number(first), short = 0; short < 3; at += Number(step)) {
  const done = await run(at);
  writeSync(1, `${JSON.stringify(done)}\n`);
  short = done.operations < at ? short + 1 : 0;
}
process.exit(0);
