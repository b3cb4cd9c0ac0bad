/** Words of a rule, in the language they are in. */
import type { Words } from '../text/label.ts';

export const Said = ({ words: { text, lang } }: { readonly words: Words }) => (
  <span lang={lang}>{text}</span>
);
