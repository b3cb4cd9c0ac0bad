/**
 * The whole agent with what only tests change: how often it seals, how large its reserve is.
 *
 * One argument, JSON: `{site, folder, sealEveryMs?, ballastBytes?}`. Prints the ready line.
 */
import { pino } from 'pino';
import { startAgent } from '#agent/compose.ts';
import { AgentError } from '#agent/errors.ts';
import { readSite } from '#agent/site/read-site.ts';

const given = JSON.parse(process.argv[2] ?? '{}') as {
  readonly site: string;
  readonly folder: string;
  readonly sealEveryMs?: number;
  readonly ballastBytes?: number;
};
const { site, ...tuned } = given;
const reading = await readSite(site);
if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
const nobody = { host: '127.0.0.1', port: 0 };
const asked = Promise.withResolvers<void>();
process.once('SIGTERM', asked.resolve);
try {
  const agent = await startAgent({
    ...tuned,
    source: reading.source,
    http: nobody,
    mqtt: nobody,
    mode: 'wall',
    log: pino({ base: null }, pino.destination(2)),
  });
  process.stdout.write(`ready  page ${agent.page}  mqtt ${agent.mqtt}  data ${agent.folder}\n`);
  await asked.promise;
  await agent.stop();
} catch (error) {
  if (!(error instanceof AgentError)) throw error;
  process.stderr.write(`${error.message} ${error.fix}\n`);
  process.exitCode = 1;
}
