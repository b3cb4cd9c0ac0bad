/**
 * What was looked for in a refused message, and what stood there: for whoever compares a sensor with
 * the site file. Worked out only once something was refused.
 *
 * Always true: what it gives can be printed, and is short however large the message is.
 */
import type { Binding } from '#rules/plan/binding.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { aheadFix, aheadWords } from '#rules/signal/wrong-time.ts';
import type { MarkPayloadWritten } from '#rules/site/mark-schema.ts';
import type { PayloadWritten } from '#rules/site/signal-schema.ts';
import { timeOfJson } from './decode.ts';
import type { Message } from './message.ts';
import { parsePointer, valueAt } from './pointer.ts';
import type { RefusalCause, RefusalDetail } from './refused.ts';

const foundCharsMax = 48;
const placesNamedMax = 6;
const placesDepthMax = 4;

type Part = 'value' | 'item' | 'time' | 'unit';

const partOf: Readonly<Partial<Record<RefusalCause, Part>>> = {
  'no-time': 'time',
  'time-unreadable': 'time',
  future: 'time',
  'no-unit': 'unit',
  'wrong-unit': 'unit',
};

/** Causes for which nothing in the message was looked at. */
const ofTopic: ReadonlySet<RefusalCause> = new Set([
  'instance-name',
  'instance-collision',
  'instance-refused',
  'too-large',
  'too-deep',
  'not-utf8',
]);

/** Both null where nothing was looked at within the message. */
export function refusalDetail(
  cause: RefusalCause,
  payload: PayloadWritten | MarkPayloadWritten,
  message: Message,
  nowMs: EpochMs,
): RefusalDetail {
  if (ofTopic.has(cause)) return nothingSeen;
  if (payload.kind === 'plain') {
    const text = message.text();
    return { lookedFor: null, found: text === null ? null : foundText(text), words: null };
  }
  const part = partOf[cause] ?? ('value' in payload ? 'value' : 'item');
  const pointer = (payload as Readonly<Partial<Record<Part, string>>>)[part] ?? null;
  const root = message.json();
  if (message.cause !== null) return { lookedFor: pointer, found: 'no JSON', words: null };
  const parsed = pointer === null ? null : parsePointer(pointer);
  if (parsed === null) return { ...nothingSeen, lookedFor: pointer };
  const found = valueAt(parsed, root);
  const words = cause === 'future' ? futureWords(found, payload, nowMs) : null;
  return { lookedFor: pointer, found: foundWords(found, root), words };
}

const nothingSeen: RefusalDetail = { lookedFor: null, found: null, words: null };

/** Where no such quantity can have the value, canonical, whatever the sensor. */
export function beyondWords(
  { possible }: Binding,
  value: number,
): Pick<RefusalDetail, 'words'> | undefined {
  if (possible === undefined || (value >= possible.low && value <= possible.high)) return undefined;
  const fix =
    'look at the sensor and its wire, then at the place of the value and at `unit` and `calibration` in the site file';
  return { words: { why: `it is ${possible.words}`, fix } };
}

/** What the rules say of a mark: why it is refused, and how to mend it behind a semicolon. */
export function refusedMarkWords(text: string): NonNullable<RefusalDetail['words']> {
  const end = text.indexOf('; ');
  return end < 0
    ? { why: text, fix: 'compare what the sender says with the marks in the site file' }
    : { why: text.slice(0, end), fix: text.slice(end + 2) };
}

function futureWords(
  found: unknown,
  payload:
    | Exclude<PayloadWritten, { kind: 'plain' }>
    | Exclude<MarkPayloadWritten, { kind: 'plain' }>,
  nowMs: EpochMs,
): RefusalDetail['words'] {
  const at = timeOfJson(found, payload.time_format);
  if (Number.isNaN(at)) return null;
  return { why: aheadWords(at, nowMs), fix: aheadFix(at, nowMs) };
}

function foundWords(found: unknown, root: unknown): string {
  if (found === undefined) {
    const places = placesIn(root);
    return places.length === 0 ? 'nothing' : `nothing; there is ${places.join(', ')}`;
  }
  if (typeof found === 'string') return foundText(found);
  if (typeof found === 'object' && found !== null)
    return Array.isArray(found) ? 'a list' : 'an object, with places of its own';
  return `${found === null ? '' : `the ${typeof found} `}${String(found)}`;
}

const foundText = (text: string): string => `the text "${short(text)}"`;

function short(text: string): string {
  const characters = [...text.slice(0, 4 * foundCharsMax).replace(/\p{C}/gu, '·')];
  return characters.length > foundCharsMax
    ? `${characters.slice(0, foundCharsMax).join('')}…`
    : characters.join('');
}

/** The first few places of the message that hold a value, as pointers; … where there are more. */
function placesIn(root: unknown): readonly string[] {
  const places: string[] = [];
  const walk = (value: unknown, pointer: string, depth: number): void => {
    if (places.length > placesNamedMax) return;
    if (typeof value !== 'object' || value === null || depth === placesDepthMax) {
      if (pointer !== '') places.push(short(pointer));
      return;
    }
    for (const [key, inner] of Object.entries(value))
      walk(inner, `${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`, depth + 1);
  };
  walk(root, '', 0);
  return places.length > placesNamedMax ? [...places.slice(0, placesNamedMax), '…'] : places;
}
