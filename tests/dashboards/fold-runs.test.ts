/** Good runs in a row are folded; one that was not good is never among them. */
import { expect, test } from 'vitest';
import type { RunView } from '#agent/web/contract.ts';
import { foldGood } from '../../dashboards/judge/fold-runs.ts';
import { run } from '../agent/web/fake-run.ts';

const of = (id: string, over: Partial<RunView> = {}): RunView => ({
  ...run(),
  id,
  closed: 1,
  under: false,
  over: false,
  ...over,
});
const folded = (runs: readonly RunView[]): string[] =>
  foldGood(runs).map((group) => group.map(({ id }) => id).join());

test('three and more good ones stand together, two do not', () => {
  expect(folded([of('a'), of('b'), of('c'), of('d')])).toEqual(['a,b,c,d']);
  expect(folded([of('a'), of('b')])).toEqual(['a', 'b']);
});

test.each([
  ['dried too little', { under: true }],
  ['heated too much', { over: true }],
  ['nobody can tell', { under: null }],
  ['still in', { closed: null }],
  ['of another oven', { station: 'oven-9' }],
] as const)('one that was %s parts them', (_, over) => {
  const runs = [of('a'), of('b'), of('c'), of('x', over), of('d'), of('e'), of('f')];
  expect(folded(runs)).toEqual(['a,b,c', 'x', 'd,e,f']);
});
