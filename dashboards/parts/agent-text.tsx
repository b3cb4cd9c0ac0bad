/** What the agent says in its own words, which are English: in the reader's language where the page has it, else marked as English. */
import type { ComponentChild } from 'preact';
import { phraseOf } from '../text/language.ts';

export const AgentText = ({ text }: { readonly text: string }) => {
  const said = phraseOf(text);
  return said === null ? <span lang="en">{text}</span> : <span>{said}</span>;
};

/** Stands in a sentence of the page where the agent's words come. */
export const here = '\u{1}';

interface AroundProps {
  /** With `here` in it. */
  readonly sentence: string;
  readonly words: ComponentChild;
}

export function Around({ sentence, words }: AroundProps) {
  const [before = '', after = ''] = sentence.split(here, 2);
  return (
    <>
      {before}
      {words}
      {after}
    </>
  );
}
