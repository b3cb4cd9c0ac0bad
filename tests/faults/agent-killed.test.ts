/**
 * SIGKILL under load, again and again: what was acknowledged is there, nothing else is, and the
 * alarms are those of an agent that was never interrupted.
 */
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import {
  type AgentProcess,
  addDevice,
  forebond,
  scratchFolder,
  siteFile,
  startAgentProcess,
  type TestDevice,
} from '#tests/agent-process.ts';
import { expectJudgedAlike, expectKept, judgedThen, ledgerOf } from './afterwards.ts';
import { seededInteger } from './chance.ts';
import { Publishers } from './publishers.ts';
import { smallWorks } from './small-works.ts';

const program = join(import.meta.dirname, 'tuned-agent.ts');

interface Trial {
  readonly kills: number;
  readonly seed: number;
  readonly startOn: (site: string, folder: string) => Promise<AgentProcess>;
}

/** Connected; or why the agent, which nobody has killed yet, does not let them in. */
async function connect(publishers: Publishers, agent: AgentProcess, device: TestDevice) {
  try {
    await publishers.start(agent.mqtt, device);
  } catch (error) {
    const { code, signal, stderr } = await agent.kill();
    const words = `the agent (end: ${signal ?? code}) let nobody in; it logged: ${stderr}`;
    throw new Error(words, { cause: error });
  }
}

async function killUnderLoad({ kills, seed, startOn }: Trial) {
  const parent = scratchFolder();
  const folder = join(parent, 'data');
  const site = siteFile(parent, smallWorks);
  const device = await addDevice(folder, 'hall', { publish: ['hall/#'] });
  const publishers = new Publishers();
  const between = seededInteger(seed, 150, 600);
  for (let kill = 1; kill <= kills; kill += 1) {
    const agent = await startOn(site, folder);
    await connect(publishers, agent, device);
    await wait(between());
    await agent.kill();
    await publishers.stop(false);
    if (kill % 10 > 0) continue;
    expectKept(folder, publishers);
    await expectJudgedAlike(folder, site);
  }
  const agent = await startOn(site, folder);
  await connect(publishers, agent, device);
  await publishers.stop();
  expect(await agent.stop()).toMatchObject({ code: 0, stderr: '' });
  expect(publishers.waiting).toBe(0);
  return { folder, site, publishers };
}

const lines = (text: string): Record<string, unknown>[] =>
  text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, unknown>);

test('50 kills under QoS 1 load', { timeout: 1_200_000 }, async ({ annotate }) => {
  const seed = 20_261_125;
  await annotate(`seed ${seed}`);
  const { folder, site, publishers } = await killUnderLoad({
    kills: 50,
    seed,
    startOn: (file, data) => startAgentProcess({ site: file, folder: data }),
  });
  // There was something to lose, and something to judge.
  expect(publishers.acknowledgedCount).toBeGreaterThan(5_000);
  expect(judgedThen(folder).length).toBeGreaterThan(100);
  expectKept(folder, publishers);
  await expectJudgedAlike(folder, site);

  const replayed = await forebond(['replay', '--site', site, '--from', folder, '--json']);
  expect(replayed).toMatchObject({ code: 0, stderr: '' });
  const again = lines(replayed.stdout).slice(0, -1);
  const fields = ['at', 'judged', 'occurrence', 'rule', 'signal', 'transition', 'severity'];
  const told = ledgerOf(folder).filter(({ type }) => type === 'transition');
  const only = (record: Record<string, unknown>) => fields.map((name) => record[name]);
  expect(again.map(only)).toEqual(told.map(only));

  const verified = await forebond(['ledger', 'verify', '--data', folder]);
  expect(verified).toMatchObject({ code: 0, stderr: '' });
});

test('20 kills while it seals three times a second', { timeout: 900_000 }, async ({ annotate }) => {
  const seed = 20_261_126;
  await annotate(`seed ${seed}`);
  const { folder, site, publishers } = await killUnderLoad({
    kills: 20,
    seed,
    startOn: (file, data) =>
      startAgentProcess({
        site: file,
        folder: data,
        program,
        words: [JSON.stringify({ site: file, folder: data, sealEveryMs: 300, ballastBytes: 0 })],
      }),
  });
  expect(publishers.acknowledgedCount).toBeGreaterThan(2_000);
  expectKept(folder, publishers);
  await expectJudgedAlike(folder, site);
});
