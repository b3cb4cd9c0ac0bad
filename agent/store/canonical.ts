/**
 * Canonical JSON (RFC 8785): one value, one text, so that a hash of it means something.
 *
 * Throws on what JSON cannot say: NaN, an infinity, a lone surrogate, a cycle, undefined.
 */
import canonicalize from 'canonicalize';

export function canonicalJson(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError(`JSON has no text for ${typeof value}`);
  return text;
}
