/**
 * JSON Pointer (RFC 6901): a place inside a JSON value.
 *
 * Only own properties are seen, so a payload cannot reach what every object inherits. `-` names
 * the element after the last and therefore finds nothing.
 */

/** Reference tokens, unescaped. */
export type Pointer = readonly string[];

const arrayIndex = /^(?:0|[1-9]\d*)$/;

/** The tokens of a pointer in its string form; null where the text is no pointer (RFC 6901 section 3). */
export function parsePointer(text: string): Pointer | null {
  if (text === '') return [];
  if (!text.startsWith('/') || /~(?![01])/.test(text)) return null;
  return text
    .slice(1)
    .split('/')
    .map((token) => token.replaceAll('~1', '/').replaceAll('~0', '~'));
}

/** What the pointer names within `root`, a value JSON.parse gave; undefined where there is nothing. */
export function valueAt(pointer: Pointer, root: unknown): unknown {
  let here = root;
  for (let i = 0; i < pointer.length; i += 1) {
    if (typeof here !== 'object' || here === null) return undefined;
    const token = pointer[i]!;
    if (Array.isArray(here) ? !arrayIndex.test(token) : !Object.hasOwn(here, token)) {
      return undefined;
    }
    here = (here as Readonly<Record<string, unknown>>)[token];
  }
  return here;
}
