/**
 * What a password must be: long, and not one that everybody tries.
 *
 * Source: NIST SP 800-63B-4 section 3.1.1 (15 characters where it is the only factor, at least 64
 * allowed, each code point counts one, NFKC, a block-list with the reason said, no rules of
 * composition), from memory of the final text; OWASP ASVS 5.0, 6.2.
 */
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';

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
  if ([...new Set(left)].length < limits.passwordDistinctCharsMin)
    throw new AgentError('PEOPLE_PASSWORD_KNOWN');
}
