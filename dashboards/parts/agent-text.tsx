/** What the agent says in its own words, which are English: in the reader's language where the page has it, else marked as English. */
import type { ComponentChild } from 'preact';
import { phraseOf } from '../text/language.ts';
import { needText, whyText } from '../text/need.ts';

export const AgentText = ({ text }: { readonly text: string }) => (
  <Told said={phraseOf(text)} english={text} />
);

interface ToldProps {
  readonly said: string | null;
  readonly english: string;
}

const Told = ({ said, english }: ToldProps) =>
  said === null ? <span lang="en">{english}</span> : <span>{said}</span>;

/** What a rule waits for. */
export const NeedText = ({ need }: { readonly need: string }) => (
  <Told said={needText(need)} english={need} />
);

/** Why a hazard is not watched. */
export const WhyText = ({ why }: { readonly why: string }) => (
  <Told said={whyText(why)} english={why} />
);

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
