import { describe, expect, test } from 'vitest';
import {
  type Delayed,
  delayedBegin,
  delayedDue,
  delayedGap,
  delayedSay,
  delayedShift,
} from '#rules/kinds/delay.ts';

const delays = { onDelayMs: 100, offDelayMs: 50 };
const begun = (): Delayed => delayedBegin();

test('without a delay the answer turns with the sample, and asks for no deadline', () => {
  const memory = begun();
  const none = { onDelayMs: 0, offDelayMs: 0 };
  expect(delayedSay(none, memory, true, 10)).toBeNull();
  expect(memory).toEqual({ answer: true, changeAt: null, sinceMs: 10 });
  expect(delayedSay(none, memory, false, 20)).toBeNull();
  expect(memory).toEqual(begun());
});

describe('with a delay', () => {
  test('the deadline is the first moment plus the delay, whatever is said again', () => {
    const memory = begun();
    expect(delayedSay(delays, memory, true, 10)).toBe(110);
    expect(delayedSay(delays, memory, true, 60)).toBe(110);
    expect(memory.answer).toBe(false);
    expect(delayedDue(delays, memory, 110)).toBeNull();
    expect(memory).toEqual({ answer: true, changeAt: null, sinceMs: 10 });
  });
  test('at the very moment it is due a sample turns it too', () => {
    const memory = begun();
    delayedSay(delays, memory, true, 10);
    expect(delayedSay(delays, memory, true, 109)).toBe(110);
    expect(delayedSay(delays, memory, true, 110)).toBeNull();
    expect(memory.answer).toBe(true);
  });
  test('one sample that says otherwise begins it anew', () => {
    const memory = begun();
    delayedSay(delays, memory, true, 10);
    expect(delayedSay(delays, memory, false, 109)).toBeNull();
    expect(delayedSay(delays, memory, true, 110)).toBe(210);
  });
  test('on the way back the off-delay counts, and the start stays until it is over', () => {
    const memory = begun();
    delayedSay(delays, memory, true, 10);
    delayedDue(delays, memory, 110);
    expect(delayedSay(delays, memory, false, 200)).toBe(250);
    expect(memory.sinceMs).toBe(10);
    expect(delayedDue(delays, memory, 250)).toBeNull();
    expect(memory).toEqual(begun());
  });
  test('a deadline of another of the rule’s delays leaves it, and is given its own again', () => {
    const memory = begun();
    delayedSay(delays, memory, true, 10);
    expect(delayedDue(delays, memory, 109)).toBe(110);
    expect(memory.answer).toBe(false);
    expect(delayedDue(delays, begun(), 109)).toBeNull();
  });
});

test('unobserved time does not count towards the delay', () => {
  const memory = begun();
  delayedSay(delays, memory, true, 10);
  delayedGap(memory, 1_000);
  expect(delayedSay(delays, memory, true, 1_050)).toBe(1_110);
  const idle = begun();
  delayedGap(idle, 1_000);
  expect(idle).toEqual(begun());
});

test('a clock set anew moves every time', () => {
  const memory = { answer: true, changeAt: 200, sinceMs: 10 };
  delayedShift(memory, -5);
  expect(memory).toEqual({ answer: true, changeAt: 195, sinceMs: 5 });
  const idle = begun();
  delayedShift(idle, -5);
  expect(idle).toEqual(begun());
});
