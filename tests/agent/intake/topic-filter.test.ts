import { expect, test } from 'vitest';
import { FilterTree, instanceNamed } from '#agent/intake/topic-filter.ts';

// Source: MQTT 3.1.1, 4.7.1.3 (non-normative examples) and 4.7.2, as far as they use `+` alone.
const meets: readonly (readonly [filter: string, topic: string, meets: boolean])[] = [
  ['sport/tennis/+', 'sport/tennis/player1', true],
  ['sport/tennis/+', 'sport/tennis/player2', true],
  ['sport/tennis/+', 'sport/tennis/player1/ranking', false],
  ['sport/+', 'sport', false],
  ['sport/+', 'sport/', true],
  ['+/+', '/finance', true],
  ['/+', '/finance', true],
  ['+', '/finance', false],
  ['+', 'finance', true],
  ['sport/+/player1', 'sport/tennis/player1', true],
  ['+/monitor/Clients', '$SYS/monitor/Clients', false],
  ['$SYS/monitor/+', '$SYS/monitor/Clients', true],
  ['ACCOUNTS', 'Accounts', false],
];
test.each(meets)('%s and %s: %s', (filter, topic, met) => {
  const tree = new FilterTree<string>();
  tree.add(filter, filter);
  tree.add('elsewhere/+/t', 'another');
  expect(tree.match(topic)).toEqual(met ? [filter] : []);
});

test('every filter that a topic meets is found', () => {
  const tree = new FilterTree<string>();
  const filters = ['a/+/t', '+/b/t', 'a/b/+', 'a/b/t', 'a/+/+', 'a/c/t'];
  for (const filter of filters) tree.add(filter, filter);
  expect(tree.match('a/b/t').sort()).toEqual(filters.filter((f) => f !== 'a/c/t').sort());
});

test.each([
  ['bench/cell-3/t', [1], 'cell-3'],
  ['bench/Cell_3/t', [1], 'cell-3'],
  ['bench/ Zelle 3 (oben)/t', [1], 'zelle-3-oben'],
  ['bench/a/b', [1, 2], 'a--b'],
  ['bench/a-b/c', [1, 2], 'a-b--c'],
  ['bench/a/b-c', [1, 2], 'a--b-c'],
  ['bench//t', [1], null],
  ['bench/--/t', [1], null],
  ['bench/温度/t', [1], null],
  [`bench/${'x'.repeat(48)}/t`, [1], 'x'.repeat(48)],
  [`bench/${'x'.repeat(49)}/t`, [1], null],
])('%s names %j as %j', (topic, levels, instance) => {
  expect(instanceNamed(topic, levels)).toBe(instance);
});
