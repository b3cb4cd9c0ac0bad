/**
 * The rule sheet: the rationalisation of every rule, one a row, to be printed, signed and kept
 * (ISA-18.2 / IEC 62682, the master alarm database). Texts are as people read them in an alarm.
 */
import type { RuleView } from './contract.ts';
import { csvText } from './csv-cell.ts';

type Number = NonNullable<RuleView['numbers']>[number];

export const ruleSheetType = 'text/csv; charset=utf-8; header=present';

const marks: Readonly<Record<string, string>> = {
  CP: 'common practice, no published source',
  PUB: 'published',
  DS: 'data sheet or the plant’s own trial',
  SITE: 'the site’s own',
  EJ: 'engineering judgement',
};

const span = (ms: number | null | undefined): string =>
  ms === null || ms === undefined ? '' : `${Math.round(ms / 60_000)} min`;

const numberText = ({ setting, written, mark, note, source, confirmed }: Number): string => {
  const from = [marks[mark] ?? mark, note, ...(source === null ? [] : [source])].join(', ');
  return `${setting} = ${written ?? 'not given'} (${from}${confirmed ? '' : '; to be confirmed'})`;
};

const bounds = ({ signal, low, high, unit }: RuleView['gates'][number]): string =>
  [
    signal,
    ...(low === null ? [] : [`from ${low}`]),
    ...(high === null ? [] : [`to ${high}`]),
    ...(unit === '1' ? [] : [unit]),
  ].join(' ');

const suppressed = (each: NonNullable<RuleView['suppressed_while']>[number]): string => {
  const { because, signed_by: by, signal, low, high, unit, from, until } = each;
  const when =
    signal === null ? `from ${from} to ${until}` : bounds({ signal, low, high, unit: unit ?? '1' });
  return `${when} (${because}${by === null ? '' : `; ${by} answers for it`})`;
};

/** Columns in their order: what stands above, and what of a rule. */
const columns: readonly (readonly [string, (rule: RuleView) => string])[] = [
  ['rule', ({ id }) => id],
  ['kind', ({ kind }) => kind],
  ['judges', ({ signals, marks: written = [] }) => [...signals, ...written].join('; ')],
  ['only while', ({ gates }) => gates.map(bounds).join('; ')],
  ['told to nobody while', ({ suppressed_while: all = [] }) => all.map(suppressed).join('; ')],
  ['readiness', ({ readiness }) => readiness],
  ['needs', ({ needs }) => needs.join('; ')],
  [
    'limits, delays and where each comes from',
    ({ numbers = [] }) => numbers.map(numberText).join('; '),
  ],
  ['signal word', ({ word }) => word],
  ['people can be hurt', ({ people }) => (people ? 'yes' : 'no')],
  ['priority', ({ priority }) => [...new Set(priority)].join(', then ')],
  ['respond within', ({ respond_ms }) => span(respond_ms)],
  ['hazard', ({ hazard }) => hazard ?? ''],
  ['consequence', ({ consequence }) => consequence],
  ['do not', ({ do_not }) => do_not.map((what) => `do not ${what}`).join('; ')],
  ['caution', ({ caution = '' }) => caution],
  ['first steps', ({ steps }) => steps.map((step, i) => `${i + 1} ${step}`).join(' ')],
  ['stays until reset', ({ latching }) => (latching ? 'yes' : 'no')],
  ['highly managed', ({ highly_managed }) => (highly_managed ? 'yes' : 'no')],
  ['holds', ({ hold }) => hold ?? ''],
];

/** RFC 4180, with a line of column names. */
export function ruleSheetCsv(rules: readonly RuleView[]): string {
  const rows = rules.map((rule) => columns.map(([, of]) => csvText(of(rule))).join(','));
  return `${[columns.map(([name]) => csvText(name)).join(','), ...rows].join('\r\n')}\r\n`;
}
