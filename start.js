/**
 * The way in: `npm start`, `npm test`, `npm run check`, `npm run bench`, `npm run forebond -- …`.
 *
 * Plain JavaScript that an old Node can parse, since the Node on the machine may be older than
 * the one this project runs on. It makes sure that node_modules is what package-lock.json says,
 * then hands over to the Node 24 found there, running the TypeScript sources as they are. The page
 * alone needs building; it is built where its sources are no longer those it was built from.
 *
 * Always true: signals reach the process it started, its exit code is passed on, and nothing
 * is left running when it ends.
 */
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const top = dirname(fileURLToPath(import.meta.url));
const packages = join(top, 'node_modules');
const node = join(packages, 'node', 'bin', process.platform === 'win32' ? 'node.exe' : 'node');

/** What each word runs: a source file, and the arguments that come before the caller's own; `page` only builds. */
const targets = {
  start: { file: 'agent/cli/main.ts', before: ['demo'] },
  test: { file: 'tests/suite/main.ts', before: ['test'] },
  check: { file: 'tests/suite/main.ts', before: ['check'] },
  bench: { file: 'tests/bench/main.ts', before: [] },
  docs: { file: 'tests/docs/write.ts', before: [] },
  forebond: { file: 'agent/cli/main.ts', before: [] },
  page: { file: 'dashboards/vite.config.ts', before: [] },
};

/** What the page is built from, and where its fingerprint is kept. */
const pageSources = ['dashboards', 'rules', 'package-lock.json'];
const page = join(top, 'dist', 'dashboards');
const pageMark = join(top, 'dist', 'dashboards.built-from');

function fail(code, text) {
  process.stderr.write(`${text}\n`);
  process.exit(code);
}

function readLock(path) {
  return JSON.parse(readFileSync(path, 'utf8')).packages;
}

/**
 * npm writes node_modules/.package-lock.json last, when everything is in place. So the folder is
 * complete when that file holds every package of package-lock.json in the same version;
 * only optional ones (builds for other machines) may be missing.
 */
function packagesAreComplete() {
  if (!existsSync(node)) return false;
  try {
    const wanted = readLock(join(top, 'package-lock.json'));
    const found = readLock(join(packages, '.package-lock.json'));
    return Object.keys(wanted).every((place) => {
      if (place === '') return true;
      const want = wanted[place];
      const have = found[place];
      if (have === undefined) return want.optional === true;
      return have.version === want.version && have.integrity === want.integrity;
    });
  } catch (_unreadable) {
    return false; // no such file, or half of one: installing mends both
  }
}

/** Installs with the npm that started us, or the one on the PATH. Its words go to stderr. */
function installPackages() {
  process.stderr.write('Installing packages (npm ci); this takes about half a minute.\n');
  const npm = /npm-cli\.js$/.test(process.env.npm_execpath || '') && process.env.npm_execpath;
  // Its warnings would be about the old Node that only installs, and about packages of packages.
  const line = ['ci', '--include=dev', '--no-fund', '--no-audit', '--loglevel=error'];
  const options = { cwd: top, stdio: ['ignore', 2, 2], shell: false };
  const done = npm
    ? spawnSync(process.execPath, [npm].concat(line), options)
    : spawnSync('npm', line, Object.assign({}, options, { shell: process.platform === 'win32' }));
  if (done.error) {
    fail(70, `npm could not be started (${done.error.message}). Install npm, then try again.`);
  }
  if (done.status !== 0) {
    fail(
      70,
      'The packages could not be installed; npm says why above. Check that the package registry ' +
        'can be reached and that the disk has 500 MB free, then try again.',
    );
  }
  if (!existsSync(node)) {
    fail(
      70,
      `npm ci ended well but ${node} is missing. The package "node" brings it with an install ` +
        'script: allow scripts (npm config set ignore-scripts false), then run npm ci again.',
    );
  }
}

function filesOf(place) {
  const path = join(top, place);
  if (!existsSync(path)) return [];
  if (place.endsWith('.json')) return [place];
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath || entry.path, entry.name).slice(top.length + 1));
}

/** One hash over the names and contents of all sources of the page. */
function pageFingerprint() {
  const hash = createHash('sha256');
  for (const file of pageSources.flatMap(filesOf).sort()) {
    hash
      .update(`${file}\0`)
      .update(readFileSync(join(top, file)))
      .update('\0');
  }
  return hash.digest('hex');
}

function pageIsFresh(fingerprint) {
  if (!existsSync(join(page, 'index.html')) || !existsSync(pageMark)) return false;
  return readFileSync(pageMark, 'utf8') === fingerprint;
}

/** Builds beside the old page and puts it in its place whole, so that nobody reads half of one. */
function buildPageIfStale() {
  if (!existsSync(join(top, 'dashboards'))) return;
  const fingerprint = pageFingerprint();
  if (pageIsFresh(fingerprint)) return;
  process.stderr.write('Building the page.\n');
  const fresh = `${page}-${process.pid}`;
  const vite = join(packages, 'vite', 'bin', 'vite.js');
  const line = [vite, 'build', 'dashboards', '--logLevel', 'warn', '--outDir', fresh];
  const done = spawnSync(node, line, { cwd: top, stdio: ['ignore', 2, 2] });
  if (done.status !== 0) {
    rmSync(fresh, { recursive: true, force: true });
    fail(70, 'The page could not be built; why stands above. npm run check tells more.');
  }
  rmSync(page, { recursive: true, force: true });
  try {
    renameSync(fresh, page);
  } catch (error) {
    // Another start was quicker and has put the same page there.
    if (!existsSync(join(page, 'index.html'))) throw error;
    rmSync(fresh, { recursive: true, force: true });
  }
  writeFileSync(pageMark, fingerprint);
}

/** Does this command line serve the page, or test it? */
const needsPage = (word, rest) =>
  word === 'start' ||
  word === 'test' ||
  word === 'page' ||
  (word === 'forebond' && (rest[0] === 'run' || rest[0] === 'demo'));

function handOver(target, rest) {
  const line = ['--conditions=forebond-source', join(top, target.file)];
  const child = spawn(node, line.concat(target.before, rest), {
    stdio: 'inherit',
    env: Object.assign(
      { NODE_COMPILE_CACHE: join(packages, '.cache', 'forebond', 'compiled') },
      process.env,
      {
        PATH:
          join(packages, '.bin') + (process.platform === 'win32' ? ';' : ':') + process.env.PATH,
      },
    ),
  });
  // A terminal sends Ctrl-C to the whole group, the child too; sent again, it would count twice.
  const passed = [
    ['SIGINT', () => process.stdin.isTTY || child.kill('SIGINT')],
    ['SIGTERM', () => child.kill('SIGTERM')],
    ['SIGHUP', () => child.kill('SIGHUP')],
  ];
  for (const [name, listener] of passed) process.on(name, listener);
  child.on('error', (error) => {
    fail(70, `${node} could not be started (${error.message}). Remove node_modules and try again.`);
  });
  child.on('exit', (code, signal) => {
    // A rule of the site's own never came back and ended the agent: without it, it goes on.
    if (signal === 'SIGALRM') {
      for (const [name, listener] of passed) process.off(name, listener);
      handOver(target, rest);
      return;
    }
    const numbers = { SIGHUP: 1, SIGINT: 2, SIGKILL: 9, SIGTERM: 15 };
    process.exit(code === null ? 128 + (numbers[signal] || 0) : code);
  });
}

const word = process.argv[2];
const target = targets[word];
if (target === undefined) {
  fail(2, `usage: node start.js ${Object.keys(targets).join('|')} [arguments]`);
}
if (!packagesAreComplete()) installPackages();
if (!existsSync(join(top, target.file))) {
  fail(70, `${target.file} is missing, so "${word}" cannot run. Restore it from git.`);
}
const rest = process.argv.slice(3);
if (needsPage(word, rest)) buildPageIfStale();
if (word !== 'page') handOver(target, rest);
