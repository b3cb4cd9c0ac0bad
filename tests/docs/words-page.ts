/** docs/words.md: every word a person meets, where it is met, what it means, where it comes from. */
import { cell, code, table } from './markdown.ts';
import { type SectionWords, wordTable } from './word-table.ts';
import { type Section, sections, type Word } from './words.ts';

type Table = Readonly<Record<string, SectionWords>>;

/** A quality is entered by its code: `1 the clock …` under `1`. */
const entryOf = ({ word }: Word): string => /^\d+/.exec(word)?.[0] ?? word;

const meaningOf = (each: Word, given: SectionWords | undefined): string | null =>
  given?.meanings?.[entryOf(each)] ?? each.meaning;

/** What is in the code without an entry, in the table without a word, or in both. Empty when sound. */
export function wordProblems(all: readonly Section[], given: Table): string[] {
  const problems: string[] = [];
  for (const { name, words } of all) {
    const entries = given[name];
    if (entries === undefined) problems.push(`${name}: has no origin`);
    if (words.length === 0) problems.push(`${name}: no word was found`);
    for (const each of words) {
      if ((meaningOf(each, entries) ?? '') === '')
        problems.push(`${name}: ${each.word} has no meaning`);
      if (each.meaning !== null && entries?.meanings?.[entryOf(each)] !== undefined)
        problems.push(`${name}: ${each.word} has a meaning in the code already`);
    }
    const known = new Set(words.map(entryOf));
    const entered = { ...entries?.meanings, ...entries?.origins };
    for (const word of Object.keys(entered))
      if (!known.has(word)) problems.push(`${name}: ${word} is no word of the code`);
  }
  const names = new Set(all.map(({ name }) => name));
  for (const name of Object.keys(given))
    if (!names.has(name)) problems.push(`${name}: is no section`);
  return problems;
}

function sectionText({ name, met, words }: Section): string {
  const given = wordTable[name];
  const rows = words.map((each) => [
    code(each.word),
    cell(meaningOf(each, given) ?? ''),
    cell(each.origin ?? given?.origins?.[each.word] ?? given?.origin ?? ''),
  ]);
  return `## ${name}\n\nMet: ${met}.\n\n${table(['word', 'means', 'origin'], rows)}`;
}

export const wordsPage = (): string => `# Words

Every word of the page, the site file, the command line and the interface: where it is met, what it means,
where it comes from. Made from the sources by \`npm run docs\`; what the code does not say of its own words
stands in \`tests/docs/word-table.ts\`.

Origins: "trade use" is common practice without a published source. A standard is named where the word is
its word; that is no claim to meet the standard. "Ours" is everything else.

${sections().map(sectionText).join('\n\n')}
`;

export const foundProblems = (): string[] => wordProblems(sections(), wordTable);
