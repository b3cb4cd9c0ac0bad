/**
 * `forebond demo`: the agent with an invented line that publishes to it.
 *
 * The first start makes a week of history through the same engine; later ones find it. Prints the
 * same ready line as `run`. Ctrl-C stops line and agent, in this order.
 */
import { mkdirSync } from 'node:fs';
import { findPackageJSON } from 'node:module';
import { dirname, join } from 'node:path';
import { type Command, InvalidArgumentError } from 'commander';
import { type Logger, pino } from 'pino';
import { changeDevices, devicesFileName } from '#broker/credentials.ts';
import { hashSecret, makeSecret } from '#broker/secrets.ts';
import { type ClockSource, systemClock } from '../clock/engine-clock.ts';
import { startAgent } from '../compose.ts';
import { runLine, type TimesFaster } from '../demo/gateway.ts';
import { filtersOf, type Gateway, gateways } from '../demo/messages.ts';
import { Plant, theShow } from '../demo/plant.ts';
import { preRollMin } from '../demo/timetable.ts';
import type { SiteSource } from '../site/revision.ts';
import { version } from '../version.ts';
import type { Address } from '../wiring/agent-options.ts';
import {
  type DemoMark,
  demoFolderState,
  judgedTo,
  makeDemoFolder,
  readDemoMark,
} from '../wiring/demo-folder.ts';
import { dataOption } from './data-option.ts';
import type { CliParts } from './parts.ts';
import { httpOption, mqttOption } from './run.ts';
import { Stopping } from './stopping.ts';

interface DemoFlags {
  readonly site: string;
  readonly data: string;
  readonly http: Address;
  readonly mqtt: Address;
  readonly speed: TimesFaster;
  readonly seed?: number;
  readonly history: boolean;
}

const seedDefault = 1;
const speedMax = 600;
/** Beside package.json, from source, build and image alike. */
const demoSite = join(
  dirname(findPackageJSON(import.meta.url) ?? '.'),
  'docs/examples/demo-works/site.yaml',
);

export function demoCommand(program: Command, parts: CliParts): void {
  program
    .command('demo')
    .description('run the agent with an invented line that publishes to it')
    .option('--site <file>', 'site file of the demo line', demoSite)
    .addOption(dataOption('where everything is kept').default('data/demo'))
    .addOption(httpOption('where the page answers'))
    .addOption(mqttOption())
    .option('--speed <n>', 'how many times faster than real time it all goes', speedArgument, 1)
    .option(
      '--seed <n>',
      'a whole number; another one gives another course of faults',
      seedArgument,
    )
    .option('--no-history', 'begin without the week of made-up history')
    .action(async (flags: DemoFlags) => {
      const source = await parts.siteOrExit(flags.site);
      if (source !== null) await demo(source, flags, parts.print);
    });
}

async function demo(
  source: SiteSource,
  flags: DemoFlags,
  print: (line: string) => void,
): Promise<void> {
  const log = pino({ base: null, timestamp: pino.stdTimeFunctions.isoTime }, pino.destination(2));
  const stop = new Stopping();
  const warn = (facts: object, message: string): void => log.warn(facts, message);
  const { folder, mark, showAtMs } = await folderOf(source, flags, stop, log);
  if (mark === null) return;
  const clock = demoClock(folder, flags.speed);
  const { http, mqtt, speed } = flags;
  let secrets: Record<Gateway, string>;
  const admit = async (): Promise<void> => {
    secrets = await admitGateways(folder);
  };
  const agent = await startAgent({ source, folder, http, mqtt, mode: 'wall', log, clock, admit });
  try {
    const beginsAtMs = showAtMs ?? Math.floor(clock.wallMs() / 1_000) * 1_000;
    const plant = new Plant(mark.seed, beginsAtMs, -preRollMin * 60, theShow(mark.seed));
    const nowMs = (): number => clock.wallMs();
    const line = await runLine({
      url: agent.mqtt,
      secrets: secrets!,
      plant,
      showAtMs: beginsAtMs,
      nowMs,
      speed,
      warn,
    });
    print(`ready  page ${agent.page}  mqtt ${agent.mqtt}  data ${agent.folder}`);
    await stop.asked;
    await line.stop();
  } finally {
    await agent.stop();
  }
}

interface DemoFolder {
  readonly folder: string;
  readonly mark: DemoMark | null;
  /** Where the show begins; null where the line begins it anew. */
  readonly showAtMs: number | null;
}

async function folderOf(
  source: SiteSource,
  flags: DemoFlags,
  stop: Stopping,
  log: Logger,
): Promise<DemoFolder> {
  const folder = flags.data;
  if (demoFolderState(folder) === 'found') {
    const found = readDemoMark(folder);
    const mark = { ...found, seed: flags.seed ?? found.seed };
    return { folder, mark, showAtMs: null };
  }
  mkdirSync(dirname(folder), { recursive: true });
  const showAtMs = Math.floor(Date.now() / 1_000) * 1_000;
  if (flags.history) log.info('making a week of history of the demo line, once');
  const mark = await makeDemoFolder({
    folder,
    source,
    version,
    seed: flags.seed ?? seedDefault,
    showAtMs,
    untilMs: () => Date.now(),
    stopped: () => stop.isAsked,
    history: flags.history,
    warn: (facts, message) => log.warn(facts, message),
  });
  if (mark?.history) log.info(mark.history, 'the history is made');
  return { folder, mark, showAtMs: flags.history ? showAtMs : null };
}

/**
 * At its own speed: the system's clock. Faster, a clock that begins where the folder ends, or now,
 * and runs ahead; a later start goes on from there, since engine time never goes back.
 */
function demoClock(folder: string, speed: TimesFaster): ClockSource {
  const realMs = Date.now();
  const beginMs = Math.max(realMs, judgedTo(folder) ?? 0);
  if (speed === 1 && beginMs === realMs) return systemClock;
  const beganMs = performance.now();
  const ranMs = (): number => (performance.now() - beganMs) * speed;
  return { wallMs: () => Math.floor(beginMs + ranMs()), monotonicMs: ranMs };
}

/**
 * Each gateway gets a new secret with every start; it is nowhere but in this process. Only who holds
 * the folder may do this: the gateways of a demo that runs would be turned away.
 */
async function admitGateways(folder: string): Promise<Record<Gateway, string>> {
  const made = await Promise.all(
    gateways.map(async (user) => {
      const secret = makeSecret();
      return { user, secret, hash: await hashSecret(secret) };
    }),
  );
  await changeDevices(join(folder, devicesFileName), (devices) => [
    ...devices.filter((device) => !made.some(({ user }) => user === device.user)),
    ...made.map(({ user, hash }) => ({ user, hash, publish: [...filtersOf[user]], read: [] })),
  ]);
  return Object.fromEntries(made.map(({ user, secret }) => [user, secret])) as Record<
    Gateway,
    string
  >;
}

function speedArgument(text: string): number {
  const speed = Number(text);
  if (!(speed > 0 && speed <= speedMax))
    throw new InvalidArgumentError(`write a number above 0, up to ${speedMax}.`);
  return speed;
}

function seedArgument(text: string): number {
  const seed = Number(text);
  if (!Number.isInteger(seed) || seed < 0 || seed > 0x7fffffff)
    throw new InvalidArgumentError('write a whole number from 0 to 2147483647.');
  return seed;
}
