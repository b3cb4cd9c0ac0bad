/** One of a thing is said as one on the page. */
import { expect, test } from 'vitest';
import { en } from '../../dashboards/text/en.ts';
import { say } from '../../dashboards/text/say.ts';

test('the page', () => {
  const one = { rule: 'r', clock: '06:00', rate: '0.1' };
  expect(say('mostFrequentEach', { ...one, n: 1 })).toBe('r: once');
  expect(say('byShiftEach', { ...one, n: 1 })).toContain(': 1 alarm,');
  expect(say('byShiftEach', { ...one, n: 2 })).toContain(': 2 alarms,');
  // A number right before a word in the plural needs a form for one.
  const texts = Object.entries(en).filter(([, text]) => typeof text === 'string');
  const bare = texts.filter(([, text]) =>
    /\{\$(n|count|watched|notWatched|unjudged|yes|no)\} [a-z]{2,}s\b/.test(
      String(text).replace(/^\.match .*/, ''),
    ),
  );
  // A password has many.
  expect(bare.map(([id]) => id)).toEqual(['passwordHint']);
});
