/** A label's texts filled in, in a language. English comes filled; German is made here. */
import { doNotSentence, type SignalWord } from '#rules/alarm/label.ts';
import { clockText, quantityText, spanText } from '#rules/alarm/say.ts';
import type { AlarmView, LabelFact } from '../web/contract.ts';

export interface SpokenLabel {
  readonly word: SignalWord;
  readonly sentence: string;
  readonly consequence: string;
  readonly steps: readonly string[];
  /** Whole sentences. */
  readonly doNot: readonly string[];
  readonly caution: string;
}

/** `timezone`: of the site. A label that nobody translated stays English. */
export function labelIn(
  label: AlarmView['label'],
  language: 'en' | 'de',
  timezone: string,
): SpokenLabel {
  const german = label.template?.german;
  if (language === 'en' || german === undefined)
    return { ...label, doNot: label.do_not.map(doNotSentence) };
  const { facts, at } = label.template!;
  const fill = (text: string): string =>
    text.replace(/\{\$([^}]*)\}/g, (_, name: string) => {
      const fact = facts[name];
      return fact === undefined ? 'unbekannt' : factText(fact, timezone, at);
    });
  return {
    word: label.word,
    sentence: fill(german.sentence),
    consequence: fill(german.consequence),
    steps: german.steps.map(fill),
    doNot: german.do_not.map(fill),
    caution: fill(german.caution),
  };
}

/** As German writes a number. */
export const withComma = (number: string): string => number.replace('.', ',');

function factText(fact: LabelFact, timezone: string, now: number): string {
  switch (fact.kind) {
    case 'quantity':
      return withComma(quantityText(fact.value, fact.unit, null));
    case 'reading':
      return withComma(quantityText(fact.value, fact.unit, fact.digits));
    case 'duration':
      return withComma(spanText(fact.ms));
    case 'clock':
      return clockText(fact.at, timezone, now);
    case 'text':
      return fact.german ?? fact.text;
  }
}
