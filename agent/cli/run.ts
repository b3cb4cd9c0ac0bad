/**
 * `forebond run --site FILE`: the agent, until it is asked to stop.
 *
 * Prints `ready  page <url>  mqtt <url>  data <folder>` once it takes messages. SIGINT and SIGTERM
 * stop it cleanly: what was taken is judged, committed and acknowledged.
 */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { type Logger, pino } from 'pino';
import { startAgent } from '../compose.ts';
import { AgentError, FileError } from '../errors.ts';
import { readSite } from '../site/read-site.ts';
import type { SiteSource } from '../site/revision.ts';
import type { Address, Agent } from '../wiring/agent-options.ts';
import { checkedNames } from '../wiring/house.ts';
import { faultWords } from '../wiring/site-desk.ts';
import { problemLine } from './check.ts';
import { dataOption } from './data-option.ts';
import type { CliParts } from './parts.ts';
import { type SiteToRun, siteToRun } from './site-to-run.ts';
import { Stopping } from './stopping.ts';
import { isSupervised, supervise } from './supervise.ts';

interface RunFlags {
  readonly site: string;
  readonly data: string;
  readonly http: Address;
  readonly mqtt: Address;
  readonly clock: 'wall' | 'samples';
  readonly spaceGb?: number;
  readonly people?: boolean;
  readonly setupFromAnywhere?: boolean;
  readonly name: readonly string[];
  readonly tlsCert?: string;
  readonly tlsKey?: string;
}

export function runCommand(program: Command, parts: CliParts): void {
  program
    .command('run')
    .description('run the agent on a site')
    .requiredOption('--site <file>', 'site file')
    .addOption(dataOption('where everything is kept').default('data'))
    .addOption(httpOption('where the HTTP interface answers'))
    .addOption(mqttOption())
    .option(
      '--clock <wall|samples>',
      'what time the rules go by: wall, the computer’s clock; samples, the times in the samples',
      clockArgument,
      'wall',
    )
    .option(
      '--space-gb <n>',
      'keep the store within so many GB; the oldest samples go first',
      spaceArgument,
    )
    .option('--people', 'ask who is there; the first start prints a link for an administrator')
    .option('--setup-from-anywhere', 'let that link be used from other machines too')
    .option(
      '--name <host...>',
      'names under which others reach this machine; the first is in links',
      [],
    )
    .option('--tls-cert <file>', 'certificate of the page, in PEM, with those above it')
    .option('--tls-key <file>', 'its key, in PEM')
    .action(async (flags: RunFlags, command: Command) => {
      if ((flags.tlsCert === undefined) !== (flags.tlsKey === undefined))
        command.error('error: --tls-cert and --tls-key belong together');
      const found = await siteToRun(flags.site, flags.data, parts);
      if (found === null) return;
      const { source } = found;
      if (flags.clock === 'samples') needOwnTimes(source, flags.site);
      if (source.extensions !== undefined && !isSupervised()) {
        parts.setExitCode(await supervise());
        return;
      }
      await run(found, flags, parts);
    });
}

async function run(
  { source, refused }: SiteToRun,
  flags: RunFlags,
  { print, complain }: CliParts,
): Promise<void> {
  const log = pino({ base: null, timestamp: pino.stdTimeFunctions.isoTime }, pino.destination(2));
  if (refused !== null) {
    refused.lines.forEach(complain);
    log.error({ revision: refused.revision }, faultWords(refused));
  }
  const { asked } = new Stopping();
  const agent = await startAgent({
    source,
    folder: flags.data,
    http: flags.http,
    mqtt: flags.mqtt,
    mode: flags.clock,
    log,
    siteFile: { file: flags.site, read: readSite, line: problemLine, refused },
    house: {
      asked: flags.people === true,
      setupFromAnywhere: flags.setupFromAnywhere === true,
      names: checkedNames(flags.name),
      certificate: certificateOf(flags),
    },
    ...(flags.spaceGb === undefined ? {} : { spaceBytes: flags.spaceGb * 1e9 }),
  });
  print(`ready  page ${agent.page}  mqtt ${agent.mqtt}  data ${agent.folder}`);
  if (agent.setup !== null)
    print(`first administrator  ${agent.setup}  (good once, for 15 min; keep it to yourself)`);
  if (agent.fingerprint !== null) print(`certificate fingerprint (SHA-256)  ${agent.fingerprint}`);
  if (agent.tellingNote !== null) print(`telling  ${agent.tellingNote}`);
  process.on('SIGHUP', () => void reload(agent, log));
  await asked;
  await agent.stop();
}

const certificateOf = ({ tlsCert, tlsKey }: RunFlags) =>
  tlsCert === undefined || tlsKey === undefined ? null : { cert: tlsCert, key: tlsKey };

/** Whoever may signal this process asked for it on the box itself. */
const atTheBox = 'box';

async function reload(agent: Agent, log: Logger): Promise<void> {
  try {
    const changes = await agent.reload(atTheBox);
    log.info({ changes }, 'the site file was loaded');
  } catch (error) {
    const problems = error instanceof FileError ? error.problems : [];
    log.error({ err: error, problems }, 'the site file was not loaded');
  }
}

const addressOption = (flag: string, words: string, variable: string, value: string): Option =>
  new Option(flag, words).env(variable).argParser(address).default(address(value), value);

export const httpOption = (words: string): Option =>
  addressOption('--http <host:port>', words, 'FOREBOND_HTTP', '127.0.0.1:8620');
export const mqttOption = (): Option =>
  addressOption('--mqtt <host:port>', 'where MQTT answers', 'FOREBOND_MQTT', '127.0.0.1:1883');

/** By the samples' clock a signal without a time of its own would have none. */
function needOwnTimes(source: SiteSource, file: string): void {
  for (const [line, stations] of Object.entries(source.site.lines))
    for (const [station, { signals }] of Object.entries(stations))
      for (const [name, { payload, by_hand }] of Object.entries(signals ?? {}))
        if (by_hand !== true && (payload?.kind !== 'json' || payload.time === undefined))
          throw new AgentError('RUN_NEEDS_OWN_TIMES', {
            path: file,
            signal: `${line}/${station}/${name}`,
          });
}

/** `HOST:PORT`; an IPv6 address stands in brackets. */
export function address(text: string): Address {
  const found = /^(?:\[([^\]]+)\]|([^:]+)):(\d{1,5})$/.exec(text);
  const port = Number(found?.[3]);
  if (found === null || port > 65_535)
    throw new InvalidArgumentError('write HOST:PORT, as 127.0.0.1:8620 or [::1]:8620.');
  return { host: found[1] ?? found[2]!, port };
}

function clockArgument(text: string): 'wall' | 'samples' {
  if (text !== 'wall' && text !== 'samples')
    throw new InvalidArgumentError('write wall or samples.');
  return text;
}

function spaceArgument(text: string): number {
  const gb = Number(text);
  if (!(gb > 0)) throw new InvalidArgumentError('write a number of GB above 0.');
  return gb;
}
