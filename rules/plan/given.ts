/** What the rules of a station may draw on: the site's word, else the sheet's, else what follows, else the station kind's. */
import { ruleFieldNames } from '../site/rule-schema.ts';
import type { Given, TemplateNumber } from '../stations/station.ts';
import { basketReport } from './basket-report.ts';
import type { StationDraft } from './draft.ts';

export function givenBy(station: StationDraft): Given {
  const { sheet, written, firePlan } = station;
  const known = (rule: string, setting: string): TemplateNumber => {
    const numbers = station.kind.rules.find((template) => template.name === rule)?.numbers;
    const number = numbers?.find((candidate) => candidate.setting === setting);
    if (number === undefined || ruleFieldNames.includes(setting))
      throw new RangeError(`${rule} has no ${setting}`);
    return number;
  };
  const own = (rule: string, setting: string): string | null => {
    const rules = written.rules ?? {};
    const word = Object.hasOwn(rules, rule) ? rules[rule]![setting] : undefined;
    return typeof word === 'string' ? word : null;
  };
  const fromSheet = (number: TemplateNumber): string | null =>
    sheet === null ? null : (number.fromSheet?.(sheet, given) ?? null);
  const given: Given = {
    sheet,
    heating: written.heating ?? null,
    processTemperature: written.process_temperature ?? null,
    residueThickness: written.residue_thickness ?? null,
    bound: (signal) => Object.hasOwn(written.signals ?? {}, signal),
    basket: basketReport(written.basket_test),
    containerSize: written.container_size ?? null,
    firePlan: firePlan ?? null,
    own,
    number(rule, setting) {
      const number = known(rule, setting);
      const followed = number.follows?.(given)?.written ?? null;
      return own(rule, setting) ?? fromSheet(number) ?? followed ?? number.value;
    },
    confirmed(rule, setting) {
      const number = known(rule, setting);
      if (own(rule, setting) !== null || fromSheet(number) !== null) return true;
      return number.follows?.(given)?.confirmed ?? number.confirm === undefined;
    },
  };
  return given;
}
