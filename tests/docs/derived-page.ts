/** docs/derived.md: what can be worked out from readings, with inputs, settings, source and range. */
import { derivedKinds } from '#rules/derive/derived.ts';
import { type DerivedKind, isKeeping, settingsSchema } from '#rules/derive/derived-kind.ts';
import { cell, code, table } from './markdown.ts';
import { schemaTable } from './schema-table.ts';

const unitOf = (unit: string): string => (unit === 'any' ? 'any' : code(unit));

const inputsOf = (kind: DerivedKind): string =>
  table(
    ['input', 'unit', 'what'],
    kind.inputs.map((input) => [
      code(input.name),
      unitOf(input.unit),
      `${cell(input.meaning)}${input.optional === true ? '; may be left out' : ''}`,
    ]),
  );

const givesOf = (kind: DerivedKind): string =>
  kind.unit === 'any'
    ? 'Gives a unit that follows from its first input.'
    : `Gives ${code(kind.unit)} in steps of ${10 ** -kind.digits}.`;

/** What it remembers, in a sentence; null for one that remembers nothing. */
function memoryOf(kind: DerivedKind): string | null {
  if (!isKeeping(kind)) return null;
  if (kind.count !== undefined)
    return 'It counts marks named under `counts_on`, also over a restart; those under `starts_on` start it anew.';
  return kind.start === undefined
    ? 'It remembers, also over a restart.'
    : 'It adds up, also over a restart; marks named under `starts_on` start it anew.';
}

function section(kind: DerivedKind): string {
  const written = settingsSchema(kind);
  const parts = [
    `## ${kind.name}`,
    cell(kind.summary),
    [
      givesOf(kind),
      memoryOf(kind),
      kind.range === undefined ? null : `Holds for ${cell(kind.range)}.`,
    ]
      .filter((part) => part !== null)
      .join(' '),
    `Source: ${cell(kind.source)}.`,
    kind.inputs.length === 0 ? null : inputsOf(kind),
    written === null ? null : schemaTable(written),
  ];
  return parts.filter((part) => part !== null).join('\n\n');
}

export const derivedPage = (): string => `# Derived signals

What is worked out from readings, stored and charted as they are, and judged by rules like them. A
station kind brings its own ([stations.md](stations.md)); a site file adds more, or gives one that a
station brings its numbers:

\`\`\`yaml
derived:
  tip-speed: { kind: tip-speed, inputs: { speed: agitator }, blade_diameter: 400 mm }
\`\`\`

One is worked out when an input changed, at most once a second. With a bad input it is bad, with an
uncertain one uncertain. It is uncertain too where it rests on a number nobody has confirmed, where
the physics is an estimate, and where part of a time it adds up was not observed; the reading says
which. One that a station brings does not exist while a number that nobody may guess is missing:
\`check\` says which. A range is one reading's; beyond it the result is bad. The formulas stand in
[science.md](science.md). Made from \`rules/derive/\` by \`npm run docs\`; edit it there.

${[...derivedKinds.values()].map(section).join('\n\n')}
`;
