/** What stands at the top of the page of a box that is ill is read at a glance, in either language. */
import { afterEach, expect, test, vi } from 'vitest';
import { begunAnewWords, findingWords } from '#agent/wiring/finding-words.ts';
import { faultWords } from '#agent/wiring/site-desk.ts';
import { briefOf, firstWordsMax, isShort, partName } from '../../dashboards/text/ill.ts';
import { speak } from '../../dashboards/text/language.ts';
import { spokenId } from '../../dashboards/text/names.ts';
import { say } from '../../dashboards/text/say.ts';

vi.stubGlobal('document', { documentElement: { dataset: {}, lang: 'en' } });
afterEach(() => speak('en'));

const aside = 'forebond-unreadable-20261125T093212Z.db';
const unreadable = findingWords({
  kind: 'unreadable',
  movedTo: aside,
  why: 'database disk image is malformed',
  restoredFrom: 'settings-20261125.db',
});
const lost = {
  part: 'record',
  condition: 'out-of-specification',
  note: `${unreadable} ${begunAnewWords}`,
};
const wordsIn = (text: string): number => text.trim().split(/\s+/).length;
const first = (ill: typeof lost): string =>
  say('boxIll', { part: partName(ill.part), note: isShort(ill) ? ill.note : briefOf(ill) });

const parts = ['engine', 'disk', 'record', 'clock', 'mqtt', 'site', 'rules', 'telling'];
const conditions = ['failure', 'function-check', 'out-of-specification', 'maintenance-required'];

test.each(['en', 'de'] as const)('at most 30 words, %s', async (language) => {
  await speak(language);
  expect(wordsIn(lost.note)).toBeGreaterThan(80);
  for (const part of parts)
    for (const condition of conditions)
      for (const note of [lost.note, 'Mend it.', 'word '.repeat(25), 'word '.repeat(26)])
        expect(wordsIn(first({ part, condition, note }))).toBeLessThanOrEqual(firstWordsMax);
});

test('a loss says at once what to look at; what is short stands there whole', async () => {
  expect(first(lost)).toBe(
    'This box needs care: record. Some of what was kept is lost. Look at each place whose alarm stood, and check what stands on hold.',
  );
  const clock = { ...lost, part: 'clock', note: 'Check the time source.' };
  expect(first(clock)).toBe('This box needs care: clock. Check the time source.');
  await speak('de');
  expect(first(lost)).toContain('Sperren prüfen');
});

test('a site file that could not be taken: what runs instead, and that there is something to mend', async () => {
  const fault = { lines: ['site.yaml:13:11 (file): a character is missing, at "uni".'], more: 0 };
  const site = { ...lost, part: 'site', note: faultWords(fault) };
  expect(first(site)).toBe(
    'This box needs care: site file. The site file has a fault; what was accepted last goes on being watched. Tap for what to mend.',
  );
  await speak('de');
  expect(first(site)).toContain('Werksdatei hat einen Fehler');
});

test('a rule inside a note is called by its name; a file is no rule', () => {
  const off = 'Switched off by the site file: m/residue-1/stack-hot, signed by A. Byrne: guarded.';
  expect(spokenId(off)).toContain('site file: Residue 1 stack hot, signed');
  expect(spokenId('kinds/own/drum.ts is off.')).toBe('kinds/own/drum.ts is off.');
});
