import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readSource, readText, top, walk } from '../tidy/source.ts';

// start.js in a project of its own: a lock file of one package, a Node that is a link to this one,
// and a command that says what it was given.

let folder: string;
const inside = (...parts: string[]): string => join(folder, ...parts);
const lock = (version: string) =>
  JSON.stringify({
    packages: {
      '': {},
      'node_modules/a': { version, integrity: 'x' },
      'node_modules/other-machine': { version: '1.0.0', integrity: 'y', optional: true },
    },
  });

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'forebond-start-'));
  copyFileSync(join(top, 'start.js'), inside('start.js'));
  for (const each of ['node_modules/node/bin', 'agent/cli']) {
    mkdirSync(inside(each), { recursive: true });
  }
  // What the real one is, in a line: runs the file it is given, whatever its ending.
  writeFileSync(
    inside('node_modules/node/bin/node'),
    `#!/bin/sh\nexec "${process.execPath}" "$@"\n`,
    {
      mode: 0o755,
    },
  );
  writeFileSync(inside('package.json'), '{ "type": "module" }');
  writeFileSync(inside('package-lock.json'), lock('1.0.0'));
  writeFileSync(inside('node_modules/.package-lock.json'), lock('1.0.0'));
  writeFileSync(inside('agent/cli/main.ts'), 'console.log(JSON.stringify(process.argv.slice(2)));');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** An npm that writes down what it was asked and ends with `code`. */
function fakeNpm(code: number): Record<string, string> {
  const path = inside('npm-cli.js');
  const script = `import { writeFileSync } from 'node:fs';
writeFileSync(${JSON.stringify(inside('asked'))}, process.argv.slice(2).join(' '));
process.exit(${code});`;
  writeFileSync(path, script);
  return { npm_execpath: path };
}

const run = (line: readonly string[], environment: Record<string, string> = {}) =>
  spawnSync(process.execPath, [inside('start.js'), ...line], {
    encoding: 'utf8',
    cwd: folder,
    env: { ...process.env, ...environment },
  });

describe('start.js', () => {
  test('hands the arguments over', () => {
    const done = run(['forebond', 'check', 'a b.yaml'], fakeNpm(1));
    expect(done.stderr).toBe('');
    expect(done.stdout).toBe('["check","a b.yaml"]\n');
    expect(done.status).toBe(0);
  });
  test('passes the exit code on', () => {
    writeFileSync(inside('agent/cli/main.ts'), 'process.exit(3);');
    expect(run(['forebond']).status).toBe(3);
  });
  test('an unknown word gets the usage and exit code 2', () => {
    const done = run(['sing']);
    expect(done.stderr).toContain('usage: node start.js start|test|');
    expect(done.status).toBe(2);
  });
  test('a missing command is said in words', () => {
    const done = run(['bench']);
    expect(done.stderr).toContain('tests/bench/main.ts is missing');
    expect(done.status).toBe(70);
  });
  test.each(['SIGTERM', 'SIGINT', 'SIGHUP'] as const)(
    '%s reaches what it started',
    async (signal) => {
      const script = `process.on('${signal}', () => { console.log('bye'); process.exit(4); });
console.log('here'); setTimeout(() => process.exit(5), 20_000);`;
      writeFileSync(inside('agent/cli/main.ts'), script);
      const child = spawn(process.execPath, [inside('start.js'), 'forebond'], {
        stdio: ['ignore', 'pipe', 'inherit'],
      });
      let said = '';
      child.stdout.on('data', (piece: Buffer) => {
        said += piece.toString();
        if (said === 'here\n') child.kill(signal);
      });
      const [code] = await once(child, 'close');
      expect([said, code]).toEqual(['here\nbye\n', 4]);
    },
  );
});

describe('start.js and the packages', () => {
  test('complete packages are not installed again', () => {
    run(['forebond'], fakeNpm(1));
    expect(() => readFileSync(inside('asked'))).toThrow('ENOENT');
  });
  test('another version in the lock file brings npm ci', () => {
    writeFileSync(inside('package-lock.json'), lock('1.0.1'));
    const done = run(['forebond', 'x'], fakeNpm(0));
    expect(readFileSync(inside('asked'), 'utf8')).toMatch(/^ci --include=dev/);
    expect(done.stdout).toBe('["x"]\n');
  });
  test.each([
    ['half an installation', () => rmSync(inside('node_modules/.package-lock.json'))],
    ['a broken one', () => writeFileSync(inside('node_modules/.package-lock.json'), '{"pack')],
    ['one without Node', () => rmSync(inside('node_modules/node'), { recursive: true })],
  ])('%s brings npm ci', (_, harm) => {
    harm();
    run(['forebond'], fakeNpm(0));
    expect(readFileSync(inside('asked'), 'utf8')).toMatch(/^ci /);
  });
  test('npm is asked for errors alone: an old Node that only installs is no news', () => {
    writeFileSync(inside('package-lock.json'), lock('2.0.0'));
    run(['forebond'], fakeNpm(1));
    expect(readFileSync(inside('asked'), 'utf8')).toContain('--loglevel=error');
  });
  test('an npm that fails is said in words, with exit code 70', () => {
    rmSync(inside('node_modules/.package-lock.json'));
    const done = run(['forebond'], fakeNpm(1));
    expect(done.stderr).toContain('The packages could not be installed; npm says why above.');
    expect(done.status).toBe(70);
  });
  test('an npm that brings no Node is said in words', () => {
    rmSync(inside('node_modules/node'), { recursive: true });
    const done = run(['forebond'], fakeNpm(0));
    expect(done.stderr).toContain('allow scripts');
    expect(done.status).toBe(70);
  });
});

test('an old Node can parse start.js: nothing younger than ES2018', () => {
  const younger: string[] = [];
  walk(readSource('start.js', readText('start.js')).program, (node) => {
    const operator = String(node.operator ?? '');
    const isYounger =
      /^(ChainExpression|AwaitExpression|PrivateIdentifier|StaticBlock|PropertyDefinition)$/.test(
        node.type,
      ) ||
      ['??', '??=', '||=', '&&='].includes(operator) ||
      node.bigint !== undefined;
    if (isYounger) younger.push(`${node.type} ${operator}`);
  });
  expect(younger).toEqual([]);
});
