/** docs/stations/<kind>.md: one station kind, whole: what is measured, what can happen, every rule. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ruleKinds } from '#rules/kinds/all.ts';
import type { Mark, RuleTemplate, StationKind, TemplateNumber } from '#rules/stations/station.ts';
import { top } from '../tidy/source.ts';
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
      `[${code(each.kind)}](../derived.md#${each.kind})`,
      cell(each.meaning),
      [...Object.values(each.inputs), ...(each.countsOn ?? [])].map(code).join(', '),
      (each.startsOn ?? []).map(code).join(', '),
    ]),
  );
  const rows = kind.derived.flatMap(({ name, numbers = [] }) =>
    numbers.map((number) => [code(name), ...numberRow(number, 'not known; it is not worked out')]),
  );
  if (rows.length === 0) return derived;
  const numbers = table(['worked out', 'setting', 'value', 'basis'], rows);
  return `${derived}\n\nTheir numbers, each of which a site file may replace:\n\n${numbers}`;
}

function numberRow(number: TemplateNumber, unknown: string): string[] {
  const { basis } = number;
  const value = number.value === null ? unknown : code(number.value);
  const confirmed =
    number.confirm === undefined ? '' : `; to be confirmed from ${markWords[number.confirm]}`;
  const source = basis.source === null ? '' : ` (${cell(basis.source)})`;
  return [
    code(number.setting),
    value,
    `${cell(basis.note)}: ${markWords[basis.mark]}${source}${confirmed}`,
  ];
}

const hazardsOf = (kind: StationKind): string =>
  table(
    ['hazard', 'what can happen', 'people can be hurt', 'watched by'],
    kind.hazards.map((hazard) => [
      code(hazard.id),
      cell(hazard.words),
      hazard.people ? 'yes' : 'no',
      kind.rules
        .filter((rule) => rule.hazard === hazard.id)
        .map((rule) => `[${code(rule.name)}](#${rule.name})`)
        .join(', ') || cell(`by hand: ${hazard.byHand}`),
    ]),
  );

const priorityOf = ([first, second]: RuleTemplate['priority']): string =>
  first === second ? first : `${first}, then ${second}`;

/** Its marks, then its signals: the first that is bound, or all together. */
function judgedBy({ kind, marks = [], signals }: RuleTemplate): string {
  const joined = ruleKinds.get(kind)?.takes === undefined ? ', else ' : ' with ';
  const read = signals.map(code).join(joined);
  const said = marks.map(code).join(', then ');
  return [said, read].filter((each) => each !== '').join('; ');
}

const gateText = ({ gate }: RuleTemplate): string[] =>
  (gate === null ? [] : [gate].flat()).map(({ signal, low, high, lowFrom }) =>
    [
      code(signal),
      ...(low === undefined ? [] : [`from ${low}`]),
      ...(high === undefined ? [] : [`to ${high}`]),
      ...(lowFrom === undefined ? [] : [`from ${code(lowFrom[1])} of ${code(lowFrom[0])}`]),
    ].join(' '),
  );

/** Placeholders as people read them: the name of what is filled in. */
const spoken = (text: string): string => cell(text.replace(/\{\$(\w+)\}/g, '‹$1›'));

function ruleSection(rule: RuleTemplate): string {
  const { label } = rule;
  const traits = [
    `kind [${code(rule.kind)}](../kinds/${rule.kind}.md)`,
    `judges ${judgedBy(rule)}`,
    ...gateText(rule).map((gate) => `only while ${gate}`),
    `**${label.word}**, priority ${priorityOf(rule.priority)}`,
    `answer within ${rule.respond}`,
    ...(rule.class.latching ? ['stays until somebody resets it'] : []),
    ...(rule.class.highlyManaged ? ['highly managed'] : []),
    ...(rule.hold === null ? [] : [`puts the ${rule.hold} on hold`]),
  ];
  const steps = label.steps.map((step, i) => `${i + 1}. ${spoken(step)}`).join('\n');
  const parts = [
    `### ${rule.name}`,
    `“${spoken(label.sentence)}”`,
    `${spoken(label.consequence)}`,
    ...(label.doNot.length === 0 ? [] : [`Do not: ${label.doNot.map(spoken).join('; ')}.`]),
    ...(label.caution === '' ? [] : [`Caution: ${spoken(label.caution)}`]),
    steps,
    `${traits.join('; ')}.`,
    ...(rule.numbers.length === 0
      ? []
      : [
          table(
            ['setting', 'value', 'basis'],
            rule.numbers.map((each) => numberRow(each, 'not known; the rule is not armed')),
          ),
        ]),
  ];
  return parts.join('\n\n');
}

/** As tests/rules/stations/scenarios.test.ts plays and holds it, without its head. */
function told(kind: StationKind): string {
  const path = join(top, 'tests/rules/stations/scenarios', `${kind.name}.txt`);
  if (!existsSync(path)) return 'No scenario is recorded.';
  const [, ...stories] = readFileSync(path, 'utf8').split('\n\n');
  return stories.join('\n\n').trimEnd();
}

export function stationPage(kind: StationKind): string {
  const parts = [
    `# ${kind.name}`,
    `${kind.summary} Made from \`rules/stations/\` by \`npm run docs\`; edit it there.`,
    'The numbers are a place to start. The material’s own data sheet, where one is named, takes their place; what is marked to be confirmed is armed as unconfirmed until it does. This is advice and no safety system; data sheet, local codes and licensed people come first.',
    '## What can happen',
    hazardsOf(kind),
    '## What is measured',
    signalsOf(kind),
  ];
  if ((kind.marks ?? []).length > 0) parts.push('## What people write down', marksOf(kind));
  if (kind.derived.length > 0) parts.push('## What is worked out', derivedOf(kind));
  parts.push('## Rules', 'Each is in force where what it judges is bound.');
  parts.push(...kind.rules.map(ruleSection));
  parts.push(
    '## What people are told',
    'Scenarios, played through the engine by a test; `l/x` is the station.',
    `\`\`\`text\n${told(kind)}\n\`\`\``,
  );
  return `${parts.join('\n\n')}\n`;
}
