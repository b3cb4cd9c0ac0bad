/** A derived signal of what takes hours is worked out once a minute; what cannot be used is told at once. */
import { expect, test } from 'vitest';
import { isBad, quality } from '#rules/signal/quality.ts';
import { compiled, signalLine } from '../plan/site.ts';
import { Drive } from './drive.ts';

const second = 1_000;
const site = compiled(
  `l: { x: { kind: custom, signals: { air: ${signalLine('a', 'Cel')} },
     derived: { wall: { kind: drum-wall-temperature, inputs: { air: air }, transfer: 8 W/(m2.K) } } } }`,
);

/** When it was worked out, in seconds, and how good it was. */
function workedOut(drive: Drive): [number, boolean][] {
  return drive.derived.map((line) => {
    const [, , judged, , code] = line.split(' ').map(Number);
    return [judged! / second, !isBad(code! as 0)];
  });
}

test('once a minute, at the air as it is then', () => {
  expect(site.problems).toEqual([]);
  const drive = new Drive(site.plan);
  for (let s = 0; s < 200; s += 1)
    drive.offer({ signal: 'l/x/air', at: s * second, value: 20 - s / 10 }).advance(s * second);
  expect(workedOut(drive)).toEqual([
    [0.1, true],
    [60.1, true],
    [120.1, true],
    [180.1, true],
  ]);
});

test('a reading that cannot be used is told within a second, and so is its end', () => {
  const drive = new Drive(site.plan);
  const air = (s: number, code: number = quality.good) =>
    drive
      .offer({ signal: 'l/x/air', at: s * second, value: 20, quality: code })
      .advance(s * second);
  for (let s = 0; s < 70; s += 1) air(s);
  air(70, quality.badInput);
  for (let s = 71; s < 75; s += 1) air(s, quality.badInput);
  for (let s = 75; s < 80; s += 1) air(s);
  const [, , bad, again] = workedOut(drive);
  expect(bad![1]).toBe(false);
  expect(bad![0]).toBeLessThanOrEqual(71.2);
  expect(again![1]).toBe(true);
  expect(again![0]).toBeLessThanOrEqual(76.2);
});
