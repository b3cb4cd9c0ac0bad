/**
 * Messages a second through decode, calibration, rules and the durable store, on one core, beside
 * the broker library alone with JSON.parse, in one sitting and taken in turns.
 */
import type { ChildProcess } from 'node:child_process';
import { child, heard, released } from './children.ts';
import type { Job } from './publisher.ts';
import { type Figure, median } from './report.ts';

async function counted(broker: ChildProcess): Promise<number> {
  const answer = heard<{ count: number }>(broker);
  broker.send('count');
  return (await answer).count;
}

/** Seconds from the first message sent to the last one counted. */
async function round(broker: ChildProcess, port: number, job: Omit<Job, 'port'>): Promise<number> {
  const before = await counted(broker);
  const publisher = child('./publisher.ts');
  publisher.send({ ...job, port } satisfies Job);
  await heard(publisher);
  const begun = performance.now();
  const done = heard(publisher);
  publisher.send('go');
  await done;
  while ((await counted(broker)) - before < job.messages)
    await new Promise((resolve) => setTimeout(resolve, 5));
  const seconds = (performance.now() - begun) / 1_000;
  publisher.send('end');
  return seconds;
}

async function ratio(name: string, budget: string, job: Omit<Job, 'port'>): Promise<Figure> {
  const floor = child('./floor-broker.ts');
  const { port: floorPort } = await heard<{ port: number }>(floor);
  const agent = child('./agent-process.ts', [String(job.topics)]);
  const { port: agentPort } = await heard<{ port: number }>(agent);
  const floors: number[] = [];
  const figures: number[] = [];
  for (let i = 0; i < 6; i += 1) {
    const atFloor = job.messages / (await round(floor, floorPort, job));
    const atAgent = job.messages / (await round(agent, agentPort, job));
    // The first pair warms both up.
    if (i === 0) continue;
    floors.push(atFloor);
    figures.push(atAgent);
  }
  await Promise.all([released(floor), released(agent)]);
  const figure = median(figures);
  return {
    name,
    budget,
    floor: `${Math.round(median(floors))} msg/s`,
    figure: `${Math.round(figure)} msg/s`,
    ratio: figure / median(floors),
    met: figure / median(floors) >= 0.6,
  };
}

export const throughput = async (): Promise<Figure[]> => [
  await ratio('QoS 0 JSON, one core', 'at least 0.6 of the broker library alone', {
    connections: 4,
    messages: 400_000,
    qos: 0,
    topics: 50,
    window: 0,
  }),
  await ratio(
    'QoS 1, acknowledged after commit, 20 publishers',
    'at least 0.6 of the broker library alone',
    {
      connections: 20,
      messages: 200_000,
      qos: 1,
      topics: 50,
      window: 20,
    },
  ),
];
