/**
 * Which language the page speaks. English comes with the page; another catalogue is fetched when it
 * is first wanted, and is spoken only once it is whole.
 */
import { en } from './en.ts';
import { ownOf } from './lookup.ts';
import type { Translation } from './translation.ts';

export type Language = 'en' | 'de';

let language: Language = 'en';
let catalogue: Translation = en;
let phrases: Readonly<Record<string, string>> = {};
/** What the rules say, by its English. */
let said: (english: string) => string | null = () => null;

export const languageNow = (): Language => language;
export const catalogueNow = (): Translation => catalogue;

/** The first of the browser's languages that the page has; English where it has none of them. */
export function languageOf(wanted: readonly string[]): Language {
  for (const each of wanted) {
    const [name] = each.toLowerCase().split('-');
    if (name === 'de' || name === 'en') return name;
  }
  return 'en';
}

/** A number written with a point, as the language writes it. */
export const localNumber = (text: string): string =>
  language === 'de' ? text.replace('.', ',') : text;

/** A fixed phrase of the agent, or several with semicolons between, in this language; null where it is not known. */
export function phraseOf(text: string): string | null {
  const parts = text.split('; ');
  const whole = ownOf(phrases, text) ?? said(text);
  if (whole !== null) return whole;
  const known = parts.flatMap((part) => ownOf(phrases, part) ?? []);
  return known.length === parts.length ? known.join('; ') : null;
}

/** What the rules say beside alarms, once it has come; English stays English until then. */
export function readBook(book: (english: string) => string | null): void {
  said = book;
}

/** Speaks it from now on. Throws where its catalogue cannot be fetched; then nothing changes. */
export async function speak(next: Language): Promise<void> {
  const other = next === 'de' ? await import('./de.ts') : null;
  catalogue = other?.de ?? en;
  phrases = other?.phrases ?? {};
  // Of the language before.
  said = () => null;
  language = next;
  document.documentElement.lang = next;
}
