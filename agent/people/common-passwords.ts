/**
 * Passwords that are tried first: some 49,000 in the order of how common they are, from the list of
 * the package `@zxcvbn-ts/language-common` (MIT). Loaded when one is first asked for.
 */
import { createRequire } from 'node:module';

interface Common {
  readonly dictionary: { readonly 'passwords-common': readonly string[] };
}

let list: readonly string[] | null = null;
const ranks = new Map<string, number>();

/** Lower case, the commonest first. */
export function commonPasswords(): readonly string[] {
  if (list !== null) return list;
  const load = createRequire(import.meta.url);
  const { dictionary } = load('@zxcvbn-ts/language-common') as Common;
  list = dictionary['passwords-common'];
  for (const [rank, word] of list.entries()) ranks.set(word, rank);
  return list;
}

/** Its place in the list, 0 the commonest; Infinity where it is not in it. `word` in lower case. */
export function commonness(word: string): number {
  commonPasswords();
  return ranks.get(word) ?? Number.POSITIVE_INFINITY;
}
