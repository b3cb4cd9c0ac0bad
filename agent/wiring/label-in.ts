/** A label's texts filled in, in a language. English comes filled; German is made here. */
import { doNotSentence, type Label } from '#rules/alarm/label.ts';
import { clockText, quantityText, spanText } from '#rules/alarm/say.ts';
import type { AlarmView, LabelFact } from '../web/contract.ts';

/** Its do-nots whole sentences. `timezone`: of the site. A label that nobody translated stays English. */
export function labelIn(label: AlarmView['label'], language: 'en' | 'de', timezone: string): Label {
  const german = label.template?.german;
  if (language === 'en' || german === undefined)
    return {
      word: label.word,
      sentence: label.sentence,
      consequence: label.consequence,
      steps: label.steps,
      doNot: label.do_not.map(doNotSentence),
      caution: label.caution,
    };
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
