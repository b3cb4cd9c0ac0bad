/** The YAML parser's complaints in plain words, each with a way out. */

const words: Readonly<Record<string, readonly [problem: string, fix: string]>> = {
  ALIAS_PROPS: ['an alias with an anchor or a tag', 'Write the value out.'],
  BAD_ALIAS: ['an alias that cannot be read', 'Write the value out.'],
  BAD_DIRECTIVE: ['a directive that is not known', 'Take the line out.'],
  BAD_INDENT: [
    'the indentation does not line up',
    'Indent with the same spaces as its neighbours.',
  ],
  BAD_SCALAR_START: ['a value cannot begin with this character', 'Put the value in quotes.'],
  BLOCK_AS_IMPLICIT_KEY: [
    'a block stands where a value belongs',
    'Begin it on a new line, indented; or put text with a colon in quotes.',
  ],
  BLOCK_IN_FLOW: ['a block inside brackets', 'Write it with { } or [ ], or without brackets.'],
  DUPLICATE_KEY: ['the key stands here a second time', 'Keep one of them.'],
  IMPOSSIBLE: ['this cannot be read', 'Write it in a simpler way.'],
  KEY_OVER_1024_CHARS: ['a key of over 1024 characters', 'A colon may be missing its space.'],
  MISSING_CHAR: [
    'a character is missing',
    'Close the bracket, brace or quote; a colon needs a space.',
  ],
  MULTILINE_IMPLICIT_KEY: [
    'a key runs over two lines',
    'Look for a missing colon, quote or bracket above.',
  ],
  MULTIPLE_ANCHORS: ['two anchors on one value', 'Keep one of them.'],
  MULTIPLE_DOCS: ['a second document begins here', 'Take the --- out; one file, one site.'],
  MULTIPLE_TAGS: ['two tags on one value', 'Take the tags out.'],
  NON_STRING_KEY: ['a key must be a word', 'Write a name before the colon.'],
  TAB_AS_INDENT: ['a tab in the indentation', 'Indent with spaces.'],
  TAG_RESOLVE_FAILED: ['tags are not used here', 'Take the ! and its word out.'],
  UNEXPECTED_TOKEN: [
    'this does not belong here',
    'Look at the brackets, quotes and dashes before it; a unit in brackets needs quotes, as "48 [degF]".',
  ],
};

/** Problem and fix; the parser's own sentence where the code is new to us. */
export function yamlWords(code: string, message: string, near: string): [string, string] {
  if (code === 'BAD_INDENT' && message.startsWith('Flow'))
    return ['a bracket or brace is not closed', 'Close it, and indent what stands in it.'];
  const known = Object.hasOwn(words, code) ? words[code] : undefined;
  const first = message.split('\n')[0] ?? message;
  if (known === undefined)
    return [`the YAML cannot be read: ${first}`, 'Write it in a simpler way.'];
  const shown =
    near
      .split(/[\r\n]/)[0]
      ?.trim()
      .slice(0, 40) ?? '';
  return [shown === '' ? known[0] : `${known[0]}, at ${JSON.stringify(shown)}`, known[1]];
}
