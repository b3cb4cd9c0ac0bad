/** docs/errors.md: the catalogue of agent/errors.ts as people read it. */
import { errorCatalogue } from '#agent/errors.ts';

/** What the first word of a code stands for, in the order of the page. */
const groups: Readonly<Record<string, string>> = {
  SITE: 'The site file',
  OWN: 'Own rules',
  RUN: 'Running',
  FOLDER: 'The data folder',
  STORE: 'The store',
  LEDGER: 'The ledger',
  INTAKE: 'Samples coming in',
  MQTT: 'MQTT',
  DEVICE: 'Devices',
  DEMO: 'The demo line',
  LISTEN: 'Listening',
  REPLAY: 'Replay',
  CSV: 'Recorded data',
  EXPORT: 'Export',
  ALARM: 'Alarms',
  WEB: 'The HTTP interface',
  PEOPLE: 'People and passwords',
  CHANNEL: 'Ways people are told',
  PUSH: 'Phones',
  TOKEN: 'Tokens',
  TLS: 'Certificates',
  TELLING: 'Telling people',
};

export const groupOf = (code: string): string => code.split('_')[0]!;

/** Groups of codes that the page has no heading for. */
export const groupsWithoutHeading = (codes: readonly string[]): string[] => [
  ...new Set(codes.map(groupOf).filter((group) => groups[group] === undefined)),
];

export function errorsPage(): string {
  const codes = Object.keys(errorCatalogue) as (keyof typeof errorCatalogue)[];
  const sections = Object.entries(groups).flatMap(([group, heading]) => {
    const own = codes.filter((code) => groupOf(code) === group).sort();
    if (own.length === 0) return [];
    const entries = own.map((code) => {
      const { happened, fix } = errorCatalogue[code];
      return `### ${code}\n\n${mark(happened)}\n\n*What to do:* ${mark(fix)}\n`;
    });
    return [`## ${heading}\n\n${entries.join('\n')}`];
  });
  return `# Errors

What the agent says when something is wrong, by its code, and how to mend it. Words in braces are
filled in with the facts. Made from \`agent/errors.ts\` by \`npm run docs\`; edit it there.

${sections.join('\n')}`;
}

/** Facts in braces stand out; what would read as markup does not. */
const mark = (text: string): string =>
  text
    .replaceAll('<', '&lt;')
    .replaceAll('*', '\\*')
    .replaceAll('__', '\\_\\_')
    .replace(/\{(\w+)\}/g, '`{$1}`');
