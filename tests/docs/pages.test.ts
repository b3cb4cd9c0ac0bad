import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { errorCatalogue } from '#agent/errors.ts';
import { limits } from '#agent/limits.ts';
import { projectFiles, readText } from '../tidy/source.ts';
import { unmappedAlarms } from './alarms-page.ts';
import { groupsWithoutHeading } from './errors-page.ts';
import { generatedPages } from './generated.ts';
import { commands, routesByFile } from './interface-words.ts';
import { boundsOf, figure, limitsText, relationsOf } from './limits-page.ts';
import { foundProblems, wordProblems } from './words-page.ts';

const pages = projectFiles.filter((path) => path.endsWith('.md'));

describe('pages made from the sources', () => {
  test.each(generatedPages)('%s is up to date (if not: npm run docs)', (path, make) => {
    expect(projectFiles).toContain(path);
    expect(readText(path)).toBe(make());
  });
  test('every error has a heading to stand under (tests/docs/errors-page.ts)', () => {
    expect(groupsWithoutHeading(Object.keys(errorCatalogue))).toEqual([]);
    expect(groupsWithoutHeading(['ODD_THING', 'ODD_OTHER'])).toEqual(['ODD']);
  });
  test('every bound was read from the source', () => {
    const names = boundsOf(limitsText()).map((bound) => bound.name);
    expect(names).toEqual(Object.keys(limits));
  });
  test('every bound says in a comment of its own what happens there', () => {
    const silent = boundsOf(limitsText()).filter((bound) => bound.happens === null);
    expect(silent.map((bound) => bound.name)).toEqual([]);
  });
});

test('every row of what the trade watches for has its rules, and every rule its row (tests/docs/alarm-rows.ts)', () => {
  expect(unmappedAlarms()).toEqual([]);
});

describe('the words', () => {
  test('every one has a meaning and an origin (tests/docs/word-table.ts)', () => {
    expect(foundProblems()).toEqual([]);
  });
  test('one without is named, and so is an entry without a word', () => {
    const words = [
      { word: 'odd', meaning: null },
      { word: 'said', meaning: 'It says so.' },
    ];
    const entry = { origin: 'ours', meanings: { gone: 'Was.', said: 'Twice.' } };
    expect(wordProblems([{ name: 'A', met: 'here', words }], { A: entry, B: entry })).toEqual([
      'A: odd has no meaning',
      'A: said has a meaning in the code already',
      'A: gone is no word of the code',
      'B: is no section',
    ]);
    expect(wordProblems([{ name: 'C', met: 'here', words: [] }], {})).toEqual([
      'C: has no origin',
      'C: no word was found',
    ]);
  });
  test('no file of routes and no command was left out', () => {
    const files = projectFiles.flatMap(
      (path) => /^agent\/web\/routes\/(.+)\.ts$/.exec(path)?.[1] ?? [],
    );
    expect(Object.keys(routesByFile()).sort()).toEqual(files.sort());
    const made = [...readText('agent/cli/main.ts').matchAll(/^ {2}(\w+)Command\(program/gm)];
    const names = made.map((match) => match[1]!);
    expect(names.length).toBeGreaterThan(5);
    const known = commands().map((each) => each.name());
    expect(names.filter((name) => !known.includes(name))).toEqual([]);
  });
});

describe('reading the bounds', () => {
  const text = `
    /** The file. */
    export const limits = {
      /** Refused beyond it,
       * and counted. */
      a: 1,
      b: 2,
      /** Slows down. */
      c: 3,
    };
    assert(limits.a < limits.b, 'a before b');
  `;
  test('a comment belongs to the one bound right below it', () => {
    expect(boundsOf(text)).toEqual([
      { name: 'a', happens: 'Refused beyond it, and counted.' },
      { name: 'b', happens: null },
      { name: 'c', happens: 'Slows down.' },
    ]);
  });
  test('relations are the assertions', () => expect(relationsOf(text)).toEqual(['a before b']));
  test.each([
    ['waitMs', 250, '250 ms'],
    ['waitMs', 10_000, '10 s'],
    ['waitMsDefault', 600_000, '10 min'],
    ['sealEveryMs', 3_600_000, '1 h'],
    ['payloadBytesMax', 65_536, '64 KiB'],
    ['ballastBytes', 16_777_216, '16 MiB'],
    ['textBytesMax', 1_000, '1,000 bytes'],
    ['keepAliveMaxS', 3_600, '3,600 s'],
    ['shelveMinutesMax', 10_080, '10080 min'],
    ['freeShareMin', 0.05, '5 %'],
    ['rulesMax', 10_000, '10,000'],
  ])('%s of %d reads %s', (name, value, words) => expect(figure(name, value)).toBe(words));
});

describe('links between pages', () => {
  /** Links that lead to no file of the project. */
  const dead = (path: string, text: string): string[] =>
    [...text.replaceAll(/```[\s\S]*?```/g, '').matchAll(/\]\(([^)\s]+)\)/g)]
      .map((match) => match[1]!)
      .filter((link) => !/^(https?:|mailto:|#)/.test(link))
      .map((link) => posix.join(posix.dirname(path), link.split('#')[0]!))
      .map((target) => target.replace(/\/$/, ''))
      .filter(
        (target) => !projectFiles.some((file) => file === target || file.startsWith(`${target}/`)),
      )
      .map((target) => `${path}: ${target} is not there`);
  test('none is dead', () => {
    expect(pages.flatMap((path) => dead(path, readText(path)))).toEqual([]);
  });
  test('a dead one is found', () => {
    expect(dead('docs/a.md', '[b](no-such.md) and [c](../package.json)')).toEqual([
      'docs/a.md: docs/no-such.md is not there',
    ]);
  });
});
