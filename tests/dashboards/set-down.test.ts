/** What is put aside and what is closed, in whole sentences: by a person, and at the box itself. */
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { AlarmView, AsideView, SignalView } from '#agent/web/contract.ts';
import { asideLine, asideNow } from '../../dashboards/parts/aside-words.ts';
import { closedText } from '../../dashboards/parts/closed-words.ts';
import { clock } from '../../dashboards/text/clock.ts';
import { speak } from '../../dashboards/text/language.ts';
import { alarm, now, signal } from '../agent/web/fake-ports.ts';

vi.stubGlobal('document', { documentElement: { dataset: {}, lang: 'en' } });
afterEach(() => speak('en'));

const aside = (over: Partial<AsideView> = {}): AsideView => ({
  rule: 'l/o/hot',
  line: 'l',
  station: 'o',
  signal: 'l/o/surface',
  occurrence: null,
  state: 'out-of-service',
  stands: true,
  priority: 'high',
  since: now,
  until: null,
  one_shot: false,
  by: 'local',
  reason: '',
  ...over,
});

describe('a line of what is put aside', () => {
  const until = now + 3_600_000;
  test.each([
    [{}, 'Out of service, at this machine, until brought back: O, Hot.'],
    [{ by: 'Kim' }, 'Out of service, by Kim, until brought back: O, Hot.'],
    [{ until }, `Out of service, at this machine, until ${clock(until, now)}: O, Hot.`],
    [{ until, state: 'shelved' }, `Put aside at this machine until ${clock(until, now)}: O, Hot.`],
    [
      { until, state: 'shelved', by: 'Kim' },
      `Put aside by Kim until ${clock(until, now)}: O, Hot.`,
    ],
  ] as const)('%j', (over, said) => {
    expect(asideLine(aside(over), now)).toBe(said);
  });
  test('in German', async () => {
    await speak('de');
    expect(asideLine(aside({ until, state: 'shelved' }), now)).toMatch(
      /^Zurückgestellt an diesem Gerät bis /,
    );
  });
});

describe('what it is like beneath', () => {
  const of = (over: Partial<SignalView>): ReadonlyMap<string, SignalView> =>
    new Map([['l/o/surface', { ...signal('l/o/surface'), ...over }]]);
  const lost = { at: now - 60_000, expect_every_ms: 1_000 };
  test('its condition holds while its sensor reads', () => {
    expect(asideNow(aside(), of({ at: now }), now)).toBe('Its condition holds now.');
    expect(asideNow(aside({ stands: false }), of({ at: now }), now)).toBeNull();
  });
  test.each([
    lost,
    { at: now, quality: { grade: 'bad', cause: 'sensor fault' } } as Partial<SignalView>,
  ])('of %j nobody can tell', (over) => {
    expect(asideNow(aside(), of(over), now)).toBe('Its sensor gives no usable reading.');
    expect(asideNow(aside({ stands: false }), of(over), now)).toContain('no usable reading');
  });
});

describe('a closed alarm', () => {
  type Step = AlarmView['transitions'][number];
  const step = (
    transition: Step['transition'],
    by: string | null,
    reason: string | null,
  ): Step => ({
    ...alarm().transitions[0]!,
    at: now,
    transition,
    by,
    reason,
  });
  const closed = (...transitions: Step[]): string | null =>
    closedText(alarm({ state: 'normal', transitions }), now);
  const at = clock(now, now);
  test('says when, by whom and why', () => {
    const over = step('returned', null, null);
    expect(closed(over, step('reset', 'Kim', 'looked, cold'))).toBe(
      `Closed ${at} by Kim: looked, cold`,
    );
    expect(closed(over, step('reset', 'local', 'looked, cold'))).toBe(
      `Closed ${at} at this machine: looked, cold`,
    );
    expect(closed(over, step('acknowledged', 'Kim', null))).toBe(`Closed ${at} by Kim.`);
    expect(closed(step('acknowledged', 'Kim', null), over)).toBe(`Closed ${at}: it was over.`);
  });
  test('one that stands says nothing of the kind', () => {
    expect(closedText(alarm(), now)).toBeNull();
  });
});
