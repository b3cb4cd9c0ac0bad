/** suppress_while and shelving, from the words of a site to its plan and its cards. */
import { describe, expect, test } from 'vitest';
import { compileSite } from '#rules/plan/compile.ts';
import { pathText } from '#rules/site/problem.ts';
import { type SiteWritten, siteWritten } from '#rules/site/schema.ts';
import { compiled, signalLine, siteOf } from './site.ts';

const own = (more: string, word = 'NOTICE', managed = false): string =>
  `{ kind: band, signal: t, high: 30 Cel, priority: low, consequence: c, actions: [a], signal_word: ${word}, highly_managed: ${managed}, ${more} }`;

const site = (rule: string, station = ''): string => `
l:
  s:
    kind: custom
    signals:
      t: ${signalLine('t', 'Cel')}
      speed: ${signalLine('v', 'm/min')}
    marks:
      begun: { what: none, meaning: Cleaning begins. }
      done: { what: none, meaning: Cleaning is over. }
      racked: { what: rack, meaning: A rack comes. }
    ${station}
    rules:
      warm: ${rule}
`;
const stands = 'suppress_while: { signal: speed, high: 0.1 m/min, because: the line stands }';
const cleaned = (more = '') =>
  `suppress_while: [{ from: begun, until: done, because: it is cleaned${more} }]`;

const problems = (lines: string): string[] =>
  compiled(lines).problems.map(({ path, problem }) => `${pathText(path)}: ${problem}`);
const suppressOf = (lines: string, rule = 'l/s/warm') => {
  const { plan, problems: found } = compiled(lines);
  expect(found).toEqual([]);
  return plan.rules.find(({ id }) => id === rule)!.suppress;
};

describe('suppress_while', () => {
  test('a signal within bounds, in canonical units', () => {
    const { plan } = compiled(site(own(stands)));
    const speed = plan.signals.findIndex(({ id }) => id === 'l/s/speed');
    expect(suppressOf(site(own(stands)))).toEqual({
      whiles: [
        {
          signal: speed,
          low: Number.NEGATIVE_INFINITY,
          high: expect.closeTo(0.1 / 60, 12),
          because: 'the line stands',
        },
      ],
      offDelayMs: 0,
    });
  });

  test('from one mark to another, 8 h at most unless the site says otherwise', () => {
    const whiles = (text: string) => suppressOf(site(own(text)))!.whiles;
    const from = { from: 'l/s/begun', until: 'l/s/done', because: 'it is cleaned' };
    expect(whiles(cleaned())).toEqual([{ ...from, atMostMs: 8 * 3_600_000 }]);
    expect(whiles(cleaned(', at_most: 2 h'))).toEqual([{ ...from, atMostMs: 2 * 3_600_000 }]);
    expect(suppressOf(site(own(cleaned(', settle: 10 min'))))!.offDelayMs).toBe(600_000);
  });

  test('its card says all of it', () => {
    const { rules } = compiled(site(own(stands)));
    expect(rules.find(({ id }) => id === 'l/s/warm')!.suppress).toEqual([
      {
        because: 'the line stands',
        signedBy: null,
        signal: 'l/s/speed',
        low: null,
        high: expect.closeTo(0.1 / 60, 12),
        from: null,
        until: null,
        atMostMs: null,
      },
    ]);
  });

  test.each([
    [
      'no such signal',
      own('suppress_while: { signal: sped, high: 1 m/min, because: b }'),
      '.signal: this station has no signal "sped"',
    ],
    [
      'no bounds',
      own('suppress_while: { signal: speed, because: b }'),
      ': suppress_while without low and high always suppresses',
    ],
    [
      'a mark of racks',
      own('suppress_while: { from: racked, until: done, because: b }'),
      '.from: "racked" happens to a rack, not to the station',
    ],
    [
      'one mark twice',
      own('suppress_while: { from: done, until: done, because: b }'),
      ': it begins and ends with the same mark',
    ],
    [
      'no end',
      own(cleaned(', at_most: 8 d')),
      '.at_most: a stretch between marks has an end, after 7 d at most',
    ],
    [
      'people, nobody answers',
      own(stands, 'WARNING'),
      ': people can be hurt by what this rule watches, and nobody answers for silencing it',
    ],
    [
      'highly managed',
      own(stands, 'NOTICE', true),
      ': this alarm is highly managed: nothing suppresses it',
    ],
  ])('refused: %s', (_, rule, why) => {
    expect(problems(site(rule))).toEqual([`lines.l.s.rules.warm.suppress_while${why}`]);
  });

  test('what can hurt people is suppressed where its rule says so and somebody answers', () => {
    const signed = `suppress_while: { signal: speed, high: 0.1 m/min, because: locked off, signed_by: EHS 12 }`;
    expect(problems(site(own(signed, 'WARNING')))).toEqual([]);
  });

  test('a station’s own goes for its process alarms alone', () => {
    const all = (word: string, managed = false) =>
      compiled(site(own('on_delay: 0 s', word, managed), stands)).plan.rules.map(
        ({ id, suppress }) => `${id} ${suppress?.whiles.length ?? 0}`,
      );
    expect(all('NOTICE')).toContain('l/s/warm 1');
    expect(all('WARNING')).toContain('l/s/warm 0');
    expect(all('NOTICE', true)).toContain('l/s/warm 0');
    const station = `
l:
  s:
    kind: custom
    ${stands}
    signals:
      t: { topic: t, payload: { kind: plain }, unit: Cel, expect_every: 60 s }
      speed: ${signalLine('v', 'm/min')}
`;
    expect(suppressOf(station, 'l/s/lost-t')).toBeUndefined();
  });
});

describe('shelving', () => {
  const most = (shelving: SiteWritten['shelving']) =>
    compileSite({ ...siteOf(site(own(stands))), shelving }, {}, {}, 'r');

  test('the site’s lengths, the usual ones for the rest', () => {
    expect(most({ medium: '4 h' }).plan.shelving).toEqual({
      high: 3_600_000,
      medium: 4 * 3_600_000,
      low: 86_400_000,
    });
    expect(most(undefined).plan.shelving).toBeUndefined();
  });

  test.each(['0 s', '8 d', 'long'])('%s is no length of a shelf', (low) => {
    expect(most({ low }).problems.map(({ path }) => path)).toEqual([['shelving', 'low']]);
  });

  test('a word nobody knows is refused', () => {
    const { lines } = siteOf(site(own(stands)));
    const bad = { site: 'w', timezone: 'UTC', shelving: { urgent: '1 h' }, lines };
    expect(siteWritten.safeParse(bad).success).toBe(false);
  });
});
