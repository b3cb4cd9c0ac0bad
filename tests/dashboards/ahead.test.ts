/** An alarm raised before the clock was set back has a time that is still to come: the page says so. */
import { afterEach, expect, test, vi } from 'vitest';
import { alarm, now } from '../agent/web/fake-ports.ts';

vi.stubGlobal('document', { documentElement: { dataset: {}, lang: 'en' } });
const { whenText } = await import('../../dashboards/parts/alarm-facts.tsx');
const { speak } = await import('../../dashboards/text/language.ts');
afterEach(() => speak('en'));

const hourMs = 3_600_000;

function since(raised: number): string {
  const one = alarm({ raised, state: 'unacknowledged', returned: null });
  const evidence = { ...one.evidence, since: null, earliest: null, latest: null };
  return whenText({ ...one, evidence, judgeable: true }, undefined, now, false);
}

test('ahead by more than clocks differ by: it is said, in either language', async () => {
  expect(since(now - hourMs)).toMatch(/^Since [^,:]*\d\d:\d\d\.$/);
  // The page's own clock is rounded and may lag.
  expect(since(now + 20_000)).toMatch(/^Since [^,:]*\d\d:\d\d\.$/);
  expect(since(now + 2 * hourMs)).toMatch(
    /^Since .+ by a clock that was set back since: that time is still to come\.$/,
  );
  await speak('de');
  expect(since(now + 2 * hourMs)).toMatch(/noch bevor/);
});
