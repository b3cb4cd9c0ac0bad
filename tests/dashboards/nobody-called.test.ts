/** An alarm that reached nobody says so, and one that is not judged any more is not said to be over. */
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { AlarmView } from '#agent/web/contract.ts';
import { endedBy } from '#rules/alarm/ended-by.ts';
import { areAllUntold, isUntold } from '../../dashboards/judge/reached.ts';
import { alarm, now, signal } from '../agent/web/fake-ports.ts';

vi.stubGlobal('document', { documentElement: { dataset: {}, lang: 'en' } });
const { whenText } = await import('../../dashboards/parts/alarm-facts.tsx');
const { closedText } = await import('../../dashboards/parts/closed-words.ts');
const { transitionText } = await import('../../dashboards/parts/transition-words.ts');
const { say } = await import('../../dashboards/text/say.ts');
const { speak } = await import('../../dashboards/text/language.ts');
afterEach(() => speak('en'));

type Step = AlarmView['transitions'][number];
const minuteMs = 60_000;
const step = (over: Partial<Step>): Step => ({ ...alarm().transitions[0]!, ...over });
const told = (over: Partial<AlarmView['told'][number]> = {}): AlarmView['told'][number] => ({
  ...{ at: now, person: 'p-1', to: null, channel: 'push', kind: 'alarm' },
  ...{ outcome: 'delivered', cause: null },
  ...over,
});

describe('an alarm that nobody answered', () => {
  const untold = (over: Partial<AlarmView>, ms = 2 * minuteMs): boolean =>
    isUntold(alarm(over), now + ms);
  test('reached nobody: a message would have arrived by now', () => {
    expect([untold({}), untold({}, 30_000)]).toEqual([true, false]);
    expect(untold({ told: [told({ outcome: 'given-up' })] })).toBe(true);
    expect(untold({ told: [told({ kind: 'over' })] })).toBe(true);
    expect(untold({ state: 'latched-unacknowledged' })).toBe(true);
  });
  test('reached somebody, is answered, or over', () => {
    expect(untold({ told: [told({ outcome: 'gone' }), told()] })).toBe(false);
    for (const state of ['acknowledged', 'returned-unacknowledged', 'shelved', 'normal'] as const)
      expect(untold({ state })).toBe(false);
  });
  test('of several it is said once where none reached anybody', () => {
    const one = alarm({ occurrence: 'r@1' });
    const other = alarm({ occurrence: 's@1' });
    const later = now + 2 * minuteMs;
    expect(areAllUntold([one, other], later)).toBe(true);
    expect(areAllUntold([one, other, alarm({ raised: later - 1 })], later)).toBe(true);
    expect(areAllUntold([one, other, alarm({ told: [told()] })], later)).toBe(false);
    expect(areAllUntold([one, other, alarm({ state: 'acknowledged' })], later)).toBe(true);
    expect(areAllUntold([one], later)).toBe(false);
  });
  test('was told again only where that reached somebody since', () => {
    const [again, late] = [1, 0].map((n) => step({ at: now, transition: 'realarmed', again: n }));
    const before = told({ at: now - minuteMs });
    expect(transitionText(again!, { told: [told()] })).toBe(say('toldAgain'));
    expect(transitionText(again!, { told: [before] })).toMatch(/reached nobody$/);
    expect(transitionText(late!, { told: [] })).toMatch(/reached nobody$/);
  });
});

describe('an alarm whose rule is not judged any more', () => {
  const unjudged = step({ at: now, transition: 'returned', reason: endedBy.gate });
  const evidence = { ...alarm().evidence, limit: 0.51, side: 'low', unit: 'm/s' } as const;
  const air = { ...signal('air'), unit: 'm/s', value: 0.3, expect_every_ms: null } as const;
  const one = (over: Partial<AlarmView>): AlarmView =>
    alarm({ evidence, returned: now, state: 'returned-unacknowledged', ...over });
  test('is no alarm that went back', async () => {
    for (const state of ['returned-unacknowledged', 'latched-acknowledged', 'normal'] as const) {
      const said = whenText(one({ state, transitions: [unjudged] }), air, now, false, false);
      expect(said).toMatch(/^Not judged since .* nobody can tell\.$/);
    }
    expect(transitionText(unjudged, { told: [] })).toMatch(/^Not judged any more/);
    expect(closedText(one({ state: 'normal', transitions: [unjudged] }), now)).toMatch(
      /not judged since then\. That is no all-clear\.$/,
    );
    await speak('de');
    expect(transitionText(unjudged, { told: [] })).toMatch(/^Nicht mehr beurteilt/);
  });
  test('its reading is past nothing while nobody judges it', () => {
    const back = one({ transitions: [step({ transition: 'returned' })] });
    expect(whenText(back, air, now, false, true)).toMatch(/is past 0\.51.m\/s again/);
    expect(whenText(back, air, now, false, false)).toMatch(/^Over since/);
  });
});
