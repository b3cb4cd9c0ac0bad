/** What a highly managed alarm asks of whoever resets it or takes it out of service. */
import { describe, expect, test } from 'vitest';
import type { Command } from '#rules/input.ts';
import { Drive } from './drive.ts';
import { smallPlan } from './small-plan.ts';

const plan = (highlyManaged = true, onDelay = '0 s') =>
  smallPlan({
    signals: { t: {} },
    rules: {
      r: {
        kind: 'band',
        on: 't',
        settings: { high: '30 Cel', on_delay: onDelay },
        class: { latching: true, selfAcknowledging: false, highlyManaged },
      },
    },
  });

const asked = { kind: 'command', by: 'p1', occurrence: 'r@100' } as const;
const why = 'looked at it with the fire watch';
const told = (drive: Drive): string => {
  const effect = drive.effects.at(-1);
  return effect?.kind === 'refused'
    ? `refused: ${effect.why}`
    : effect?.kind === 'transition'
      ? effect.to
      : String(effect?.kind);
};

/** Raised at 100, acknowledged at 200; then these readings. */
function latched(highlyManaged: boolean, ...then: readonly (readonly [number, number])[]): Drive {
  const drive = new Drive(plan(highlyManaged)).values('t', [100, 31]);
  drive.input({ ...asked, judged: 200, verb: 'acknowledge' }).advance(200);
  return drive.values('t', ...then);
}
const reset = (drive: Drive, at: number, reason?: string): string =>
  told(
    drive
      .input({ ...asked, judged: at, verb: 'reset', ...(reason === undefined ? {} : { reason }) })
      .advance(at),
  );

describe('a reset', () => {
  test('needs a reason of ten letters where it is highly managed', () => {
    expect(reset(latched(true, [300, 20]), 400)).toMatch(/^refused: .*reason/);
    expect(reset(latched(true, [300, 20]), 400, 'ok')).toMatch(/^refused: .*10 letters/);
    expect(reset(latched(true, [300, 20]), 400, why)).toBe('normal');
    expect(reset(latched(false, [300, 20]), 400)).toBe('normal');
  });
  test('is refused while the value is past the limit, though the alarm has returned', () => {
    const drive = new Drive(plan(true, '10 s')).values('t', [100, 31]);
    drive.advance(10_100).values('t', [10_200, 20]);
    const occurrence = 'r@10100';
    drive.input({ ...asked, occurrence, judged: 10_300, verb: 'acknowledge' }).advance(10_300);
    // Past the limit again, and its delay runs.
    drive.values('t', [10_400, 31]);
    drive
      .input({ ...asked, occurrence, judged: 10_500, verb: 'reset', reason: why })
      .advance(10_500);
    expect(told(drive)).toMatch(/^refused: its value is past the limit/);
    drive.values('t', [10_600, 20]);
    drive
      .input({ ...asked, occurrence, judged: 10_700, verb: 'reset', reason: why })
      .advance(10_700);
    expect(told(drive)).toBe('normal');
  });
  test('is refused while nobody can tell', () => {
    const drive = latched(true, [300, 20]);
    drive.offer({ signal: 't', at: 350, quality: 100 }).advance(350);
    expect(reset(drive, 400, why)).toMatch(/^refused: nobody can tell/);
  });
  test('is refused while the condition holds', () => {
    expect(reset(latched(true), 400, why)).toBe('refused: the condition still holds');
  });
});

describe('out of service', () => {
  const out = (more: Partial<Extract<Command, { occurrence: string }>>, managed = true) => {
    const drive = new Drive(plan(managed)).values('t', [100, 31]);
    drive
      .input({ ...asked, judged: 200, verb: 'remove-from-service', reason: why, ...more })
      .advance(200);
    return drive;
  };
  test.each([
    [{ reason: 'ok', untilMs: 5_000 }, /10 letters/],
    [{}, /needs an end/],
    [{ untilMs: 200 }, /needs an end/],
    [{ untilMs: 200 + 86_400_001 }, /at most 24 h/],
  ])('%o is refused where it is highly managed', (more, words) => {
    expect(told(out(more))).toMatch(/^refused: /);
    expect(told(out(more))).toMatch(words);
  });
  test('with an end it comes back by itself, told as new', () => {
    const drive = out({ untilMs: 5_000 });
    expect(drive.effects.at(-1)).toMatchObject({ to: 'out-of-service', untilMs: 5_000 });
    const again = Drive.resume(drive).advance(6_000);
    expect(again.effects).toMatchObject([
      { transition: 'returned-to-service', to: 'unacknowledged', judged: 5_000, by: 'clock' },
    ]);
  });
  test('any other may stay out until it is brought back', () => {
    expect(told(out({}, false).advance(90_000_000))).toBe('out-of-service');
  });
});
