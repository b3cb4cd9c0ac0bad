/**
 * The command line: one file a command, and here what they share.
 *
 * Exit codes: 0 done, 1 the input or the data is at fault (said in one line each), 2 the command
 * line is at fault, 70 an internal fault.
 */
import { Command, CommanderError } from 'commander';
import { AgentError } from '../errors.ts';
import { checkSite } from '../site/check-site.ts';
import { readSite } from '../site/read-site.ts';
import type { SiteSource } from '../site/revision.ts';
import { archiveLedger, verifyArchive } from '../store/archive.ts';
import { verifyFolder } from '../store/verify-folder.ts';
import { version } from '../version.ts';
import { doorError } from '../wiring/door-words.ts';
import { checkCommand, problemLines } from './check.ts';
import { demoCommand } from './demo.ts';
import { deviceCommand } from './device.ts';
import { exportCommand } from './export.ts';
import { ledgerCommand } from './ledger.ts';
import { listenCommand } from './listen.ts';
import type { CliParts } from './parts.ts';
import { replayCommand } from './replay.ts';
import { runCommand } from './run.ts';
import { tokenCommand } from './token.ts';
import { userCommand } from './user.ts';

const print = (line: string): void => {
  process.stdout.write(`${line}\n`);
};
const complain = (line: string): void => {
  process.stderr.write(`${line}\n`);
};
const setExitCode = (code: number): void => {
  process.exitCode = code;
};

async function siteOrExit(file: string): Promise<SiteSource | null> {
  const reading = await readSite(file);
  if (reading.ok) return reading.source;
  problemLines(reading).forEach(complain);
  setExitCode(1);
  return null;
}

/** Standard input as text, up to so many bytes; what is longer is cut and so refused. */
async function readInput(bytesMax: number): Promise<string> {
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of process.stdin) {
    chunks.push(chunk);
    bytes += chunk.length;
    if (bytes > bytesMax) break;
  }
  return Buffer.concat(chunks).subarray(0, bytesMax).toString('utf8');
}

const defaultFolder = 'data';

// Set to nothing, as in a file of a container's settings, is not set.
for (const name of ['FOREBOND_DATA', 'FOREBOND_HTTP', 'FOREBOND_MQTT'])
  if (process.env[name] === '') delete process.env[name];

function commands(): Command {
  const program = new Command('forebond')
    .description('watches lines that bond rubber to metal, and tells what goes wrong')
    .version(version)
    .exitOverride();
  const parts: CliParts = { print, complain, setExitCode, siteOrExit };
  runCommand(program, parts);
  demoCommand(program, parts);
  listenCommand(program, parts);
  checkCommand(program, { readSite: checkSite, print, setExitCode });
  replayCommand(program, parts);
  exportCommand(program, { defaultFolder, setExitCode });
  ledgerCommand(program, {
    verify: verifyFolder,
    archive: (folder, before, to) => archiveLedger(folder, before, to, Date.now()),
    verifyArchive,
    defaultFolder,
    print,
    setExitCode,
  });
  deviceCommand(program, { print, complain, setExitCode, readInput });
  const people = { print, readInput, nowMs: () => Date.now() };
  userCommand(program, people);
  tokenCommand(program, people);
  return program;
}

/** How a failure ends the process: its code, and the line for people. */
function ending(error: unknown): { readonly code: number; readonly line: string | null } {
  // commander has printed its own words already.
  if (error instanceof CommanderError) return { code: error.exitCode === 0 ? 0 : 2, line: null };
  const told = doorError(error);
  if (told instanceof AgentError) return { code: 1, line: `${told.message} ${told.fix}` };
  return {
    code: 70,
    line: error instanceof Error ? (error.stack ?? error.message) : String(error),
  };
}

// Whoever read the output has gone, as `| head` does: there is nobody left to tell.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

try {
  await commands().parseAsync();
} catch (error) {
  const { code, line } = ending(error);
  if (line !== null) complain(line);
  setExitCode(code);
}
