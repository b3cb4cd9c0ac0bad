/** docs/alarms.md: every row of what the trade watches for, and the rules that watch it. */
import { stationKinds } from '#rules/stations/all.ts';
import type { RuleTemplate } from '#rules/stations/station.ts';
import { alarmRows } from './alarm-rows.ts';
import { cell, code, table } from './markdown.ts';

const rulesOf = (station: string, name: string): RuleTemplate[] => {
  const pattern = new RegExp(`^${name.replace('*', '\\d+')}$`);
  return (stationKinds.get(station)?.rules ?? []).filter((rule) => pattern.test(rule.name));
};

/** Rows whose rule no station has, and rules that stand in no row. */
export function unmappedAlarms(): string[] {
  const named = alarmRows.flatMap(({ station, rules }) =>
    rules.map((name) => ({ station, name, found: rulesOf(station, name) })),
  );
  const mapped = new Set(
    named.flatMap(({ station, found }) => found.map((rule) => `${station} ${rule.name}`)),
  );
  const known = [...stationKinds.values()].flatMap((kind) =>
    kind.rules.map((rule) => `${kind.name} ${rule.name}`),
  );
  return [
    ...named
      .filter(({ found }) => found.length === 0)
      .map(({ station, name }) => `no such rule: ${station} ${name}`),
    ...known.filter((name) => !mapped.has(name)).map((name) => `in no row: ${name}`),
  ];
}

const limitsOf = (rule: RuleTemplate): string =>
  rule.numbers
    .filter(({ setting }) => !/delay|deadband/.test(setting))
    .map(({ setting, value }) => code(`${setting} ${value ?? 'from the data sheet or the site'}`))
    .join(' ');

const rows = (): string[][] =>
  alarmRows.flatMap(({ station, row, rules }) =>
    rules
      .flatMap((name) => rulesOf(station, name))
      .map((rule, i) => [
        i === 0 ? `[${station}](stations/${station}.md)` : '',
        i === 0 ? cell(row) : '',
        `[${code(rule.name)}](stations/${station}.md#${rule.name})`,
        rule.label.word,
        [...new Set(rule.priority)].join(', then '),
        limitsOf(rule),
      ]),
  );

export const alarmsPage = (): string => `# Every alarm

What the trade watches for, row by row, and the rules that do it. Made by \`npm run docs\` from
\`rules/stations/\`; each rule links to its label, its numbers and their basis. \`npm run forebond -- check
SITE\` says which of them a site arms; \`GET /api/rules.csv\` is the sheet to sign.

${table(['station', 'watched for', 'rule', 'word', 'priority', 'limits'], rows())}
`;
