/**
 * From a publish to the push request whole at its push service, at 1,000 messages a second, while a
 * 90-day chart is asked for without pause and a replay of the folder runs. Floor: the same publish
 * posted at once by the broker library alone, in turns with the figure, under the same load.
 */
import type { ChildProcess } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { SiteSource } from '../../agent/site/revision.ts';
import { aPhone } from '../agent/notify/open-push.ts';
import { bareSyncs, charts, connected, history, load, replaying, signals } from './busy.ts';
import { child, heard, released } from './children.ts';
import type { Arrival } from './push-service.ts';
import { atShare, type Figure } from './report.ts';
import { plainSource } from './simulate.ts';

const probes = 300;
/** What the agent may add to the bare path: the same as to the live stream. */
const addedMsMax = 50;

/** The plain site, and one sensor a probe: each alarm is the first of its rule, and told alone. */
function source(): SiteSource {
  const plain = plainSource(signals);
  const station = plain.site.lines.line!.station!;
  const names = Array.from({ length: probes }, (_, i) => `p${i}`);
  const signal = (name: string) => ({
    topic: `line/station/${name}`,
    payload: { kind: 'json' as const, value: '/v' },
    unit: 'Cel',
    resolution: 0.1,
  });
  const rule = (name: string) => ({
    ...{ kind: 'band', signal: name, high: '90 Cel', on_delay: '0 s', priority: 'high' as const },
    ...{ highly_managed: true, consequence: 'None.', actions: ['None.'] },
  });
  const ofEach = <T>(make: (name: string) => T) =>
    Object.fromEntries(names.map((name) => [name, make(name)]));
  return {
    ...plain,
    site: {
      ...plain.site,
      telling: { push: { contact: 'mailto:bench@forebond.invalid', hosts: ['localhost'] } },
      lines: {
        line: {
          station: {
            ...station,
            signals: { ...station.signals, ...ofEach(signal) },
            rules: { ...station.rules, ...ofEach(rule) },
          },
        },
      },
    },
  } as SiteSource;
}

/** Gives how long, in ms, from `publish` to the request on `path` that makes a sound. */
function timed(service: ChildProcess, path: string, publish: () => void): Promise<number> {
  return new Promise((resolve) => {
    let sentNs = 0n;
    const came = ({ path: at, urgency, atNs }: Arrival): void => {
      if (at !== path || urgency === 'low') return;
      service.off('message', came);
      resolve(Number(BigInt(atNs) - sentNs) / 1e6);
    };
    service.on('message', came);
    sentNs = process.hrtime.bigint();
    publish();
  });
}

interface Times {
  readonly agent: readonly number[];
  readonly bare: readonly number[];
}

async function inTurns(service: ChildProcess, agentPort: number, floorPort: number) {
  const [agent, floor] = await Promise.all([connected(agentPort), connected(floorPort)]);
  const times = { agent: [] as number[], bare: [] as number[] };
  for (let i = 0; i < probes; i += 1) {
    const pause = () => new Promise((resolve) => setTimeout(resolve, 20 + (i % 17)));
    times.agent.push(
      await timed(service, '/phone', () => agent.publish(`line/station/p${i}`, '{"v":99.5}')),
    );
    await pause();
    times.bare.push(
      await timed(service, '/bare', () => floor.publish('line/station/probe', '{"v":99.5}')),
    );
    await pause();
  }
  await Promise.all([agent.endAsync(), floor.endAsync()]);
  const sorted = (list: number[]): number[] => list.sort((a, b) => a - b);
  return { agent: sorted(times.agent), bare: sorted(times.bare) };
}

async function subscribe(page: string, endpoint: string): Promise<void> {
  const { p256dh, auth } = aPhone();
  const answer = await fetch(`${page}/api/push/subscriptions`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ endpoint, keys: { p256dh, auth } }),
  });
  if (answer.status !== 201) throw new Error(`push is not taken: ${await answer.text()}`);
}

export async function pushLatency(): Promise<Figure[]> {
  const record = history();
  const authority = join(record.folder, 'bench-authority.pem');
  const sourceFile = join(record.folder, 'bench-source.json');
  writeFileSync(sourceFile, JSON.stringify(source()));
  const service = child('./push-service.ts', [authority]);
  try {
    const { url } = await heard<{ url: string }>(service);
    const floor = child('./push-floor.ts', [url, authority]);
    const bare = await heard<{ port: number }>(floor);
    const words = [String(signals), record.folder, sourceFile];
    const agent = child('./agent-process.ts', words, { NODE_EXTRA_CA_CERTS: authority });
    const { port, page } = await heard<{ port: number; page: string }>(agent);
    await subscribe(page, `${url}/phone`);
    const stopLoad = await load(port);
    const stopCharts = charts(page);
    const replay = replaying(record.folder);
    await new Promise((resolve) => setTimeout(resolve, 2_000));
    const stopSyncs = bareSyncs(record.folder);
    const times = await inTurns(service, port, bare.port);
    const syncs = await stopSyncs();
    const ranOn = replay.exitCode === null;
    replay.kill('SIGKILL');
    const charted = stopCharts();
    stopLoad();
    await Promise.all([released(agent), released(floor), released(service)]);
    return [figureOf(times, syncs, charted, ranOn)];
  } finally {
    record.dispose();
  }
}

function figureOf(
  { agent, bare }: Times,
  syncs: readonly number[],
  charted: number,
  ranOn: boolean,
): Figure {
  const of = (list: readonly number[]): string =>
    `p50 ${atShare(list, 0.5).toFixed(1)} ms, p99 ${atShare(list, 0.99).toFixed(1)} ms`;
  const [p50, bareP50] = [atShare(agent, 0.5), atShare(bare, 0.5)];
  const [p99, bareP99] = [atShare(agent, 0.99), atShare(bare, 0.99)];
  return {
    name: 'publish to the push request at its service, at 1,000 msg/s',
    budget: `p99 within ${addedMsMax} ms of the bare path's`,
    floor: `${of(bare)}, published and posted at once`,
    figure: of(agent),
    ratio: p99 / bareP99,
    met: p99 - bareP99 < addedMsMax,
    note:
      `ratio at p50 ${(p50 / bareP50).toFixed(2)}; of the agent's, 10 ms is the mean wait for the beat, ` +
      `then a commit and the encryption; a bare write and fsync on that disk meanwhile ` +
      `p50 ${atShare(syncs, 0.5).toFixed(1)} ms, p99 ${atShare(syncs, 0.99).toFixed(1)} ms; ` +
      `${charted} charts of 90 days meanwhile; the replay ${ranOn ? 'ran throughout' : 'ended early'}`,
  };
}
