/**
 * What a payload is, by looking at it: a number in text, JSON and where its values stand, or
 * something else. It reads; it never decides what a value means.
 */
import { instantOfEpoch, instantOfRfc3339 } from '#rules/signal/instant-text.ts';
import { numberOfText } from '#rules/signal/number-text.ts';

export type PayloadKind =
  | 'plain'
  | 'json'
  | 'senml'
  | 'sparkplug'
  | 'text'
  | 'binary'
  | 'empty'
  | 'too-large';

export interface FoundValue {
  /** JSON Pointer (RFC 6901); empty where the payload is the value. */
  readonly pointer: string;
  readonly value: number;
  /** A contact: true and false are 1 and 0. */
  readonly isBoolean: boolean;
}

export interface Look {
  readonly kind: PayloadKind;
  readonly values: readonly FoundValue[];
  /** Where a time stands that lies near now; null where none does. */
  readonly timePointer: string | null;
  /** A unit that the payload names, and where. */
  readonly unit: { readonly pointer: string; readonly text: string } | null;
  readonly qualityPointer: string | null;
}

const bytesMax = 65_536;
const depthMax = 8;
const valuesMax = 64;
const nearMs = 400 * 86_400_000;

const nothing = (kind: PayloadKind): Look => ({
  kind,
  values: [],
  timePointer: null,
  unit: null,
  qualityPointer: null,
});

const strictUtf8 = new TextDecoder('utf-8', { fatal: true });

function textOf(bytes: Uint8Array): string | null {
  try {
    return strictUtf8.decode(bytes);
  } catch {
    return null;
  }
}

/** ISO/IEC 20237: the first level of every Sparkplug B topic. */
const sparkplugTopic = /^spBv1\.0\//;

/** Looks at one payload; `nowMs` tells a time from another number. */
export function lookAt(topic: string, bytes: Uint8Array, nowMs: number): Look {
  if (bytes.length === 0) return nothing('empty');
  if (sparkplugTopic.test(topic)) return nothing('sparkplug');
  if (bytes.length > bytesMax) return nothing('too-large');
  const text = textOf(bytes);
  if (text === null) return nothing('binary');
  const number = numberOfText(text);
  if (Number.isFinite(number))
    return { ...nothing('plain'), values: [{ pointer: '', value: number, isBoolean: false }] };
  const parsed = jsonOf(text);
  if (parsed === undefined) return nothing('text');
  const walk = new Walk(nowMs);
  walk.visit(parsed, '', 0);
  const look = walk.look();
  return isSenml(parsed) ? { ...look, kind: 'senml' } : look;
}

/** RFC 8428, section 4: a list of records, one of them named, each with a value or a base. */
function isSenml(parsed: object): boolean {
  if (!Array.isArray(parsed) || parsed.length === 0) return false;
  const records: readonly unknown[] = parsed;
  const holds = (record: unknown, keys: readonly string[]): boolean =>
    typeof record === 'object' && record !== null && keys.some((key) => Object.hasOwn(record, key));
  return (
    records.every((each) => holds(each, ['v', 'vs', 'vb', 'vd', 's', 'bn', 'bt', 'bu', 'bv'])) &&
    records.some((each) => holds(each, ['n', 'bn']))
  );
}

/** An object or a list; undefined where the text is neither. */
function jsonOf(text: string): object | undefined {
  if (!/^\s*[[{]/.test(text)) return undefined;
  try {
    const parsed: unknown = JSON.parse(text);
    return typeof parsed === 'object' && parsed !== null ? parsed : undefined;
  } catch {
    return undefined;
  }
}

const timeWord = /(^|_)(t|ts|time|timestamp|at|date|datetime|utc|epoch)$/i;
const unitWord = /(^|_)(unit|units|uom|u)$/i;
const qualityWord = /(^|_)(quality|ok|valid|good|q|status)$/i;

class Walk {
  private readonly nowMs: number;
  private readonly values: FoundValue[] = [];
  private timePointer: string | null = null;
  private unit: Look['unit'] = null;
  private qualityPointer: string | null = null;

  constructor(nowMs: number) {
    this.nowMs = nowMs;
  }

  look(): Look {
    const { values, timePointer, unit, qualityPointer } = this;
    return { kind: 'json', values, timePointer, unit, qualityPointer };
  }

  visit(found: unknown, pointer: string, depth: number): void {
    if (typeof found === 'object' && found !== null) {
      if (depth >= depthMax) return;
      for (const [key, value] of Object.entries(found))
        this.visit(value, `${pointer}/${escaped(key)}`, depth + 1);
      return;
    }
    const key = pointer.slice(pointer.lastIndexOf('/') + 1);
    if (timeWord.test(key) && this.timePointer === null && this.isNear(found)) {
      this.timePointer = pointer;
    } else if (unitWord.test(key) && typeof found === 'string') {
      this.unit ??= { pointer, text: found };
    } else if (qualityWord.test(key) && isQuality(found)) {
      this.qualityPointer ??= pointer;
    } else this.take(found, pointer);
  }

  private take(found: unknown, pointer: string): void {
    if (this.values.length >= valuesMax) return;
    if (typeof found === 'boolean')
      this.values.push({ pointer, value: found ? 1 : 0, isBoolean: true });
    else {
      const value = typeof found === 'string' ? numberOfText(found) : found;
      if (typeof value === 'number' && Number.isFinite(value))
        this.values.push({ pointer, value, isBoolean: false });
    }
  }

  /** A time of the last or the coming year; anything else is a value that happens to be called so. */
  private isNear(found: unknown): boolean {
    const ms = timeMsOf(found);
    return Number.isFinite(ms) && Math.abs(ms - this.nowMs) < nearMs;
  }
}

function timeMsOf(found: unknown): number {
  if (typeof found === 'number') return instantOfEpoch(found);
  if (typeof found !== 'string') return Number.NaN;
  const number = numberOfText(found);
  return Number.isNaN(number) ? instantOfRfc3339(found) : instantOfEpoch(number);
}

const isQuality = (found: unknown): boolean =>
  typeof found === 'boolean' ||
  (typeof found === 'string' && /^(good|bad|uncertain)$/i.test(found));

/** RFC 6901, section 3. */
const escaped = (key: string): string => key.replaceAll('~', '~0').replaceAll('/', '~1');
