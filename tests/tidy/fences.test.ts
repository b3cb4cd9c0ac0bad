import { describe, expect, test } from 'vitest';
import packageFile from '../../package.json' with { type: 'json' };
import { brokenFences, importCircles, meaningOf, unshippedPackages } from './fences.ts';
import { readSource, say, sources } from './source.ts';

const shipped = Object.keys(packageFile.dependencies);

describe('the fences hold', () => {
  test('imports were found at all', () => {
    expect(sources.flatMap((source) => source.imports).length).toBeGreaterThan(30);
  });
  test('nothing imports over a fence', () => {
    expect(sources.flatMap(brokenFences).map(say)).toEqual([]);
  });
  test('what ships imports only what ships with it', () => {
    expect(sources.flatMap((source) => unshippedPackages(source, shipped)).map(say)).toEqual([]);
  });
  test('no imports run in a circle', () => {
    expect(importCircles(sources)).toEqual([]);
  });
});

describe('the fences can be broken', () => {
  /** [importing file, import statement] */
  const broken = [
    ['rules/engine.ts', "import { readFileSync } from 'node:fs';"],
    ['rules/engine.ts', "import { readFileSync } from 'fs';"],
    ['rules/engine.ts', "import { z } from 'zod';"],
    ['rules/engine.ts', "import type { Limits } from '../agent/limits.ts';"],
    ['rules/kinds/band.ts', "export { limits } from '../../agent/limits.ts';"],
    ['rules/kinds/band.ts', "const limits = await import('../../agent/limits.ts');"],
    ['rules/kinds/band.ts', "const limits = await import('../../agent/' + 'limits.ts');"],
    ['broker/door.ts', "import { band } from '../rules/kinds/band.ts';"],
    ['broker/door.ts', "import { band } from '#rules/kinds/band.ts';"],
    ['broker/door.ts', "import fastify from 'fastify';"],
    ['agent/store/open.ts', "import type { Desk } from '../alarms/desk.ts';"],
    ['agent/store/open.ts', "import { desk } from '#agent/alarms/desk.ts';"],
    ['agent/store/open.ts', "import { door } from '#broker/door.ts';"],
    ['agent/store/open.ts', "import { compose } from '../compose.ts';"],
    ['agent/limits.ts', "import { open } from './store/open.ts';"],
    ['agent/cli/main.ts', "import { sample } from '../../tests/sample.ts';"],
    ['dashboards/page.ts', "import { contract } from '../agent/web/contract.ts';"],
    ['dashboards/page.ts', "import type { Store } from '../agent/store/contract.ts';"],
    ['start.js', "import { z } from 'zod/mini';"],
    ['tools/odd.ts', 'export const odd = 1;'],
  ] as const;
  test.each(broken)('%s must not: %s', (path, text) => {
    expect(brokenFences(readSource(path, text))).toHaveLength(1);
  });

  const sound = [
    ['rules/engine.ts', "import { band } from './kinds/band.ts'; import { z } from 'zod/mini';"],
    ['agent/store/open.ts', "import { limits } from '../limits.ts';"],
    ['agent/turn/live.ts', "import { inputKind } from '../store/contract.ts';"],
    ['agent/wiring/plan-book.ts', "import { readSite } from '../site/read-site.ts';"],
    ['agent/store/open.ts', "import { band } from '#rules/kinds/band.ts'; import 'node:sqlite';"],
    ['agent/compose.ts', "import { door } from '#broker/door.ts'; import './store/open.ts';"],
    ['dashboards/page.ts', "import type { Contract } from '../agent/web/contract.ts';"],
  ] as const;
  test.each(sound)('%s may: %s', (path, text) => {
    expect(brokenFences(readSource(path, text)).map(say)).toEqual([]);
  });

  test('a package that does not ship is named', () => {
    const source = readSource('agent/web/page.ts', "import { x } from '@some/package/deep';");
    expect(unshippedPackages(source, ['fastify']).map(say)).toEqual([
      'agent/web/page.ts:1: imports @some/package, which is not among the dependencies of package.json. Move it there from devDependencies, or do without.',
    ]);
  });
  test('a circle is named once', () => {
    const a = readSource('rules/a.ts', "import { b } from './b.ts';");
    const b = readSource('rules/b.ts', "import { a } from './a.ts';");
    expect(importCircles([a, b])).toEqual(['rules/a.ts -> rules/b.ts -> rules/a.ts']);
  });
  test('a relative climb means the file it reaches', () => {
    expect(meaningOf('rules/kinds/band.ts', '../../agent/limits.ts')).toEqual({
      kind: 'file',
      path: 'agent/limits.ts',
    });
  });
});
