/** What people read and enter: no topic, a time to be entered by, and coverage that says so. */
import { describe, expect, test } from 'vitest';
import { problemsOf } from '#rules/site/issue.ts';
import { signalWritten } from '#rules/site/signal-schema.ts';
import { compiled } from './site.ts';

const site = (signal: string, rules = '{}') =>
  compiled(`
l:
  t:
    kind: custom
    signals: { ph: ${signal} }
    rules: ${rules}
`);
const said = (of: ReturnType<typeof compiled>) =>
  of.problems.map(({ path, problem }) => `${path.slice(4).join('.')}: ${problem}`);

describe('a signal that is entered by hand', () => {
  const whole = site(
    '{ by_hand: true, unit: "[pH]", due_every: 8 h, range: ["4 [pH]", "11 [pH]"] }',
  );
  test('is one of the plan, with the time by which it must be entered again', () => {
    expect(whole.problems).toEqual([]);
    expect(whole.plan.signals).toMatchObject([
      {
        id: 'l/t/ph',
        kind: 'manual',
        holdMs: 0,
        latenessMs: 86_400_000,
        expectEveryMs: 28_800_000,
      },
    ]);
    expect(whole.bindings).toMatchObject([
      { id: 'l/t/ph', signal: 0, filter: '', low: 4, high: 11, hasOwnTime: true },
    ]);
  });
  test('is overdue by a quarter before somebody is told, in words of its own', () => {
    const overdue = whole.rules.find(({ id }) => id === 'l/t/lost-ph')!;
    expect(overdue.settings).toMatchObject([{ setting: 'after', written: '600 min' }]);
    expect(overdue.label.sentence).toMatch(/nobody has entered a reading since/);
    expect(site('{ by_hand: true, unit: "[pH]" }').rules).toEqual([]);
  });
  test.each([
    [
      '{ by_hand: true, unit: "[pH]", topic: a }',
      ['ph.topic: a signal that is entered by hand has no topic'],
    ],
    [
      '{ by_hand: true, unit: "[pH]", expect_every: 60 s }',
      ['ph.expect_every: a signal that is entered by hand has no expect_every'],
    ],
    [
      '{ by_hand: true, unit: "[pH]", due_every: 0 s }',
      ['ph.due_every: nothing can be entered every 0 s'],
    ],
    [
      '{ topic: a, payload: { kind: plain }, unit: "[pH]", due_every: 8 h }',
      ['ph.due_every: only what is entered by hand falls due'],
    ],
  ])('%s', (signal, problems) => {
    expect(said(site(signal))).toEqual(problems);
  });
});

test('a signal without topic or payload says that it lacks them, beside its other faults', () => {
  expect(
    problemsOf(signalWritten, { unit: 5 }).map(({ path, problem }) => `${path}: ${problem}`),
  ).toEqual([
    'unit: 5 is a number, not text',
    'topic: "topic" is missing',
    'payload: "payload" is missing',
  ]);
  expect(problemsOf(signalWritten, { unit: 'Cel', by_hand: true })).toEqual([]);
});
