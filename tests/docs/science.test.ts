import { describe, expect, test } from 'vitest';
import type { Subject } from '#rules/process/subject.ts';
import { notComputed } from './not-computed.ts';
import { countFlags, processFiles, sciencePage, subjectProblems } from './science-page.ts';

describe('the science page', () => {
  test.each(processFiles.map((file) => [file.path, file] as const))(
    '%s says what it is (rules/process/subject.ts says how)',
    (_, file) => expect(subjectProblems(file)).toEqual([]),
  );

  test('a file that does not is told how', () => {
    const path = 'rules/process/odd.ts';
    expect(subjectProblems({ path, exported: { oddPa: () => 1 } })).toEqual([
      expect.stringContaining(`${path}: says nothing of itself. Export \`subject: Subject\``),
    ]);
    const subject: Subject = {
      title: 'Odd',
      about: ' ',
      symbols: {},
      source: 'maths',
      uncertainty: 'none',
      functions: {
        goneC: { formula: 'x', range: 'y' },
        vagueC: { formula: 'x', range: '' },
      },
    };
    const exported = { subject, oddPa: () => 1, vagueC: () => 2, limitK: 3 };
    expect(subjectProblems({ path, exported })).toEqual([
      `${path}: oddPa has no entry in subject.functions; give its formula and range.`,
      `${path}: subject.functions has goneC, which it does not export; take it out.`,
      `${path}: subject.about is empty; say it.`,
      `${path}: vagueC needs a formula and a range in subject.functions.`,
    ]);
  });

  test('a row is a record with a source and a flag, wherever it stands', () => {
    const row = { source: 'a book', flag: 'seen' } as const;
    expect(
      countFlags({
        rows: [row, { ...row, flag: 'calc', rows: [row] }, { flag: 'seen' }],
        one: { ...row, flag: 'memory' },
        odd: { ...row, flag: 'guessed' },
        other: [null, 3, 'flag'],
      }),
    ).toEqual({ seen: 1, calc: 1, memory: 1 });
  });

  test('what is not computed says why, once each', () => {
    expect(notComputed.length).toBeGreaterThan(4);
    expect(new Set(notComputed.map(({ what }) => what)).size).toBe(notComputed.length);
    const page = sciencePage();
    for (const { what, why } of notComputed) {
      expect(why).toMatch(/^[A-Z].{40,}\.$/);
      expect(page.slice(page.indexOf('## Not computed'))).toContain(what);
    }
  });

  test('no function computes what the page says is not computed', () => {
    const names = processFiles.flatMap(({ exported }) => Object.keys(exported)).join(' ');
    expect(names).not.toMatch(
      /semenov|depression|selfHeatingClass|halfInfinite|oneTerm|frozenThrough/i,
    );
  });
});
