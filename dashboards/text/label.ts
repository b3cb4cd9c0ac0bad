/**
 * A label's words in the reader's units: the wire brings each text with its placeholders and what
 * they stand for; a text without stands as the agent filled it.
 */
import type { AlarmView, LabelFact, RuleView } from '../../agent/web/contract.ts';
import { nameOf } from '../state/session.ts';
import { clock, span } from './clock.ts';
import { spokenId } from './names.ts';
import { plainQuantity, quantity } from './quantity.ts';

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
      return name === 'setter' ? nameOf(fact.text) : spokenId(fact.text);
  }
}

const fill = (text: string, { facts, at }: Pick<Template, 'facts' | 'at'>): string =>
  text.replace(/\{\$([^}]*)\}/g, (_, name: string) => {
    const fact = facts[name];
    return fact === undefined ? 'unknown' : factText(name, fact, at);
  });

export const alarmSentence = ({ label }: AlarmView): string =>
  label.template === undefined
    ? spokenId(label.sentence)
    : fill(label.template.sentence, label.template);

export interface LabelWords {
  readonly consequence: string;
  readonly steps: readonly string[];
  readonly doNot: readonly string[];
  readonly caution: string;
}

export function labelWords({ label }: AlarmView): LabelWords {
  const { template } = label;
  if (template === undefined) return { ...label, doNot: label.do_not };
  return {
    consequence: fill(template.consequence, template),
    steps: template.steps.map((step) => fill(step, template)),
    doNot: template.do_not.map((each) => fill(each, template)),
    caution: fill(template.caution, template),
  };
}

/**
 * A do-not of a label, which the agent wrote in English: English as a whole, whatever the page
 * speaks. The worker, which must stay one file, has its own.
 */
export const doNotSentence = (what: string): string => `Do not ${what}.`;

/** What a rule is there for, in the reader's units. */
export const ruleConsequence = ({ consequence, template }: RuleView): string =>
  template === undefined
    ? consequence
    : fill(template.consequence, { facts: template.facts, at: 0 });
