import { execFileSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { anyTypes, loosenedTests, silencedChecks, unfinishedWork } from './loose.ts';
import { barrels, drawerNames, unitlessLimits, unitlessNumbers } from './names.ts';
import { namedPlaces, strayEntries } from './places.ts';
import { impurities } from './purity.ts';
import { longFiles, longFunctions, longLines } from './sizes.ts';
import { type Problem, projectFiles, readSource, readText, say, sources, top } from './source.ts';

const inSources = (rule: (source: (typeof sources)[number]) => Problem[]): string[] =>
  sources.flatMap(rule).map(say);

describe('the house is tidy', () => {
  test('sources were found at all', () => expect(sources.length).toBeGreaterThan(20));
  test('no file says two things', () => expect(inSources(longFiles)).toEqual([]));
  test('no function outgrows a screen', () => expect(inSources(longFunctions)).toEqual([]));
  test('no line is too long', () => expect(inSources(longLines)).toEqual([]));
  test('no any', () => expect(inSources(anyTypes)).toEqual([]));
  test('nothing marked as unfinished', () => expect(inSources(unfinishedWork)).toEqual([]));
  test('no check silenced without a reason', () => expect(inSources(silencedChecks)).toEqual([]));
  test('no test loosened without a reason', () => expect(inSources(loosenedTests)).toEqual([]));
  test('the core is pure', () => expect(inSources(impurities)).toEqual([]));
  test('numbers keep their units', () => expect(inSources(unitlessNumbers)).toEqual([]));
  test('bounds say what they count', () => {
    expect(unitlessLimits(Object.keys(limits)).map(say)).toEqual([]);
  });
  test('no drawers', () => expect(projectFiles.flatMap(drawerNames).map(say)).toEqual([]));
  test('no barrels', () => expect(projectFiles.flatMap(barrels).map(say)).toEqual([]));
  test('the top level is on its list', () => {
    expect(strayEntries(projectFiles).map(say)).toEqual([]);
  });
  test('a folder of a user’s own in the clone, and its data, are none of the project’s', () => {
    const theirs = ['site/site.yaml', 'site/rules/own.ts', 'data/forebond.db'];
    const ignored = execFileSync('git', ['check-ignore', ...theirs], {
      encoding: 'utf8',
      cwd: top,
    });
    expect(ignored.trim().split('\n')).toEqual(theirs);
    expect(projectFiles.filter((path) => /^(site|data)\//.test(path))).toEqual([]);
  });
  test('no machine and no registry is named', () => {
    const texts = projectFiles.filter((path) => !/\.(png|ico|gz|parquet|db)$/.test(path));
    expect(texts.flatMap((path) => namedPlaces(path, readText(path))).map(say)).toEqual([]);
  });
});

/** Each rule meets a sample that breaks it, and one that looks like it and does not. */
describe('every rule can fail', () => {
  const read = (text: string, path = 'agent/store/seal.ts') => readSource(path, text);
  const lines = (count: number, line: string) => `${Array(count).fill(line).join('\n')}\n`;
  const body = (count: number) => `const f = () => {\n${lines(count, '  g();')}};`;

  test('a file of 301 lines, of 401 where it lists cases', () => {
    expect(longFiles(read(lines(301, 'f();')))).toHaveLength(1);
    expect(longFiles(read(lines(300, 'f();')))).toEqual([]);
    expect(longFiles(read(lines(401, 'f();'), 'tests/a.test.ts'))).toHaveLength(1);
    expect(longFiles(read(lines(400, 'f();'), 'tests/a.test.ts'))).toEqual([]);
  });
  test('a function of 61 lines, and not what holds short ones', () => {
    expect(longFunctions(read(body(59)))).toHaveLength(1);
    expect(longFunctions(read(body(58)))).toEqual([]);
    const factory = `function make() {\n${lines(2, body(40).replace('f', 'a'))}}`;
    expect(longFunctions(read(factory.replace('const a', 'const b')))).toEqual([]);
    expect(longFunctions(read(`class A {\n  m() {\n${lines(60, '  g();')}}}`))).toHaveLength(1);
  });
  test('a line of 121 characters, unless it cannot be broken', () => {
    expect(longLines(read(`const a = f(${'b, '.repeat(40)}b);`))).toHaveLength(1);
    expect(longLines(read(`const a = '${'long '.repeat(30)}';`))).toEqual([]);
  });
  test('any', () => {
    expect(anyTypes(read('const a = b as any;'))).toHaveLength(1);
    expect(anyTypes(read('const any = 1;'))).toEqual([]);
  });
  test('unfinished work', () => {
    expect(unfinishedWork(read(`// ${'TO'}DO: later`))).toHaveLength(1);
    expect(unfinishedWork(read('// all done'))).toEqual([]);
  });
  test('silenced checks', () => {
    expect(silencedChecks(read('// @ts-ignore because I say so'))).toHaveLength(1);
    expect(silencedChecks(read('// @ts-expect-error'))).toHaveLength(1);
    expect(silencedChecks(read('// @ts-expect-error a number on purpose'))).toEqual([]);
    expect(silencedChecks(read('// biome-ignore lint/a/b: why'))).toHaveLength(1);
    expect(silencedChecks(read('// biome-ignore lint/a/b: the port is fixed'))).toEqual([]);
  });
  test('loosened tests', () => {
    expect(loosenedTests(read("test.only('a', f);"))).toHaveLength(1);
    expect(loosenedTests(read("describe.skip('a', f);"))).toHaveLength(1);
    expect(loosenedTests(read("test.skipIf(x)('a', f);"))).toHaveLength(1);
    expect(loosenedTests(read("// needs a kernel module\ntest.skip('a', f);"))).toEqual([]);
    expect(loosenedTests(read('queue.skip(1);'))).toEqual([]);
  });
  test.each([
    'const a = Date.now();',
    'const a = new Date();',
    'const a = Math.random();',
    'console.log(1);',
    'setTimeout(f, 1);',
    'const a = globalThis.x;',
    'const a = { process };',
    'names.sort((a, b) => a.localeCompare(b));',
    'new Intl.NumberFormat(undefined, { style: "unit" });',
  ])('impure: %s', (text) => {
    expect(impurities(read(text, 'rules/engine.ts'))).toHaveLength(1);
    expect(impurities(read(text))).toEqual([]);
  });
  test('names that only look impure', () => {
    const text =
      'new Intl.NumberFormat("en-GB"); const a = new Date(at); rule.process(1); const b = { console: 1 };';
    expect(impurities(read(text, 'rules/engine.ts'))).toEqual([]);
  });
  test('numbers without a unit', () => {
    expect(unitlessNumbers(read('interface A { readonly onDelay: number }'))).toHaveLength(1);
    expect(unitlessNumbers(read('const f = (timeout: number) => timeout;'))).toHaveLength(1);
    expect(unitlessNumbers(read('interface A { onDelayMs: number; delay: string }'))).toEqual([]);
    expect(unitlessNumbers(read('interface A { coverage: number; value: number }'))).toEqual([]);
  });
  test('bounds without a unit', () => {
    expect(unitlessLimits(['payload', 'queueMax'])).toHaveLength(2);
    expect(unitlessLimits(['beatMs', 'payloadBytesMax', 'rulesMax'])).toEqual([]);
  });
  test('drawers and barrels', () => {
    const drawers = ['agent/utils.ts', 'rules/common/a.ts', 'tests/a/helper.test.ts', 'lib/a.ts'];
    expect(drawers.flatMap(drawerNames)).toHaveLength(4);
    expect(['agent/library.ts', 'rules/calibration.ts'].flatMap(drawerNames)).toEqual([]);
    expect(barrels('rules/index.ts')).toHaveLength(1);
    expect(barrels('rules/indexed.ts')).toEqual([]);
  });
  test('stray entries at the top', () => {
    expect(strayEntries(['notes.md', 'tools/a.ts', 'tools/b.ts', 'rules/a.ts'])).toHaveLength(2);
  });
  test('machines and registries', () => {
    const bad = [
      ['', 'work', 'main', 'x'].join('/'),
      `read ${['', 'tmp', 'brief'].join('/')}`,
      ['..', 'shared', 'x'].join('/'),
      ['registry', 'example', 'org'].join('.'),
      ['deb', 'example', 'org'].join('.'),
    ];
    expect(bad.flatMap((line) => namedPlaces('a.md', line))).toHaveLength(5);
    expect(namedPlaces('a.yml', `tmpfs: [/tmp]\nhttp://x.example/${'root'}/a`)).toEqual([]);
  });
});
