/** What a kind of the site's own may answer, read strictly: nothing else goes any further. */
import type { Evidence, RulerLimits, Severity } from '#rules/kinds/kind.ts';
import { isKnown } from '#rules/signal/quality.ts';
import { shown, Wrong } from './guard.ts';

export const isSeverity = (value: unknown): value is Severity =>
  value === 0 || value === 1 || value === 2;

const numbers: readonly string[] = [
  ...['value', 'at', 'limit', 'sinceMs', 'slopePerH', 'earliestMs', 'latestMs', 'durationMs'],
  ...['reference', 'difference', 'allowed', 'perMs', 'reachedMs', 'requiredMs', 'leftMs', 'items'],
];
const places: readonly string[] = ['input', 'other'];
const texts: readonly string[] = ['pattern', 'item'];
const textCharsMax = 200;

export function readEvidence(answer: unknown): Evidence | Wrong {
  if (!isRecord(answer)) return new Wrong(`evidence is ${shown(answer)}, not an object`);
  const evidence: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(answer)) {
    if (value === undefined) continue;
    const wrong = wrongOf(key, value);
    if (wrong !== null) return new Wrong(wrong);
    evidence[key] = value;
  }
  return evidence as Evidence;
}

function wrongOf(key: string, value: unknown): string | null {
  const isNumber = typeof value === 'number' && Number.isFinite(value);
  if (numbers.includes(key)) return isNumber ? null : `evidence.${key} is ${shown(value)}`;
  if (places.includes(key))
    return isNumber && Number.isInteger(value) && value >= 0 && value < 8
      ? null
      : `evidence.${key} is ${shown(value)}, which counts no input`;
  if (texts.includes(key)) return isText(value) ? null : `evidence.${key} is ${shown(value)}`;
  if (key === 'side')
    return value === 'low' || value === 'high' ? null : `evidence.side is ${shown(value)}`;
  if (key === 'cause')
    return isNumber && isKnown(value) ? null : `evidence.cause is ${shown(value)}, no quality code`;
  return `evidence has no ${key}`;
}

const isText = (value: unknown): boolean =>
  typeof value === 'string' && value.length <= textCharsMax && !/\p{Cc}/u.test(value);

export function readSentence(answer: unknown): string | Wrong {
  return isText(answer) && String(answer).trim() !== ''
    ? String(answer)
    : new Wrong(`gave ${shown(answer)} for a sentence of up to ${textCharsMax} characters`);
}

const sides = ['lowLow', 'low', 'high', 'highHigh'] as const;
export const noLimits: RulerLimits = { lowLow: null, low: null, high: null, highHigh: null };

export function readLimits(answer: unknown): RulerLimits | Wrong {
  if (!isRecord(answer)) return new Wrong(`limits are ${shown(answer)}, not an object`);
  const limits: Record<(typeof sides)[number], number | null> = { ...noLimits };
  for (const side of sides) {
    const value = answer[side] ?? null;
    if (value !== null && !(typeof value === 'number' && Number.isFinite(value)))
      return new Wrong(`limits.${side} is ${shown(value)}`);
    limits[side] = value;
  }
  return limits;
}

/** A result of a derived kind: a finite number, or null where it cannot tell. */
export const isResult = (value: unknown): value is number | null =>
  value === null || (typeof value === 'number' && Number.isFinite(value));

export const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
