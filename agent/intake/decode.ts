/**
 * From a payload to readings: one decoder a payload kind, chosen when the site is compiled.
 *
 * A decoder gives at least one reading a message and never throws: what cannot be read becomes
 * a reading of bad quality with its cause. To add a kind, add it to the payload type and to the
 * table below; a decoder may give several readings, each with a time of its own.
 */
import {
  instantOfEpoch,
  instantOfEpochMs,
  instantOfEpochS,
  instantOfRfc3339,
} from '#rules/signal/instant-text.ts';
import { numberOfText } from '#rules/signal/number-text.ts';
import { type QualityCode, quality } from '#rules/signal/quality.ts';
import { qualityOfWord } from '#rules/signal/quality-word.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { PayloadWritten, TimeFormat } from '#rules/site/signal-schema.ts';
import type { IntakeCause } from './cause.ts';
import type { Message } from './message.ts';
import { plainDecimalOfBytes } from './number-bytes.ts';
import { type Pointer, parsePointer, valueAt } from './pointer.ts';

export interface ReadingSink {
  /**
   * One reading as the payload has it: `value` in `unit`, or in the promised unit where that is
   * null; `timeMs` NaN where the payload gave none. A bad `code` carries no value.
   */
  reading(
    value: number,
    timeMs: EpochMs,
    unit: string | null,
    code: QualityCode,
    cause: IntakeCause | null,
  ): void;
}

export type Decode = (message: Message, sink: ReadingSink) => void;

type PayloadOf<Kind> = Extract<PayloadWritten, { readonly kind: Kind }>;

type Decoders = {
  readonly [Kind in PayloadWritten['kind']]: (
    payload: PayloadOf<Kind>,
    hasOwnTime: boolean,
  ) => Decode;
};

const decoders: Decoders = {
  plain: () => decodePlain,
  json: decodeJsonBy,
};

/** The decoder for a payload as promised. Throws RangeError on a pointer that is none. */
export function decoderFor(payload: PayloadWritten, hasOwnTime: boolean): Decode {
  const make = decoders[payload.kind] as (payload: PayloadWritten, hasOwnTime: boolean) => Decode;
  return make(payload, hasOwnTime);
}

function refuse(sink: ReadingSink, timeMs: EpochMs, cause: IntakeCause): void {
  const code = cause === 'not-finite' ? quality.notFinite : quality.undecodable;
  sink.reading(0, timeMs, null, code, cause);
}

/** Hands on a number as `numberOfText` gives them: NaN is none, an infinity is not finite. */
function give(
  sink: ReadingSink,
  value: number,
  timeMs: EpochMs,
  unit: string | null,
  code: QualityCode,
  cause: IntakeCause | null,
): void {
  if (Number.isFinite(value)) sink.reading(value, timeMs, unit, code, cause);
  else refuse(sink, timeMs, Number.isNaN(value) ? 'not-a-number' : 'not-finite');
}

function decodePlain(message: Message, sink: ReadingSink): void {
  const value = plainDecimalOfBytes(message.bytes);
  if (value !== null) {
    sink.reading(value, Number.NaN, null, quality.good, null);
    return;
  }
  const text = message.text();
  if (text === null) refuse(sink, Number.NaN, message.cause ?? 'not-utf8');
  else give(sink, numberOfText(text), Number.NaN, null, quality.good, null);
}

/** Numbers, true and false as 1 and 0, and numbers written as text; NaN for anything else. */
function numberOfJson(found: unknown): number {
  if (typeof found === 'number') return found;
  if (typeof found === 'string') return numberOfText(found);
  if (found === true) return 1;
  return found === false ? 0 : Number.NaN;
}

/**
 * A time as the format has it, or as it looks where no format is given. Epoch numbers may be
 * written as text. NaN where there is none.
 */
export function timeOfJson(found: unknown, format: TimeFormat | undefined): EpochMs {
  const isText = typeof found === 'string';
  if (format === 'rfc3339') return isText ? instantOfRfc3339(found) : Number.NaN;
  const epoch = isText ? numberOfText(found) : found;
  if (typeof epoch !== 'number' || Number.isNaN(epoch)) {
    return format === undefined && isText ? instantOfRfc3339(found) : Number.NaN;
  }
  if (format === 'epoch_s') return instantOfEpochS(epoch);
  return format === 'epoch_ms' ? instantOfEpochMs(epoch) : instantOfEpoch(epoch);
}

function pointerOrThrow(text: string): Pointer {
  const pointer = parsePointer(text);
  if (pointer === null) throw new RangeError(`not a JSON Pointer: ${JSON.stringify(text)}`);
  return pointer;
}

const optionalPointer = (text: string | undefined): Pointer | null =>
  text === undefined ? null : pointerOrThrow(text);

function decodeJsonBy(payload: PayloadOf<'json'>, hasOwnTime: boolean): Decode {
  const valuePointer = pointerOrThrow(payload.value);
  const timePointer = optionalPointer(payload.time);
  const unitPointer = optionalPointer(payload.unit);
  const qualityPointer = optionalPointer(payload.quality);
  const format = payload.time_format;

  return (message, sink) => {
    const root = message.json();
    let timeMs = Number.NaN;
    let cause = message.cause;
    if (cause === null && hasOwnTime && timePointer !== null) {
      const found = valueAt(timePointer, root);
      timeMs = timeOfJson(found, format);
      if (Number.isNaN(timeMs)) cause = isAbsent(found) ? 'no-time' : 'time-unreadable';
    }
    if (cause !== null) refuse(sink, timeMs, cause);
    else if (qualityPointer === null) {
      giveValue(root, valuePointer, unitPointer, timeMs, quality.good, null, sink);
    } else {
      const code = qualityOfWord(valueAt(qualityPointer, root));
      if (code === quality.sensorBad) sink.reading(0, timeMs, null, code, 'sensor-bad');
      else {
        const marked = code === null ? 'quality-unreadable' : 'sensor-uncertain';
        const why = code === quality.good ? null : marked;
        const said = code ?? quality.sensorUncertain;
        giveValue(root, valuePointer, unitPointer, timeMs, said, why, sink);
      }
    }
  };
}

export const isAbsent = (found: unknown): boolean => found === undefined || found === null;

function giveValue(
  root: unknown,
  valuePointer: Pointer,
  unitPointer: Pointer | null,
  timeMs: EpochMs,
  code: QualityCode,
  cause: IntakeCause | null,
  sink: ReadingSink,
): void {
  const found = valueAt(valuePointer, root);
  const unit = unitPointer === null ? undefined : valueAt(unitPointer, root);
  if (isAbsent(found)) refuse(sink, timeMs, 'no-value');
  else if (unitPointer === null) give(sink, numberOfJson(found), timeMs, null, code, cause);
  else if (typeof unit !== 'string') refuse(sink, timeMs, 'no-unit');
  else give(sink, numberOfJson(found), timeMs, unit, code, cause);
}
