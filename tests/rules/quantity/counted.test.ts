import { expect, test } from 'vitest';
import { counted } from '#rules/quantity/counted.ts';

test.each([
  [0, '0 rules'],
  [1, '1 rule'],
  [2, '2 rules'],
  [1.5, '1.5 rules'],
])('%d', (count, words) => expect(counted(count, 'rule')).toBe(words));

test('a word with a plural of its own', () => {
  expect(counted(1, 'person', 'people')).toBe('1 person');
  expect(counted(3, 'person', 'people')).toBe('3 people');
});
