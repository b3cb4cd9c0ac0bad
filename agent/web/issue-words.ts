/** What is wrong with a parameter, in this project's words and not the schema library's. */
import type { z } from 'zod';

type Issue = z.core.$ZodIssue;

const kinds: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a JSON object',
  array: 'a list',
  undefined: 'nothing',
};

/** `given` is the value at the issue's place. A message of our own, as of a refinement, stands. */
export function issueWords(issue: Issue, given: unknown): string {
  switch (issue.code) {
    case 'invalid_type': {
      const kind = kinds[issue.expected] ?? issue.expected;
      return given === undefined ? `it is missing; send ${kind}` : `send ${kind}`;
    }
    case 'invalid_value': {
      const words = issue.values.map(String).join(', ');
      return given === undefined ? `it is missing; send one of ${words}` : `send one of ${words}`;
    }
    case 'too_small':
      return `send ${bound('at least', issue.origin, issue.minimum)}`;
    case 'too_big':
      return `send ${bound('at most', issue.origin, issue.maximum)}`;
    case 'invalid_union':
      return 'it fits nothing that may stand here; GET /api/openapi.json says what may';
    case 'not_multiple_of':
      return `send a multiple of ${issue.divisor}`;
    case 'unrecognized_keys':
      return 'there is no such parameter';
    default:
      return issue.message;
  }
}

function bound(word: string, origin: string, limit: number | bigint): string {
  const one = limit === 1;
  if (origin === 'string') return `${word} ${limit} ${one ? 'character' : 'characters'}`;
  if (origin === 'array' || origin === 'set')
    return `${word} ${limit} ${one ? 'entry' : 'entries'}`;
  return `a number of ${word} ${limit}`;
}
