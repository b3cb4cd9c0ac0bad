/**
 * Replay from the store through derived signals and full station rule sets, on one core.
 *
 * Told in processor time, so that what else the machine does does not count; by the clock beside it.
 *
 * The plant: ten adhesive stores (wall, bottom, air, humidity), ten drum mixers, ten compressed-air
 * stations; 90 measured signals at 1 Hz for four sealed hours. Floor: reading and merging alone.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { feedItem } from '../../agent/replay/feed.ts';
import { compileSource, type SiteSource } from '../../agent/site/revision.ts';
import { readRecord } from '../../agent/store/reader.ts';
import { Engine } from '../../rules/engine.ts';
import type { Plan } from '../../rules/plan/plan.ts';
import { type Figure, median } from './report.ts';
import { processValue, simulate, simulationStart } from './simulate.ts';

const stations = 10;
const hours = 4;

const signal = (topic: string, unit: string) => ({
  topic,
  payload: { kind: 'json' as const, value: '/v' },
  unit,
  expect_every: '10 s',
});

function plant(): { source: SiteSource; topics: string[] } {
  const topics: string[] = [];
  const of = (station: string, units: Readonly<Record<string, string>>) =>
    Object.fromEntries(
      Object.entries(units).map(([name, unit]) => {
        const topic = `line/${station}/${name}`;
        topics.push(topic);
        return [name, signal(topic, unit)];
      }),
    );
  const line: Record<string, SiteSource['site']['lines'][string][string]> = {};
  for (let i = 0; i < stations; i += 1) {
    const store = { wall: 'Cel', bottom: 'Cel', air: 'Cel', humidity: '%' };
    line[`store-${i}`] = { kind: 'adhesive-store', signals: of(`store-${i}`, store) };
    const mixer = { agitator: '/min', 'in-use': '1' };
    line[`mixer-${i}`] = { kind: 'drum-mixer', signals: of(`mixer-${i}`, mixer) };
    const air = { pdp: 'Cel', pipe: 'Cel', header: 'bar' };
    line[`air-${i}`] = { kind: 'compressed-air', signals: of(`air-${i}`, air) };
  }
  return {
    source: { site: { site: 'bench', timezone: 'UTC', lines: { line } }, materials: {} },
    topics,
  };
}

export async function replaySpeed(): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'forebond-replay-'));
  try {
    const { source, topics } = plant();
    const run = simulate(folder, source, topics, simulationStart, (i, second) =>
      plausible(topics[i]!, i, second),
    );
    for (let hour = 0; hour < hours; hour += 1) {
      for (let second = 0; second < 3_600; second += 1) run.second();
      await run.core.sealIfDue(true);
    }
    run.close();
    return measure(folder, compileSource(source, {}).plan);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A plant at work: nothing abnormal, everything moving as it should. */
function plausible(topic: string, signal: number, second: number): string {
  if (topic.endsWith('/in-use')) return '1';
  if (topic.endsWith('/pdp')) return (Number(processValue(signal, second)) - 40).toFixed(1);
  if (topic.endsWith('/header')) return (Number(processValue(signal, second)) / 3).toFixed(2);
  return processValue(signal, second);
}

function measure(folder: string, plan: Plan): Figure[] {
  const reading: number[] = [];
  const judging: number[] = [];
  const byClock: number[] = [];
  let samples = 0;
  for (let i = 0; i < 6; i += 1) {
    const atFloor = timed(() => read(folder, plan));
    const whole = timed(() => judge(folder, plan));
    samples = whole.samples;
    if (i === 0) continue;
    reading.push(atFloor.samples / atFloor.seconds);
    judging.push(whole.samples / whole.seconds);
    byClock.push(whole.samples / whole.clockSeconds);
  }
  const figure = median(judging);
  const floor = median(reading);
  const ns = (perSecond: number): number => Math.round(1e9 / perSecond);
  return [
    {
      name: `replay, ${plan.signals.length} signals, ${plan.rules.length} rules, ${plan.derived.length} derived`,
      budget: 'at least 2 million samples a second',
      floor: `${(floor / 1e6).toFixed(2)} M/s reading and merging alone`,
      figure: `${(figure / 1e6).toFixed(2)} M/s`,
      ratio: figure / floor,
      met: figure >= 2e6,
      note: `${ns(figure)} ns a sample: ${ns(floor)} reading and merging, ${ns(figure) - ns(floor)} judging and deriving; ${samples} samples; ${(median(byClock) / 1e6).toFixed(2)} M/s by the clock`,
    },
  ];
}

interface Timed {
  readonly samples: number;
  /** Of the processor, all threads of this process together. */
  readonly seconds: number;
  readonly clockSeconds: number;
}

function timed(work: () => number): Timed {
  const begun = performance.now();
  const used = process.cpuUsage();
  const samples = work();
  const { user, system } = process.cpuUsage(used);
  const clockSeconds = (performance.now() - begun) / 1_000;
  return { samples, seconds: (user + system) / 1e6, clockSeconds };
}

const indexOf = (plan: Plan) => {
  const index = new Map(plan.signals.map(({ id }, i) => [id, i]));
  return ({ name }: { readonly name: string }): number => index.get(name) ?? -1;
};

function read(folder: string, plan: Plan): number {
  let samples = 0;
  for (const item of readRecord(folder, { indexOf: indexOf(plan) }))
    if (item.kind === 'samples') samples += item.batch.count;
  return samples;
}

function judge(folder: string, plan: Plan): number {
  let samples = 0;
  let engine: Engine | null = null;
  for (const item of readRecord(folder, { indexOf: indexOf(plan) })) {
    if (item.kind === 'damage') throw new Error(item.reason);
    if (item.kind === 'samples') samples += item.batch.count;
    if (engine === null) {
      const at = item.kind === 'input' ? item.input.judged : item.batch.judged[0]!;
      engine = Engine.begin(plan, at, { emit: () => {}, planOf: () => plan });
      if (item.kind === 'input') continue;
    }
    feedItem(engine, item);
    engine.derivedOut.clear();
  }
  return samples;
}
