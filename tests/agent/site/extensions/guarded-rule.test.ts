/** Whatever a rule of the site's own does, what leaves it makes sense, and what did not is told. */
import { describe, expect, test } from 'vitest';
import { ownRule } from './watched.ts';

describe('a sound kind', () => {
  test('answers as it says, and nothing is told of it', () => {
    const { seen, kind, settings, memory, answers, timer } = ownRule();
    expect([answers(20), answers(31), answers(30)]).toEqual([0, 1, 0]);
    expect(kind.evidence(settings, memory)).toEqual({ value: 30 });
    expect(kind.sentence({ value: 31 })).toBe('It reads {$value}.');
    expect([timer.at, seen.faults, seen.open]).toEqual([null, [], 0]);
    expect(kind.extension).toMatch(/^rules\/own\.ts@[0-9a-f]{16}$/);
  });

  test('goes on from what a snapshot keeps, which is a copy', () => {
    const { kind, settings, memory, answers, timer } = ownRule();
    answers(31);
    const saved = JSON.parse(JSON.stringify(kind.save!(memory)));
    answers(20);
    expect(kind.evidence(settings, saved)).toEqual({ value: 31 });
    const reading = { at: 3_000, judged: 3_000, value: 29, quality: 0, input: 0 };
    expect(kind.sample(settings, saved, reading, timer)).toBe(0);
  });

  test('cannot change the reading for whoever comes after, nor its settings', () => {
    const { kind, settings, memory, timer } = ownRule({
      sample:
        '(settings, memory, reading) => { reading.value = 0; settings.limit = 99; return 0; }',
    });
    const reading = { at: 2_000, judged: 2_000, value: 31, quality: 0, input: 0 };
    kind.sample(settings, memory, reading, timer);
    expect([reading.value, settings]).toEqual([31, { limit: 30 }]);
  });
});

/** After one sound answer of 1. */
const fails: readonly (readonly [what: string, sample: string, told: RegExp])[] = [
  ['throws', 'throw new Error("no")', /^own\.sample: line 9: no$/],
  ['throws a word', 'throw "no"', /^own\.sample: line 1: threw no$/],
  [
    'throws what cannot be read',
    'throw { get message() { throw 1; }, toString() { throw 2; } }',
    /threw something that cannot be read/,
  ],
  ['answers 3', 'return 3', /answered 3, not 0, 1 or 2/],
  ['answers nothing', '', /answered undefined/],
  ['answers true', 'return true', /answered true/],
  ['answers a promise', 'return Promise.resolve(1)', /answered an object/],
  ['overflows the stack', 'const f = () => f() + 1; return f()', /Maximum call stack/],
];
test.each(fails)('one that %s answers as before', (_, body, told) => {
  const sample = `(s, m, { value }, timer) => { if (value < 50) return value > 30 ? 1 : 0; ${body} }`;
  const { seen, answers } = ownRule({ sample });
  expect([answers(31), answers(60), answers(20), answers(60)]).toEqual([1, 1, 0, 0]);
  expect(seen.faults).toEqual([expect.stringMatching(told), expect.stringMatching(told)]);
  expect(seen.open).toBe(0);
});

const deadlines: readonly (readonly [set: string, kept: number | null, faults: number])[] = [
  ['5_000', 5_000, 0],
  ['2_000', 2_000, 0],
  ['null', null, 0],
  ['1_999', null, 1],
  ['NaN', null, 1],
  ['Infinity', null, 1],
  ['"soon"', null, 1],
  ['2_000 + 401 * 86_400_000', null, 1],
];
test.each(deadlines)('a deadline set to %s', (set, kept, faults) => {
  const { seen, answers, timer } = ownRule({
    sample: `(s, m, r, timer) => { timer.at = ${set}; return 0; }`,
  });
  answers(20, 2_000);
  expect([timer.at, seen.faults.length]).toEqual([kept, faults]);
});

test('a deadline that sets itself again at once would never end, and is let go', () => {
  const { seen, kind, settings, memory, timer } = ownRule({
    deadline: '(s, m, at, timer) => { timer.at = at; return 1; }',
  });
  expect(kind.deadline!(settings, memory, 5_000, timer)).toBe(1);
  expect([timer.at, seen.faults]).toEqual([null, ['own.deadline: set the deadline 5000, at 5000']]);
});

const memories: readonly (readonly [memory: string, told: RegExp])[] = [
  ['new Map()', /its memory holds a Map, not a plain list or record/],
  ['{ f() {} }', /its memory holds a function/],
  ['{ a: NaN }', /its memory holds NaN, which is no finite number/],
  ['{ a: undefined }', /its memory holds a undefined/],
  ['{ a: 1n }', /its memory holds a bigint/],
  ['{ get a() { return 1; } }', /its memory holds a, which is no plain value/],
  ['(() => { const a = {}; a.a = a; return a; })()', /lies more than 16 deep/],
  ['{ a: new Array(20_000).fill(0) }', /holds more than 10000 values/],
  ['null', /gave null, not an object/],
  ['7', /gave 7, not an object/],
];
test.each(memories)('memory that JSON cannot keep is no memory: %s', (memory, told) => {
  const { seen, answers, kind, settings, memory: begun } = ownRule({ begin: `() => (${memory})` });
  expect(seen.faults).toEqual([expect.stringMatching(told)]);
  // Nothing is asked of it, and each time it is said.
  expect(answers(31)).toBe(0);
  expect(seen.faults.at(-1)).toBe('own.begin: it has no memory to go on with');
  expect(kind.evidence(settings, begun)).toEqual({});
});

test('memory that becomes unfit is found where the answer changes, and now and then', () => {
  const { seen, answers } = ownRule({
    sample: '(s, m, { value }) => { m.a = NaN; return value > 30 ? 1 : 0; }',
  });
  answers(31);
  expect(seen.faults).toEqual([expect.stringMatching(/holds NaN/)]);
  for (let i = 0; i < 255; i += 1) answers(31);
  expect(seen.faults.length).toBe(2);
});

const evidences: readonly (readonly [evidence: string, told: RegExp])[] = [
  ['null', /evidence is null, not an object/],
  ['{ value: NaN }', /evidence\.value is NaN/],
  ['{ value: "7" }', /evidence\.value is "7"/],
  ['{ side: "up" }', /evidence\.side is "up"/],
  ['{ cause: 99 }', /evidence\.cause is 99, no quality code/],
  ['{ input: -1 }', /evidence\.input is -1/],
  ['{ colour: 1 }', /evidence has no colour/],
  ['{ item: "a\\u0007" }', /evidence\.item is/],
];
test.each(evidences)('evidence %s is none', (evidence, told) => {
  const { seen, kind, settings, memory } = ownRule({ evidence: `() => (${evidence})` });
  expect(kind.evidence(settings, memory)).toEqual({});
  expect(seen.faults).toEqual([expect.stringMatching(told)]);
});

test('a sentence and limits that are none', () => {
  const { seen, kind, settings } = ownRule({
    sentence: "() => 'a\\u001b[2J'",
    limits: '() => ({ high: Infinity })',
  });
  expect(kind.sentence({})).toBe('It is above its limit.');
  expect(kind.limits!(settings)).toEqual({ lowLow: null, low: null, high: null, highHigh: null });
  expect(seen.faults.map((words) => words.slice(0, 12))).toEqual(['own.sentence', 'own.limits: ']);
});

test('settings that are no plain data are a problem at their place', () => {
  const { problems, settings } = ownRule({ compile: '(read) => ({ read })' });
  expect(settings).toBeNull();
  expect(problems).toEqual([
    {
      path: [],
      problem: expect.stringMatching(/^own\.compile: its settings hold/),
      fix: 'mend rules/own.ts',
    },
  ]);
});

test('switched off, its words are asked for no more', () => {
  const { seen, kind, settings, memory } = ownRule({ sentence: '() => { throw 1; }' });
  seen.off = true;
  expect(kind.sentence({})).toBe('It is above its limit.');
  expect(kind.evidence(settings, memory)).toEqual({});
  expect(seen.faults).toEqual([]);
});

test('a memory of an older version is carried over, or begins anew', () => {
  const { kind } = ownRule({
    migrate: '(old, version) => (version === 1 ? { value: old.v } : null)',
  });
  expect(kind.migrate!({ answer: 1, own: { v: 7 } }, 1)).toEqual({ answer: 1, own: { value: 7 } });
  expect(kind.migrate!({ answer: 1, own: { v: 7 } }, 0)).toBeNull();
});
