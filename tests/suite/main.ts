/**
 * Runs the suite: `test` all of it, `check` what takes less than a minute.
 *
 * Steps: types, lint and fences, tests. All run even when one fails, so that one run shows
 * everything; the closing line counts them and the exit code is 1 if any failed.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureDebianPackages, thisMachine } from './debian.ts';
import { add, closingLine, oneStep, type Tally, tallyOfTests } from './tally.ts';

const top = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const reportPath = join(top, 'node_modules', '.cache', 'forebond', 'vitest.json');

/** What `check` leaves out: real peers, many processes, long runs. */
const slow = [
  'tests/wire/**',
  'tests/faults/**',
  'tests/simulation/**',
  'tests/browser/**',
  'tests/docs/commands.test.ts',
  'tests/agent/store/failing-disk.test.ts',
  'tests/agent/store/kill.test.ts',
];

/** Runs a program of node_modules with this Node; its output is the person's. */
function run(title: string, program: string, line: readonly string[]): number | null {
  console.log(`\n— ${title}`);
  const started = performance.now();
  const done = spawnSync(process.execPath, [join(top, 'node_modules', program), ...line], {
    cwd: top,
    stdio: 'inherit',
  });
  if (done.error) console.log(`${program} could not be started: ${done.error.message}`);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(`${title}: ${done.status === 0 ? 'passed' : 'failed'} in ${seconds} s`);
  return done.status;
}

function runTests(leaveOut: readonly string[], filters: readonly string[]): Tally {
  mkdirSync(dirname(reportPath), { recursive: true });
  rmSync(reportPath, { force: true });
  const exitCode = run('tests', 'vitest/vitest.mjs', [
    'run',
    ...filters,
    ...leaveOut.flatMap((pattern) => ['--exclude', pattern]),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${reportPath}`,
  ]);
  const report = existsSync(reportPath) ? readFileSync(reportPath, 'utf8') : null;
  return tallyOfTests(report, exitCode);
}

const [mode, ...filters] = process.argv.slice(2);
if (mode !== 'test' && mode !== 'check') {
  console.error('usage: node tests/suite/main.ts test|check [vitest filters]');
  process.exit(2);
}
if (mode === 'test') ensureDebianPackages(thisMachine);

const types = run('types', 'typescript/bin/tsc', ['-p', 'tsconfig.json']);
const pageTypes = run('types of the page', 'typescript/bin/tsc', [
  '-p',
  'dashboards/tsconfig.json',
]);
const lint = run('lint, format and fences', '@biomejs/biome/bin/biome', [
  'check',
  '--error-on-warnings',
]);
const tally = [
  oneStep(types === 0),
  oneStep(pageTypes === 0),
  oneStep(lint === 0),
  runTests(mode === 'check' ? slow : [], filters),
].reduce(add);
console.log(`\n${closingLine(tally)}`);
process.exit(tally.failedCount === 0 ? 0 : 1);
