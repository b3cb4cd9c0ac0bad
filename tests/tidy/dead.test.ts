import { describe, expect, test } from 'vitest';
import { errorCatalogue } from '#agent/errors.ts';
import { limits } from '#agent/limits.ts';
import packageFile from '../../package.json' with { type: 'json' };
import { unreachedFiles, unsaidNames, unusedPackages } from './dead.ts';
import { readSource, say, sources } from './source.ts';

describe('nothing is left over', () => {
  test('every bound is held to somewhere', () => {
    const holding = sources.filter(({ path }) => !path.startsWith('agent/limits/'));
    expect(unsaidNames(Object.keys(limits), 'agent/limits.ts', holding).map(say)).toEqual([]);
  });
  test('every error is told somewhere', () => {
    const codes = Object.keys(errorCatalogue);
    const saying = sources.filter(({ path }) => !path.startsWith('agent/errors/'));
    expect(unsaidNames(codes, 'agent/errors.ts', saying).map(say)).toEqual([]);
  });
  test('every dependency is imported by what ships', () => {
    expect(unusedPackages(Object.keys(packageFile.dependencies), sources).map(say)).toEqual([]);
  });
  test('every file that ships is reached by another', () => {
    expect(unreachedFiles(sources).map(say)).toEqual([]);
  });
});

describe('what is left over is found', () => {
  const main = readSource(
    'agent/cli/main.ts',
    "import { open } from '../store/open.ts'; open(limits.aMs);",
  );
  const open = readSource(
    'agent/store/open.ts',
    "import yaml from 'yaml'; export const open = yaml;",
  );
  const old = readSource('agent/store/old.ts', 'export const aMsMax = 1;');
  const onlyTested = readSource(
    'tests/agent/old.test.ts',
    "import '../../agent/store/old.ts'; bMs;",
  );

  test('names', () => {
    const names = ['aMs', 'bMs', 'cMs'];
    const found = unsaidNames(names, 'agent/limits.ts', [main, open, old, onlyTested]);
    expect(found.map((each) => each.problem)).toEqual([
      '"bMs" is used nowhere.',
      '"cMs" is used nowhere.',
    ]);
  });
  test('packages', () => {
    const found = unusedPackages(['yaml', '@a/b'], [main, open, onlyTested]);
    expect(found.map((each) => each.problem)).toEqual([
      'nothing that ships imports the dependency @a/b.',
    ]);
  });
  test('files', () => {
    const found = unreachedFiles([main, open, old, onlyTested]);
    expect(found.map((each) => each.place)).toEqual(['agent/store/old.ts']);
  });
  test('formulas that no test holds to anything', () => {
    const held = readSource('rules/process/held.ts', 'export const x = 1;');
    const loose = readSource('rules/process/loose.ts', 'export const x = 1;');
    const its = readSource('tests/rules/process/held.test.ts', "import '#rules/process/held.ts';");
    const found = unreachedFiles([main, open, held, loose, its]);
    expect(found.map((each) => each.place)).toEqual(['rules/process/loose.ts']);
  });
});
