/**
 * An alarm's sentences in the units a reader asks for. Numbers of their own, as in the evidence,
 * stay canonical: they say their unit beside them.
 */
import { digitsFor, displayOf, type ReaderUnits } from '#rules/alarm/reader-units.ts';
import { clockText, spanText } from '#rules/alarm/say.ts';
import type { AlarmView, LabelFact } from './contract.ts';

export const unitsWords = ['canonical', 'metric', 'us'] as const;
export type UnitsWord = (typeof unitsWords)[number];

const chosen: Readonly<Record<Exclude<UnitsWord, 'canonical'>, ReaderUnits>> = {
  metric: { temperature: 'Cel', pressure: 'bar', smallLength: 'um', speed: 'm' },
  us: {
    temperature: '[degF]',
    pressure: '[psi]',
    smallLength: '[mil_i]',
    speed: '[ft_i]/min',
  },
};

/** `timezone`: of the site, for the clock times in the sentence. */
export function inUnits(alarm: AlarmView, word: UnitsWord, timezone: string): AlarmView {
  const { template, ...label } = alarm.label;
  if (word === 'canonical' || template === undefined) return alarm;
  const units = chosen[word];
  const fill = (text: string): string =>
    text.replace(/\{\$([^}]*)\}/g, (_, name: string) => {
      const fact = template.facts[name];
      return fact === undefined ? 'unknown' : factText(fact, units, timezone, template.at);
    });
  return {
    ...alarm,
    label: {
      ...label,
      sentence: fill(template.sentence),
      consequence: fill(template.consequence),
      steps: template.steps.map(fill),
      do_not: template.do_not.map(fill),
      caution: fill(template.caution),
      template,
    },
  };
}

function factText(fact: LabelFact, units: ReaderUnits, timezone: string, now: number): string {
  switch (fact.kind) {
    case 'quantity':
      return quantityIn(fact, null, units);
    case 'reading':
      return quantityIn(fact, fact.digits, units);
    case 'duration':
      return spanText(fact.ms);
    case 'clock':
      return clockText(fact.at, timezone, now);
    case 'text':
      return fact.text;
  }
}

/** `digits`: decimals of its resolution; null for a number somebody wrote: as few as say it. */
function quantityIn(
  { value, unit, written_unit }: Extract<LabelFact, { unit: string }>,
  digits: number | null,
  units: ReaderUnits,
): string {
  const { of, perUnit, symbol } = displayOf(unit, written_unit, units);
  const number = of(value);
  const text =
    digits === null
      ? String(Number(number.toPrecision(5)))
      : number.toFixed(digitsFor(10 ** -digits, perUnit, number));
  const said = Number(text) === 0 ? text.replace('-', '') : text;
  return symbol === '' ? said : `${said} ${symbol}`;
}
