/** From topics to signals: exact, shared, wildcard, discovered, refused, laid out anew. */
import { expect, test } from 'vitest';
import { quality } from '#rules/signal/quality.ts';
import { binding, scene, startMs, valueAndTime, valueOnly } from './scene.ts';

const cells = (instances: readonly (readonly [string, number])[] = [], first = 0) =>
  binding({
    id: 'mounts-2/bench/t',
    filter: 'bench/+/t',
    instances: new Map(instances.map(([name, i]) => [name, first + i])),
  });

test('one topic feeds several signals from one payload', () => {
  const { intake, send } = scene([
    binding({ payload: valueOnly, signal: 3 }),
    binding({ payload: { kind: 'json', value: '/w' }, signal: 5, id: 'mounts-2/store-1/wall' }),
  ]);
  expect(send({ v: 21.4, w: 19.8 })).toMatchObject([
    { signal: 3, value: 21.4 },
    { signal: 5, value: 19.8 },
  ]);
  expect(send('{')).toMatchObject([{ signal: 3 }, { signal: 5 }]);
  expect(intake.counters).toMatchObject({ messages: 2, readings: 4, good: 2, bad: 2 });
});

test('a known instance of a wildcard feeds its signal, an exact topic beside it too', () => {
  const exact = binding({ filter: 'bench/a/t', signal: 7, id: 'mounts-2/bench/copy' });
  const { send } = scene([
    cells([
      ['a', 0],
      ['b', 1],
    ]),
    exact,
  ]);
  expect(send('1', { topic: 'bench/b/t' })).toMatchObject([{ signal: 1, value: 1 }]);
  expect(send('2', { topic: 'bench/a/t' })).toMatchObject([
    { signal: 7, value: 2 },
    { signal: 0, value: 2 },
  ]);
});

test('a topic nobody bound is counted, and named up to a bound', () => {
  const { intake, send } = scene([cells()]);
  for (let i = 0; i < 300; i += 1) send('1', { topic: `else/${i}` });
  send('1', { topic: 'else/0' });
  send('1', { topic: 'x'.repeat(2_000) });
  expect(intake.counters).toMatchObject({ messages: 302, unrouted: 302, readings: 0 });
  expect(intake.counters.causes['unbound-topic']).toBe(302);
  expect(intake.unboundTopics.size).toBe(200);
  expect(intake.unboundTopics.get('else/0')).toBe(2);
  expect(intake.examples.get('unbound-topic')?.topic).toHaveLength(1_024);
});

test('names that objects inherit are no instances', () => {
  const asked: string[] = [];
  const { send } = scene([cells()], {
    discover: (_, instance) => {
      asked.push(instance);
      return null;
    },
  });
  expect(send('1', { topic: 'bench/constructor/t' })).toHaveLength(0);
  expect(send('1', { topic: 'bench/__proto__/t' })).toHaveLength(0);
  expect(asked).toEqual(['constructor', 'proto']);
});

test('a new instance is asked for once, and its signal fed from then on', () => {
  const asked: string[] = [];
  const { intake, send } = scene([cells()], {
    discover: (id, instance) => asked.push(`${id} ${instance}`) - 1,
  });
  expect(send('1', { topic: 'bench/Cell_1/t' })).toMatchObject([{ signal: 0, value: 1 }]);
  expect(send('2', { topic: 'bench/Cell_1/t' })).toMatchObject([{ signal: 0, value: 2 }]);
  expect(send('3', { topic: 'bench/cell-2/t' })).toMatchObject([{ signal: 1, value: 3 }]);
  expect(asked).toEqual(['mounts-2/bench/t cell-1', 'mounts-2/bench/t cell-2']);
  // Another topic that would take the same name: two sensors never share a signal unnoticed.
  expect(send('4', { topic: 'bench/cell 1/t' })).toHaveLength(0);
  expect(intake.counters.causes['instance-collision']).toBe(1);
  expect(send('5', { topic: 'bench/-/t' })).toHaveLength(0);
  expect(intake.counters.causes['instance-name']).toBe(1);
  expect(intake.counters).toMatchObject({ messages: 5, unrouted: 2, readings: 3 });
});

test('a refused instance is counted a message, and asked for again under a new plan', () => {
  let answer: number | null = null;
  let asked = 0;
  const { intake, send } = scene([cells()], {
    discover: () => {
      asked += 1;
      return answer;
    },
  });
  expect(send('1', { topic: 'bench/a/t' })).toHaveLength(0);
  expect(send('1', { topic: 'bench/a/t' })).toHaveLength(0);
  expect(asked).toBe(1);
  expect(intake.counters.causes['instance-refused']).toBe(2);
  answer = 4;
  intake.replan([cells()]);
  expect(send('1', { topic: 'bench/a/t' })).toMatchObject([{ signal: 4 }]);
});

test('discovery may lay out a new plan on the spot, which moves every index', () => {
  const names: string[] = [];
  const exact = (signal: number) =>
    binding({ filter: 'bench/b/t', id: 'mounts-2/bench/z', signal });
  const { intake, send } = scene([cells(), exact(0)], {
    discover: (_, instance) => {
      names.push(instance);
      names.sort();
      intake.replan([cells(names.map((name, i) => [name, i])), exact(names.length)]);
      return names.indexOf(instance);
    },
  });
  expect(send('1', { topic: 'bench/b/t' })).toMatchObject([{ signal: 1 }, { signal: 0 }]);
  expect(send('2', { topic: 'bench/a/t' })).toMatchObject([{ signal: 0, value: 2 }]);
  expect(send('3', { topic: 'bench/b/t' })).toMatchObject([{ signal: 2 }, { signal: 1 }]);
});

test('a plan that promises an instance and does not hold it ends in a refusal', () => {
  const { intake, send } = scene([cells()], {
    discover: () => {
      intake.replan([cells()]);
      return 0;
    },
  });
  expect(send('1', { topic: 'bench/a/t' })).toHaveLength(0);
  expect(intake.counters.causes['instance-refused']).toBe(1);
});

test('memory follows the signal by name into a new plan', () => {
  const own = (signal: number) => binding({ payload: valueAndTime, signal });
  const { intake, send } = scene([own(0)]);
  send({ v: 21.4, t: startMs });
  intake.replan([own(6)]);
  expect(send({ v: 21.4, t: startMs })).toHaveLength(0);
  expect(send({ v: 22, t: startMs })).toMatchObject([{ signal: 6, quality: quality.conflict }]);
  intake.replan([binding({ payload: valueAndTime, id: 'mounts-2/store-1/other' })]);
  expect(send({ v: 22, t: startMs })).toMatchObject([{ quality: quality.good }]);
});

test('a plan that cannot be leaves the one before in force', () => {
  const { intake, send } = scene([binding({ signal: 2 })]);
  expect(() => intake.replan([binding({ signal: null })])).toThrow(RangeError);
  expect(() => intake.replan([binding({ payload: { kind: 'json', value: 'v' } })])).toThrow(
    RangeError,
  );
  expect(send('1')).toMatchObject([{ signal: 2 }]);
});
