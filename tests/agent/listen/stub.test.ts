import { describe, expect, test } from 'vitest';
import { stubLines } from '#agent/listen/stub.ts';
import { TopicBook } from '#agent/listen/topic-book.ts';
import { readSiteText } from '#agent/site/read-site.ts';

const start = Date.UTC(2026, 10, 25, 8);

function heard(messages: readonly (readonly [topic: string, payload: string])[], everyMs = 10_000) {
  const book = new TopicBook(100);
  for (let round = 0; round < 3; round += 1)
    for (const [topic, payload] of messages)
      book.hear(topic, Buffer.from(payload), false, start + round * everyMs);
  return book.topics();
}

async function soundSite(lines: readonly string[] | null) {
  const read = await readSiteText((lines ?? []).join('\n'), 'site.yaml', () => {
    throw new Error('a stub has no material sheets');
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.source.site;
}

describe('the beginning of a site file', () => {
  test('binds every value, and is sound as it stands', async () => {
    const lines = stubLines(
      heard([
        ['mounts-1/store-1/air', '64.2'],
        ['mounts-1/mixer-1/state', '{"rpm":25.1,"in_use":1}'],
        ['mounts-1/press-1/mould', '{"value":322,"unit":"degF"}'],
        ['Plant A/Oven (2)/Zone 1/temp', `{"v":81.2,"t":${start}}`],
        ['humidity', '48'],
        ['door', 'open'],
      ]),
    );
    const site = await soundSite(lines);
    const signals = Object.entries(site.lines).flatMap(([line, stations]) =>
      Object.entries(stations).flatMap(([station, { signals }]) =>
        Object.keys(signals ?? {}).map((name) => `${line}/${station}/${name}`),
      ),
    );
    expect(signals.sort()).toEqual([
      'line-1/unsorted/humidity',
      'mounts-1/mixer-1/state-in-use',
      'mounts-1/mixer-1/state-rpm',
      'mounts-1/press-1/mould',
      'mounts-1/store-1/air',
      'plant-a/oven-2/zone-1-temp',
    ]);
    expect(site.lines['plant-a']!['oven-2']!.signals!['zone-1-temp']).toMatchObject({
      payload: { kind: 'json', value: '/v', time: '/t' },
      unit: '1',
      expect_every: '10 s',
    });
    expect(site.lines['mounts-1']!['press-1']!.signals!.mould).toMatchObject({
      // "degF" is no UCUM code: followed, it would refuse every message.
      payload: { kind: 'json', value: '/value' },
      unit: '[degF]',
    });
  });
  test('begins with what must be asked', () =>
    expect(stubLines(heard([['a/b/c', '1']]))![0]).toBe('# Fill in before anything is fitted:'));
  test('where two units fit it asks, with both in comment lines, and guesses none', async () => {
    const lines = stubLines(heard([['line/booth/filter-dp', '95.5']]))!;
    const from = lines.findIndex((line) => line.includes('Which unit?'));
    expect(lines.slice(from, from + 6)).toEqual([
      '          # Which unit? pressure drop: "dp" in its name; 95.5 would fit Pa or mbar or mm[H2O]. Ask, or read the',
      '          # data sheet; keep one of these instead of unit: "1", or write another:',
      '          #   unit: "Pa"',
      '          #   unit: "mbar"',
      '          #   unit: "mm[H2O]"',
      '          unit: "1" # not known yet: see above',
    ]);
    // Each of them, put in, is sound.
    for (const unit of ['"Pa"', '"mbar"', '"mm[H2O]"'])
      await soundSite(lines.map((line) => line.replace('unit: "1"', `unit: ${unit}`)));
  });
  test('a unit pointer only where the payload writes UCUM', async () => {
    const of = async (unit: string) => {
      const site = await soundSite(stubLines(heard([['a/b/c', `{"value":7,"unit":"${unit}"}`]])));
      return site.lines.a!.b!.signals!.c;
    };
    expect(await of('bar')).toMatchObject({ payload: { unit: '/unit' }, unit: 'bar' });
    expect((await of('barg'))?.payload).not.toHaveProperty('unit');
  });
  test('topics that would get one name get two', async () => {
    const site = await soundSite(
      stubLines(
        heard([
          ['a/b/x y', '1.5'],
          ['a/b/x-y', '2.5'],
        ]),
      ),
    );
    expect(Object.keys(site.lines.a!.b!.signals!)).toEqual(['x-y', 'x-y-2']);
  });
  test('a topic that would break a line or a quote stays in its quotes', async () => {
    const topic = 'a/b/"; : \u0001 x';
    const site = await soundSite(stubLines(heard([[topic, '1.5']])));
    expect(Object.values(site.lines.a!.b!.signals!)[0]!.topic).toBe(topic);
  });
  test('nothing to bind is no file', () => expect(stubLines(heard([['a', 'open']]))).toBeNull());
});

describe('what was heard', () => {
  test('rate, range and the last value', () => {
    const book = new TopicBook(10);
    for (const [second, text] of [
      [0, '1'],
      [4, '3'],
      [8, '2'],
    ] as const)
      book.hear('t', Buffer.from(text), false, start + second * 1_000);
    const [topic] = book.topics();
    expect(topic).toMatchObject({ messages: 3, everyS: 4, isRetainedOnly: false });
    expect(topic!.values).toMatchObject([{ last: 2, least: 1, most: 3 }]);
  });
  test('a retained message is an old value and no rhythm', () => {
    const book = new TopicBook(10);
    book.hear('t', Buffer.from('1'), true, start);
    expect(book.topics()[0]).toMatchObject({ everyS: null, isRetainedOnly: true });
  });
  test('more topics than it tells apart are counted', () => {
    const book = new TopicBook(2);
    for (const topic of ['a', 'b', 'c', 'c']) book.hear(topic, Buffer.from('1'), false, start);
    expect([book.topics().length, book.passedOver]).toEqual([2, 2]);
  });
  test('one stutter makes it no other kind of sensor', () => {
    const book = new TopicBook(2);
    for (const text of ['1.5', 'error', '2.5']) book.hear('a', Buffer.from(text), false, start);
    expect(book.topics()[0]!.look.kind).toBe('plain');
  });
});
