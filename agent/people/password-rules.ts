/**
 * What a password must be: long, and not one that everybody tries.
 *
 * Source: NIST SP 800-63B-4 section 3.1.1 (15 characters where it is the only factor, at least 64
 * allowed, each code point counts one, NFKC, a block-list with the reason said, no rules of
 * composition), from memory of the final text; OWASP ASVS 5.0, 6.2.4 (at least the 3,000 commonest),
 * 6.2.11 (words of the context). Few of the commonest are 15 characters long: what people make
 * long enough of them, by repeating, joining and filling up, is held to be as known as they are.
 */
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { commonness } from './common-passwords.ts';

/** Words that lists of known passwords are made of; from memory of such lists, no one source. */
const known = [
  ...['password', 'passwort', 'passphrase', 'letmein', 'welcome', 'willkommen', 'admin'],
  ...['administrator', 'default', 'secret', 'geheim', 'master', 'login', 'access', 'guest', 'test'],
  ...['changeme', 'qwerty', 'qwertz', 'azerty', 'asdfgh', 'zxcvbn', 'yxcvbn', 'qazwsx', 'iloveyou'],
  ...['ichliebedich', 'hallo', 'hello', 'dragon', 'monkey', 'football', 'fussball', 'baseball'],
  ...['sunshine', 'princess', 'shadow', 'superman', 'batman', 'trustno', 'starwars', 'whatever'],
  ...['michael', 'jennifer', 'jordan', 'daniel', 'thomas', 'charlie', 'schatz', 'summer', 'sommer'],
  ...[
    'winter',
    'spring',
    'autumn',
    'herbst',
    'january',
    'december',
    'monday',
    'freedom',
    'computer',
  ],
  ...['internet', 'server', 'system', 'service', 'user', 'pass', 'root', 'toor', 'forebond'],
  ...['company', 'factory', 'operator', 'engineer', 'maintenance', 'reader', 'sensor', 'alarm'],
];

const runs = [
  'abcdefghijklmnopqrstuvwxyz',
  '012345678901234567890',
  'qwertyuiop',
  'asdfghjkl',
  'zxcvbnm',
];

/** Characters that stand for letters in what people take for a clever spelling. */
const plain: Readonly<Record<string, string>> = {
  '0': 'o',
  '1': 'i',
  '3': 'e',
  '4': 'a',
  '5': 's',
  '7': 't',
  '@': 'a',
  $: 's',
  '!': 'i',
};

const reversed = (text: string): string => [...text].reverse().join('');
const everyRun = [...runs, ...runs.map(reversed)];
const isRun = (text: string): boolean => everyRun.some((run) => run.includes(text));
/** So many keys or letters in a row are no chance. */
const runCharsMin = 4;

function withoutRuns(text: string): string {
  const chars = [...text];
  const kept: string[] = [];
  for (let from = 0; from < chars.length; ) {
    let to = from + 1;
    while (to < chars.length && isRun(chars.slice(from, to + 1).join(''))) to += 1;
    kept.push(to - from >= runCharsMin ? ' ' : chars.slice(from, to).join(''));
    from = to;
  }
  return kept.join('');
}

/** What is left to guess once known words, runs and repetitions are taken out. */
function remainder(password: string, words: readonly string[]): string {
  let left = password.toLowerCase();
  for (const word of words) left = left.replaceAll(word, ' ');
  left = withoutRuns(left);
  left = [...left].map((each) => plain[each] ?? each).join('');
  for (const word of words) left = left.replaceAll(word, ' ');
  // "abcabcabc" says no more than "abc".
  left = left.replaceAll(/(.{1,8}?)\1+/gu, '$1');
  return left
    .split(/[\s._-]+/u)
    .filter((part) => part.length > 0 && !isRun(part))
    .join('');
}

/** Entries of the list that count where they are only a part: beyond it they are words like any other. */
const commonPartsMax = 10_000;
const partChars = { min: 3, max: 20 } as const;

/** "dragondragon" says no more than "dragon". */
const once = (text: string): string => text.replaceAll(/(.{3,20}?)\1+/gu, '$1');

/** An entry of the list itself, or two of them with no more beside than people add to a word. */
function isMadeOfCommon(password: string): boolean {
  const lower = password.toLowerCase();
  return [...new Set([lower, once(lower)])].some((text) => isOneOrTwo(text));
}

function isOneOrTwo(text: string): boolean {
  if (commonness(text) < Number.POSITIVE_INFINITY) return true;
  const raw = [...text];
  // No two entries and a little are so long.
  if (raw.length > 3 * partChars.max) return false;
  const spelt = raw.map((each) => plain[each] ?? each);
  const parts = [...new Set([...partsOf(raw), ...partsOf(spelt)])];
  return parts.some((one, i) =>
    parts.slice(i).some((other) => isLittle(leftOf(raw, spelt, [one, other]))),
  );
}

function partsOf(chars: readonly string[]): string[] {
  const found: string[] = [];
  for (let from = 0; from + partChars.min <= chars.length; from += 1)
    for (
      let to = from + partChars.min;
      to <= Math.min(chars.length, from + partChars.max);
      to += 1
    ) {
      const part = chars.slice(from, to).join('');
      if (commonness(part) < commonPartsMax) found.push(part);
    }
  return found;
}

/** What stays where the parts are taken out, as it was written. */
function leftOf(
  raw: readonly string[],
  spelt: readonly string[],
  parts: readonly string[],
): string {
  const left = [...raw];
  for (const part of [...parts].sort((a, b) => b.length - a.length))
    for (const chars of [raw, spelt])
      for (let at = 0; at + part.length <= chars.length; at += 1)
        if (chars.slice(at, at + part.length).join('') === part)
          left.fill(' ', at, at + part.length);
  return withoutRuns(
    left
      .join('')
      .replaceAll(/(?:19|20)\d\d/g, ' ')
      .replaceAll(/(.{1,8}?)\1+/gu, '$1'),
  ).replaceAll(/[\s._-]+/gu, '');
}

/** A year, a few marks, the beginning of a repetition. */
const isLittle = (left: string): boolean =>
  [...left].length < limits.passwordDistinctCharsMin && (left.match(/\p{L}/gu) ?? []).length < 3;

/**
 * Throws PEOPLE_PASSWORD_SHORT, PEOPLE_PASSWORD_LONG or PEOPLE_PASSWORD_KNOWN. `context` holds words of this
 * place: the site's name, the person's.
 */
export function checkPassword(password: string, context: readonly string[]): void {
  const text = password.normalize('NFKC');
  const chars = [...text].length;
  if (chars < limits.passwordCharsMin)
    throw new AgentError('PEOPLE_PASSWORD_SHORT', { chars, min: limits.passwordCharsMin });
  if (chars > limits.passwordCharsMax)
    throw new AgentError('PEOPLE_PASSWORD_LONG', { max: limits.passwordCharsMax });
  const own = context
    .flatMap((words) =>
      words
        .normalize('NFKC')
        .toLowerCase()
        .split(/[^\p{L}\p{N}]+/u),
    )
    .filter((word) => word.length >= 4);
  const longestFirst = [...known, ...own].sort((a, b) => b.length - a.length);
  const left = remainder(text, longestFirst);
  if ([...new Set(left)].length < limits.passwordDistinctCharsMin || isMadeOfCommon(text))
    throw new AgentError('PEOPLE_PASSWORD_KNOWN');
}
