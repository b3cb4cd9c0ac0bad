/** A highly managed alarm is not for operators to shelve (ISA-18.2 / IEC 62682); all else is as with any. */
import { describe, expect, test } from 'vitest';
import type { Command } from '#rules/input.ts';
import { Drive } from './drive.ts';
import { smallPlan } from './small-plan.ts';

const plan = (highlyManaged: boolean) =>
  smallPlan({
    signals: { t: {} },
    rules: {
      r: {
        kind: 'band',
        on: 't',
        settings: { high: '30 Cel' },
        class: { latching: true, selfAcknowledging: false, highlyManaged },
      },
    },
  });

const asked = { kind: 'command', judged: 200, by: 'p1', occurrence: 'r@100' } as const;
const commands = {
  acknowledge: { ...asked, verb: 'acknowledge' },
  shelve: { ...asked, verb: 'shelve', reason: 'probe out', untilMs: 5_000 },
} as const satisfies Record<string, Command>;

const stateAfter = (highlyManaged: boolean, verb: keyof typeof commands): string => {
  const drive = new Drive(plan(highlyManaged)).values('t', [100, 31]);
  const [effect] = drive.input(commands[verb]).advance(200).effects.slice(1);
  if (effect?.kind === 'refused') return `refused: ${effect.why}`;
  return effect?.kind === 'transition' ? effect.to : 'nothing';
};

describe('a command, the class of the alarm, what it does', () => {
  test.each([
    ['acknowledge', false, 'acknowledged'],
    ['acknowledge', true, 'acknowledged'],
    ['shelve', false, 'shelved'],
    [
      'shelve',
      true,
      'refused: it is highly managed, so handled with special care: nobody may silence it; act on its steps',
    ],
  ] as const)('%s, highly managed %s: %s', (verb, managed, what) => {
    expect(stateAfter(managed, verb)).toBe(what);
  });
});

test('one that was shelved before its class changed can still be taken off the shelf', () => {
  const [plain, managed] = [plan(false), { ...plan(true), revision: 'managed' }];
  const drive = new Drive(plain, 0, [managed]).values('t', [100, 31]);
  drive.input(commands.shelve).advance(200);
  drive.input({ kind: 'site', judged: 300, revision: 'managed' });
  drive.input({ ...asked, judged: 400, verb: 'unshelve' }).advance(400);
  expect(drive.effects.at(-1)).toMatchObject({ transition: 'unshelved', to: 'unacknowledged' });
});
