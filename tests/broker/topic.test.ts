import { describe, expect, it } from 'vitest';
import { filterCovers, filterFault, topicFault, topicMatches } from '#broker/topic.ts';

type Row = readonly [filter: string, topic: string];

describe('examples of MQTT 3.1.1 clause 4.7 (from memory of the text)', () => {
  const matching: Row[] = [
    ['sport/tennis/player1/#', 'sport/tennis/player1'],
    ['sport/tennis/player1/#', 'sport/tennis/player1/ranking'],
    ['sport/tennis/player1/#', 'sport/tennis/player1/score/wimbledon'],
    ['sport/#', 'sport'],
    ['#', 'sport/tennis/player1'],
    ['sport/tennis/+', 'sport/tennis/player1'],
    ['sport/+', 'sport/'],
    ['+/+', '/finance'],
    ['/+', '/finance'],
    ['$SYS/#', '$SYS/broker/uptime'],
    ['$SYS/monitor/+', '$SYS/monitor/Clients'],
  ];
  it.each(matching)('%s matches %s', (filter, topic) => {
    expect(filterFault(filter)).toBeNull();
    expect(topicMatches(filter, topic)).toBe(true);
  });

  const apart: Row[] = [
    ['sport/tennis/+', 'sport/tennis/player1/ranking'],
    ['sport/+', 'sport'],
    ['+', '/finance'],
    ['#', '$SYS/monitor/Clients'],
    ['+/monitor/Clients', '$SYS/monitor/Clients'],
    ['ACCOUNTS', 'Accounts'],
    ['/finance', 'finance'],
    ['finance', 'finance/'],
  ];
  it.each(apart)('%s does not match %s', (filter, topic) => {
    expect(filterFault(filter)).toBeNull();
    expect(topicMatches(filter, topic)).toBe(false);
  });

  it.each(['#', 'sport/tennis/#', '+', '+/tennis/#', 'sport/+/player1', '/', 'a b', '//'])(
    '%s is a valid filter',
    (filter) => expect(filterFault(filter)).toBeNull(),
  );
  it.each(['sport/tennis#', 'sport/tennis/#/ranking', 'sport+'])('%s is not', (filter) =>
    expect(filterFault(filter)).not.toBeNull(),
  );
});

describe('vectors of eclipse-mosquitto/mosquitto@7b8aba10 test/unit/libcommon/topic_test.c', () => {
  const matching: Row[] = [
    ['foo/#', 'foo/'],
    ['foo/#', 'foo'],
    ['foo//bar', 'foo//bar'],
    ['foo//+', 'foo//bar'],
    ['foo/+/+/baz', 'foo///baz'],
    ['foo/bar/+', 'foo/bar/'],
    ['foo/+', 'foo/bar'],
    ['foo/+/baz', 'foo/bar/baz'],
    ['A/B/+/#', 'A/B/B/C'],
    ['foo/+/#', 'foo/bar/baz'],
    ['foo/+/#', 'foo/bar'],
    ['#', 'foo/bar/baz'],
    ['#', '/foo/bar'],
    ['/#', '/foo/bar'],
  ];
  it.each(matching)('%s matches %s', (filter, topic) => {
    expect(filterFault(filter)).toBeNull();
    expect(topicMatches(filter, topic)).toBe(true);
  });

  const apart: Row[] = [
    ['test/6/#', 'test/3'],
    ['foo/bar', 'foo'],
    ['foo/+', 'foo/bar/baz'],
    ['foo/+/baz', 'foo/bar/bar'],
    ['foo/+/#', 'fo2/bar/baz'],
    ['/#', 'foo/bar'],
    ['#', '$SYS/bar'],
    ['$BOB/bar', '$SYS/bar'],
  ];
  it.each(apart)('%s does not match %s', (filter, topic) => {
    expect(filterFault(filter)).toBeNull();
    expect(topicMatches(filter, topic)).toBe(false);
  });

  const invalid = [
    ...['+foo', 'fo+o', 'foo+', '+foo/bar', 'foo+/bar', 'foo/+bar', 'foo/bar+'],
    ...['#foo', 'fo#o', 'foo#', '#foo/bar', 'foo#/bar', 'foo/#bar', 'foo/bar#', 'fo#o/'],
    ...['foo/#a', '#a', 'foo/#abc', '#abc', '/#a', ''],
  ];
  it.each(invalid)('filter %j is invalid', (filter) => expect(filterFault(filter)).not.toBeNull());
  it.each(['', 'foo/+', 'foo/#', '+', '#', 'a+b'])('topic name %j is invalid', (topic) =>
    expect(topicFault(topic)).not.toBeNull(),
  );
});

describe('text of a topic, MQTT 3.1.1 clauses 1.5.3 and 4.7.3 (from memory)', () => {
  const rows: [text: string, fault: string | null][] = [
    ['a\u0000b', 'nul'],
    ['a\uD800b', 'not-utf-8'],
    ['a\uDC00', 'not-utf-8'],
    ['a\uFFFDb', 'not-utf-8'],
    ['\u{1F321}/temp', null],
    ['\uFEFFa', null],
    ['a'.repeat(65_535), null],
    ['a'.repeat(65_536), 'too-long'],
    [`${'é'.repeat(32_767)}a`, null],
    ['é'.repeat(32_768), 'too-long'],
  ];
  it.each(rows.map(([text, fault], i) => [i, fault, text] as const))(
    'row %i: %s',
    (_, fault, text) => {
      expect(topicFault(text)).toBe(fault);
      expect(filterFault(text)).toBe(fault);
    },
  );
  it('a tighter bound is in bytes', () => {
    expect(topicFault('éé', 4)).toBeNull();
    expect(topicFault('ééa', 4)).toBe('too-long');
  });
});

/** Every text of up to `depth` levels over `words`. */
function texts(words: readonly string[], depth: number): string[] {
  let shorter: string[] = [...words];
  const all = [...shorter];
  for (let level = 1; level < depth; level++) {
    shorter = shorter.flatMap((head) => words.map((word) => `${head}/${word}`));
    all.push(...shorter);
  }
  return all;
}

describe('filterCovers, against every topic of a small world', () => {
  const filters = texts(['a', 'b', '+', '#', '$x', ''], 3).filter(
    (f) => filterFault(f) === null && f !== '',
  );
  // "c" is a word no filter knows, and one level more than any filter has.
  const topics = texts(['a', 'b', 'c', '$x', ''], 4).filter((t) => topicFault(t) === null);

  it('says yes exactly when no topic escapes', () => {
    const matched = new Map(filters.map((f) => [f, topics.map((t) => topicMatches(f, t))]));
    let covers = 0;
    for (const outer of filters) {
      const wide = matched.get(outer)!;
      for (const inner of filters) {
        const escapes = matched.get(inner)!.some((hit, i) => hit && !wide[i]);
        if (filterCovers(outer, inner) === escapes) {
          expect.fail(`filterCovers(${outer}, ${inner}) should be ${!escapes}`);
        }
        covers += escapes ? 0 : 1;
      }
    }
    expect(filters.length).toBeGreaterThan(100);
    expect(covers).toBeGreaterThan(filters.length);
  });
});
