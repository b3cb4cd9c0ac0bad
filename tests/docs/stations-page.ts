/** docs/stations.md: the station kinds in the order of the line, each with a page of its own. */
import { stationKinds } from '#rules/stations/all.ts';
import { cell, table } from './markdown.ts';

export const describedStations = [...stationKinds.values()].filter(({ rules }) => rules.length > 0);

export function stationsPage(): string {
  const rows = describedStations.map(({ name, summary, signals, rules }) => [
    `[\`${name}\`](stations/${name}.md)`,
    cell(summary),
    String(signals.length),
    String(rules.length),
  ]);
  return `# Station kinds

What a station brings when a site file says \`kind:\` and binds the signals it has. Made from
\`rules/stations/\` by \`npm run docs\`; edit it there. \`custom\` brings nothing: its rules are your own
([the site file](site-file.md#a-place-of-your-own)).

${table(['kind', 'what it is', 'signals it knows', 'rules'], rows)}
`;
}
