/** Pieces of Markdown that the generated pages are put together from. */

/** Text inside a table cell: one line, nothing that would read as markup. */
export const cell = (text: string): string =>
  text.replaceAll('|', '\\|').replaceAll('<', '&lt;').replaceAll('*', '\\*').replaceAll('\n', ' ');

export const code = (text: string): string => `\`${text.replaceAll('|', '\\|')}\``;

/** A table; cells are Markdown already. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), `|${'---|'.repeat(head.length)}`, ...rows.map(line)].join('\n');
}
