/** What is kept of refused messages, and how little of it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Refused } from '#agent/intake/refused.ts';
import { binding, scene, startMs, valueAndTime, valueOnly } from './scene.ts';

const limits = {
  refusedTopicsMax: 3,
  refusedMessagesKept: 2,
  refusedCharsKept: 8,
  refusedLoggedMax: 3,
  topicBytesMax: 20,
};
const utf8 = new TextEncoder();

describe('the book', () => {
  const note = (book: Refused, topic: string, text: string, at = 1): void =>
    book.note({
      topic,
      cause: 'not-json',
      signal: 'l/s/x',
      from: '',
      payload: utf8.encode(text),
      at,
    });
  test('the last few of each topic, the topic refused last first', () => {
    const book = new Refused(limits);
    note(book, 'a', 'one', 1);
    note(book, 'b', 'two', 2);
    note(book, 'a', 'three', 3);
    note(book, 'a', 'four', 4);
    expect(book.topics()).toMatchObject([
      {
        topic: 'a',
        count: 3,
        standing: true,
        messages: [{ begins: 'three' }, { begins: 'four', at: 4, bytes: 4 }],
      },
      { topic: 'b', count: 1 },
    ]);
  });
  test('the topic refused longest ago makes room', () => {
    const book = new Refused(limits);
    for (const topic of ['a', 'b', 'a', 'c', 'd']) note(book, topic, 'x');
    expect(book.topics().map(({ topic }) => topic)).toEqual(['d', 'c', 'a']);
  });
  test('only what can be printed, and only so much; a long topic not at all', () => {
    const book = new Refused(limits);
    const payload = Uint8Array.of(0, 0x41, 0xff, 0x0a, 0x1b, 0x5b, 0x33);
    book.note({ topic: 'a', cause: 'not-utf8', signal: null, from: '', payload, at: 1 });
    note(book, 'b', 'é'.repeat(30));
    note(book, 'x'.repeat(21), 'x');
    expect(book.topics().map(({ messages }) => messages[0]!.begins)).toEqual([
      'éééééééé',
      '·A\ufffd··[3',
    ]);
  });
  test('nothing it keeps can steer a terminal, and all of it is bounded', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.string({ maxLength: 3 }), fc.uint8Array())), (messages) => {
        const book = new Refused(limits);
        for (const [topic, payload] of messages)
          book.note({ topic, cause: 'not-json', signal: null, from: '', payload, at: 1 });
        const topics = book.topics();
        expect(topics.length).toBeLessThanOrEqual(limits.refusedTopicsMax);
        for (const { messages: kept } of topics) {
          expect(kept.length).toBeLessThanOrEqual(limits.refusedMessagesKept);
          for (const { begins } of kept) {
            expect([...begins].length).toBeLessThanOrEqual(limits.refusedCharsKept);
            expect(begins).not.toMatch(/\p{Cc}/u);
          }
        }
      }),
    );
  });
});

describe('from messages', () => {
  test('each reason with the signal, and standing until one is of use', () => {
    const { send, intake } = scene([binding({ payload: valueAndTime, low: -40, high: 100 })]);
    send('hello');
    send({ v: 'x', t: startMs });
    send({ v: 500, t: startMs + 1 });
    expect(intake.refused()).toMatchObject([
      {
        topic: 'mounts-2/store-1/air',
        count: 3,
        standing: true,
        messages: [
          { cause: 'not-json', signal: 'mounts-2/store-1/air', begins: 'hello', at: startMs },
          { cause: 'not-a-number' },
          { cause: 'out-of-range', begins: `{"v":500,"t":${startMs + 1}}` },
        ],
      },
    ]);
    send({ v: 21, t: startMs + 2 });
    expect(intake.refused()[0]).toMatchObject({ count: 3, standing: false });
  });
  test('one of two signals of a message', () => {
    const two = [
      binding({ payload: valueOnly, id: 'l/s/a' }),
      binding({ payload: { kind: 'json', value: '/w' }, id: 'l/s/b', signal: 1 }),
    ];
    const { send, intake } = scene(two);
    send({ v: 1 });
    expect(intake.refused()).toMatchObject([
      { standing: true, messages: [{ cause: 'no-value', signal: 'l/s/b' }] },
    ]);
  });
  test('a value of a wildcard that may not have a signal', () => {
    const { send, intake } = scene([binding({ filter: 'bench/+/t' })]);
    send('1', { topic: 'bench/a/t' });
    expect(intake.refused()).toMatchObject([
      { topic: 'bench/a/t', messages: [{ cause: 'instance-refused', signal: null, begins: '1' }] },
    ]);
  });
  test('what is good, uncertain, late or said bad by the sensor is not there', () => {
    const { send, intake } = scene([
      binding({ payload: { kind: 'json', value: '/v', quality: '/q' } }),
    ]);
    send({ v: 1, q: 'good' });
    send({ v: 1, q: 'bad' });
    send({ v: 1, q: 'perhaps' });
    expect(intake.refused()).toEqual([]);
  });
});
