/** What the reader chose: language, units, when shifts change, sound, light or dark. Kept on this phone. */
import type { ReaderUnits } from '#rules/alarm/reader-units.ts';
import { type Language, languageNow, languageOf, readBook, speak } from '../text/language.ts';
import { tellListeners, useTold } from './board.ts';

export interface Preferences extends ReaderUnits {
  readonly language: 'system' | Language;
  readonly sound: 'off' | 'on';
  readonly ground: 'system' | 'light' | 'dark';
  /** Minutes after midnight, site time, at which shifts change; ascending. null: as the site says. */
  readonly shiftsMin: readonly number[] | null;
}

export const usual: Preferences = {
  temperature: 'Cel',
  pressure: 'bar',
  smallLength: 'um',
  speed: 'm',
  language: 'system',
  sound: 'off',
  ground: 'system',
  shiftsMin: null,
};

const place = 'forebond.reader';

function read(): Preferences {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(place) ?? '{}');
    return typeof kept === 'object' && kept !== null ? { ...usual, ...kept } : usual;
  } catch {
    return usual; // nothing kept, or storage is closed to this page
  }
}

let preferences = read();

export const readPreferences = (): Preferences => preferences;
export const usePreferences = (): Preferences => useTold(readPreferences);

/** Light and dark are one attribute; absent, the system decides. */
export function showGround(): void {
  const { ground } = preferences;
  if (ground === 'system') delete document.documentElement.dataset.ground;
  else document.documentElement.dataset.ground = ground;
}

export function choose(change: Partial<Preferences>): void {
  preferences = { ...preferences, ...change };
  try {
    localStorage.setItem(place, JSON.stringify(preferences));
  } catch {
    // Storage is closed: the choice holds until the page is left.
  }
  showGround();
  tellListeners();
}

/** Speaks the chosen language, or the browser's. false: it could not be fetched, the page speaks on as before. */
export async function speakChosen(): Promise<boolean> {
  const { language } = preferences;
  const wanted = language === 'system' ? languageOf(navigator.languages) : language;
  if (wanted === languageNow()) return true;
  try {
    await speak(wanted);
  } catch {
    return false; // the reader view says so
  }
  tellListeners();
  if (wanted === 'de') void readGerman();
  return true;
}

/** After the first word: alarms bring their own German, the rest stays marked as English until it has come. */
async function readGerman(): Promise<void> {
  try {
    const { germanOf } = await import('#rules/german/all.ts');
    // The reader may have gone back meanwhile.
    if (languageNow() === 'de') readBook(germanOf);
    tellListeners();
  } catch {
    // No link: it stays marked as English.
  }
}
