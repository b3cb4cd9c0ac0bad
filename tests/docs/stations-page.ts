/** docs/stations.md: what each station kind of rules/stations/ brings, with the basis of each number. */

import { ruleKinds } from '#rules/kinds/all.ts';
import { stationKinds } from '#rules/stations/all.ts';
import type { Mark, RuleTemplate, StationKind, TemplateNumber } from '#rules/stations/station.ts';
import { cell, code, table } from './markdown.ts';

const markWords: Readonly<Record<Mark, string>> = {
  CP: 'common practice, no published source',
  PUB: 'published',
  DS: 'the material’s data sheet',
  SITE: 'the plant’s own review or drawing',
  EJ: 'engineering judgement, to be proved on the line',
};

const signalsOf = (kind: StationKind): string =>
  table(
    ['signal', 'what', 'unit', 'can be', 'where the sensor belongs'],
    kind.signals.map((signal) => [
      code(signal.name),
      cell(signal.meaning),
      code(signal.unit),
      cell(signal.range.join(' to ')),
      cell(signal.byHand === true ? `by hand: ${signal.where}` : signal.where),
    ]),
  );

const marksOf = (kind: StationKind): string =>
  table(
    ['mark', 'what happened', 'to', 'written down by'],
    (kind.marks ?? []).map(({ name, meaning, what, byWhom }) => [
      code(name),
      cell(meaning),
      what === null ? 'the place' : `a ${what}`,
      cell(byWhom),
    ]),
  );

function derivedOf(kind: StationKind): string {
  const derived = table(
    ['worked out', 'kind', 'what', 'from', 'starts anew on'],
    kind.derived.map((each) => [
      code(each.name),
      `[${code(each.kind)}](derived.md#${each.kind})`,
      cell(each.meaning),
      Object.values(each.inputs).map(code).join(', '),
      (each.startsOn ?? []).map(code).join(', '),
    ]),
  );
  const rows = kind.derived.flatMap(({ name, numbers = [] }) =>
    numbers.map((number) => numberRow(name, number, 'not known; it is not worked out')),
  );
  if (rows.length === 0) return derived;
  const numbers = table(['worked out', 'setting', 'value', 'basis'], rows);
  return `${derived}\n\nTheir numbers, each of which a site file may replace:\n\n${numbers}`;
}

function numberRow(name: string, number: TemplateNumber, unknown: string): string[] {
  const { basis } = number;
  const value = number.value === null ? unknown : code(number.value);
  const confirmed =
    number.confirm === undefined ? '' : `; to be confirmed from ${markWords[number.confirm]}`;
  const source = basis.source === null ? '' : ` (${cell(basis.source)})`;
  return [
    code(name),
    code(number.setting),
    value,
    `${cell(basis.note)}: ${markWords[basis.mark]}${source}${confirmed}`,
  ];
}

const priorityOf = ([first, second]: RuleTemplate['priority']): string =>
  first === second ? first : `${first}, then ${second}`;

/** Its marks, then its signals: the first that is bound, or all together. */
function judgedBy({ kind, marks = [], signals }: RuleTemplate): string {
  const joined = ruleKinds.get(kind)?.takes === undefined ? ', else ' : ' with ';
  const read = signals.map(code).join(joined);
  const said = marks.map(code).join(', then ');
  return [said, read].filter((each) => each !== '').join('; ');
}

function rulesOf(kind: StationKind): string {
  const rules = table(
    ['rule', 'kind', 'judges', 'word', 'priority', 'answer within', 'stays until reset', 'holds'],
    kind.rules.map((rule) => [
      code(rule.name),
      code(rule.kind),
      judgedBy(rule),
      rule.label.word,
      priorityOf(rule.priority),
      rule.respond,
      rule.class.latching ? 'yes' : 'no',
      rule.hold ?? '',
    ]),
  );
  const numbers = table(
    ['rule', 'setting', 'value', 'basis'],
    kind.rules.flatMap((rule) =>
      rule.numbers.map((number) =>
        numberRow(rule.name, number, 'not known; the rule is not armed'),
      ),
    ),
  );
  return `Rules, each in force where its signal is bound:\n\n${rules}\n\nTheir numbers, each of which a site file may replace:\n\n${numbers}`;
}

const hazardsOf = (kind: StationKind): string =>
  table(
    ['hazard', 'what can happen', 'people can be hurt', 'checked by hand'],
    kind.hazards.map((hazard) => [
      code(hazard.id),
      cell(hazard.words),
      hazard.people ? 'yes' : 'no',
      cell(hazard.byHand ?? ''),
    ]),
  );

function section(kind: StationKind): string {
  const parts = [`## ${kind.name}`, kind.summary];
  if (kind.signals.length > 0) parts.push(signalsOf(kind));
  if (kind.derived.length > 0) parts.push(derivedOf(kind));
  if ((kind.marks ?? []).length > 0) parts.push(marksOf(kind));
  if (kind.rules.length > 0) parts.push(rulesOf(kind));
  if (kind.hazards.length > 0) parts.push(hazardsOf(kind));
  return parts.join('\n\n');
}

export function stationsPage(): string {
  const kinds = [...stationKinds.values()];
  return `# Station kinds

What a station brings when a site file says \`kind:\` and binds the signals it has. Made from
\`rules/stations/\` by \`npm run docs\`; edit it there.

The numbers are a place to start. The material's own data sheet, where one is named, takes their
place; what is marked to be confirmed is armed as unconfirmed until it does. This is advice and no
safety system; data sheet, local codes and licensed people come first.

${kinds.map(section).join('\n\n')}
`;
}
