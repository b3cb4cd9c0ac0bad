/**
 * From a publish to its alarm on the live stream, at 1,000 messages a second, while a 90-day chart
 * is asked for without pause and a replay of the folder runs. Floor: a publish to an open HTTP
 * answer through the broker library alone, with nothing else going on.
 */
import { bareSyncs, charts, connected, history, load, replaying, signals } from './busy.ts';
import { child, heard, released } from './children.ts';
import { atShare, type Figure } from './report.ts';

const probes = 400;
const budgetMs = 50;

/** Milliseconds from each probe's publish to its event. */
async function probe(port: number, stream: string, seen: RegExp): Promise<number[]> {
  const client = await connected(port);
  const abort = new AbortController();
  const answer = await fetch(stream, { signal: abort.signal });
  const reader = answer.body!.getReader();
  const decoder = new TextDecoder();
  const times: number[] = [];
  const waiting: ((at: number) => void)[] = [];
  const reading = (async () => {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      const text = decoder.decode(value);
      for (const _ of text.matchAll(seen)) waiting.shift()?.(performance.now());
    }
  })().catch(() => {});
  for (let i = 0; i < probes; i += 1) {
    const came = new Promise<number>((resolve) => waiting.push(resolve));
    const sent = performance.now();
    client.publish('line/station/probe', i % 2 === 0 ? '{"v":99.5}' : '{"v":20.5}');
    times.push((await came) - sent);
    await new Promise((resolve) => setTimeout(resolve, 20 + (i % 17)));
  }
  abort.abort();
  await reading;
  await client.endAsync();
  return times.sort((a, b) => a - b);
}

export async function alarmLatency(): Promise<Figure[]> {
  const floor = child('./floor-broker.ts');
  const bare = await heard<{ port: number; page: string }>(floor);
  const floors = await probe(bare.port, bare.page, /event: alarm/g);
  await released(floor);
  const record = history();
  try {
    const agent = child('./agent-process.ts', [String(signals), record.folder]);
    const { port, page } = await heard<{ port: number; page: string }>(agent);
    const stopLoad = await load(port);
    const stopCharts = charts(page);
    const replay = replaying(record.folder);
    await new Promise((resolve) => setTimeout(resolve, 2_000));
    const stopSyncs = bareSyncs(record.folder);
    const times = await probe(port, `${page}/api/stream`, /event: alarm/g);
    const syncs = await stopSyncs();
    const ranOn = replay.exitCode === null;
    replay.kill('SIGKILL');
    const charted = stopCharts();
    stopLoad();
    await released(agent);
    return [figureOf(times, floors, syncs, charted, ranOn)];
  } finally {
    record.dispose();
  }
}

function figureOf(
  times: readonly number[],
  floors: readonly number[],
  syncs: readonly number[],
  charted: number,
  replayRanOn: boolean,
): Figure {
  const p99 = atShare(times, 0.99);
  return {
    name: 'publish to alarm on the live stream, p99, at 1,000 msg/s',
    budget: `under ${budgetMs} ms`,
    floor: `${atShare(floors, 0.99).toFixed(1)} ms (median ${atShare(floors, 0.5).toFixed(1)})`,
    figure: `${p99.toFixed(1)} ms`,
    ratio: null,
    met: p99 < budgetMs,
    note:
      `median ${atShare(times, 0.5).toFixed(1)} ms, of which 10 is the mean wait for the beat; ` +
      `a bare write and fsync on that disk meanwhile ${atShare(syncs, 0.5).toFixed(1)} ms, ` +
      `p99 ${atShare(syncs, 0.99).toFixed(1)}; ` +
      `${charted} charts of 90 days meanwhile; the replay ${replayRanOn ? 'ran throughout' : 'ended early'}`,
  };
}
