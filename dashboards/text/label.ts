/**
 * A label's words in the reader's units: the wire brings each text with its placeholders and what
 * they stand for; a text without stands as the agent filled it.
 */
import { doNotSentence, ownDoNotInGerman } from '#rules/alarm/label.ts';
import type { AlarmView, LabelFact, RuleView } from '../../agent/web/contract.ts';
import { nameOf } from '../state/session.ts';
import { clock, span } from './clock.ts';
import { languageNow } from './language.ts';
import { spokenId } from './names.ts';
import { plainQuantity, quantity } from './quantity.ts';
import { say } from './say.ts';

type Template = NonNullable<AlarmView['label']['template']>;

function factText(name: string, fact: LabelFact, now: number): string {
  switch (fact.kind) {
    case 'quantity':
      return plainQuantity(fact.value, fact);
    case 'reading':
      // A limit is told as under its ruler.
      return fact.digits === null || name === 'limit'
        ? plainQuantity(fact.value, fact)
        : quantity(fact.value, fact, 10 ** -fact.digits);
    case 'duration':
      return span(fact.ms);
    case 'clock':
      return clock(fact.at, now);
    case 'text':
      if (languageNow() === 'de' && fact.german !== undefined) return spokenId(fact.german);
      return name === 'setter' ? nameOf(fact.text) : spokenId(fact.text);
  }
}

const fill = (text: string, { facts, at }: Pick<Template, 'facts' | 'at'>): string =>
  text.replace(/\{\$([^}]*)\}/g, (_, name: string) => {
    const fact = facts[name];
    return fact === undefined ? say('unknownFact') : factText(name, fact, at);
  });

/** `lang` is empty, so not known, of what the site wrote itself, where this page does not speak English. */
export interface Words {
  readonly text: string;
  readonly lang?: '';
}

export interface LabelWords {
  readonly consequence: Words;
  readonly steps: readonly Words[];
  /** Whole sentences. */
  readonly doNot: readonly Words[];
  readonly caution: Words;
}

/** As this page speaks; what nobody translated stays as it is. */
function spoken(english: string, german: string | undefined): Words {
  if (languageNow() === 'en') return { text: english };
  return german === undefined || german === english
    ? { text: english, lang: '' }
    : { text: german };
}

const asWords = (text: string): Words => ({ text: spokenId(text) });

export function alarmSentence({ label }: AlarmView): Words {
  const { template } = label;
  if (template === undefined) return asWords(label.sentence);
  const { text, ...rest } = spoken(template.sentence, template.german?.sentence);
  return { ...rest, text: fill(text, template) };
}

type RuleTemplate = NonNullable<RuleView['template']>;

function filledWords(template: RuleTemplate, at: number): LabelWords {
  const { german } = template;
  const one = (english: string, other: string | undefined): Words => {
    const { text, ...rest } = spoken(english, other);
    return { ...rest, text: fill(text, { facts: template.facts, at }) };
  };
  const doNotOf = (what: string, other: string | undefined): Words => {
    const words = one(doNotSentence(what), other);
    return other === ownDoNotInGerman(what) && languageNow() !== 'en'
      ? { ...words, lang: '' }
      : words;
  };
  return {
    consequence: one(template.consequence, german?.consequence),
    steps: template.steps.map((step, i) => one(step, german?.steps[i])),
    doNot: template.do_not.map((what, i) => doNotOf(what, german?.do_not[i])),
    caution: one(template.caution, german?.caution),
  };
}

interface Filled {
  readonly consequence: string;
  readonly steps: readonly string[];
  readonly do_not: readonly string[];
  readonly caution?: string | undefined;
}

/** As the agent filled them in. */
const plainWords = ({ consequence, steps, do_not: doNot, caution = '' }: Filled): LabelWords => ({
  consequence: asWords(consequence),
  steps: steps.map(asWords),
  doNot: doNot.map(doNotSentence).map(asWords),
  caution: asWords(caution),
});

export const labelWords = ({ label }: AlarmView): LabelWords =>
  label.template === undefined ? plainWords(label) : filledWords(label.template, label.template.at);

/** What a rule is there for and what is to be done, in the reader's units. */
export const ruleWords = (rule: RuleView): LabelWords =>
  rule.template === undefined ? plainWords(rule) : filledWords(rule.template, 0);
