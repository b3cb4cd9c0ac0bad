/**
 * Reads one rule's written settings for a signal: "7 Cel" to 7 in the signal's canonical unit.
 *
 * Every problem is added to the caller's list and none thrown; what could not be read answers
 * as if it were absent, so that one pass finds everything.
 */
import { parseDuration } from '../quantity/duration.ts';
import { parseQuantity, type Quantity, withoutDust } from '../quantity/quantity.ts';
import {
  canonicalUnit,
  differenceToCanonical,
  dimensionWords,
  toCanonical,
  type Unit,
} from '../quantity/unit.ts';
import type { Dimension } from '../quantity/unit-table.ts';
import type { MarkOf } from './kind.ts';
import type { SettingsProblem, SettingsReader } from './settings.ts';

export interface ReadSignal {
  /** Canonical UCUM code; `K` is a temperature difference. Another code throws. */
  readonly unit: string;
  /** Decimals of the resolution; null for none. */
  readonly digits: number | null;
  readonly expectEveryMs: number | null;
}

/** What a rule without a signal reads its settings by. */
export const noSignal: ReadSignal = { unit: '1', digits: null, expectEveryMs: null };

/** `signals`: what the rule judges, the one it is about first; one alone stands for a list of it. */
export function settingsReader(
  written: Readonly<Record<string, unknown>>,
  signals: ReadSignal | readonly ReadSignal[],
  problems: SettingsProblem[],
  marks: readonly MarkOf[] = [],
): SettingsReader {
  const all = 'unit' in signals ? [signals] : signals;
  return new WrittenSettings(written, all, 0, problems, marks);
}

class WrittenSettings implements SettingsReader {
  readonly unit: string;
  readonly resolution: number;
  readonly expectEveryMs: number | null;
  readonly signalCount: number;
  readonly marks: readonly MarkOf[];
  private readonly written: Readonly<Record<string, unknown>>;
  private readonly signals: readonly ReadSignal[];
  private readonly own: Unit;
  private readonly problems: SettingsProblem[];

  constructor(
    written: Readonly<Record<string, unknown>>,
    signals: readonly ReadSignal[],
    input: number,
    problems: SettingsProblem[],
    marks: readonly MarkOf[],
  ) {
    const signal = signals.length === 0 && input === 0 ? noSignal : signals[input];
    if (signal === undefined) throw new RangeError(`the rule has no signal ${input}`);
    this.signals = signals;
    this.signalCount = signals.length;
    this.marks = marks;
    this.unit = signal.unit;
    this.resolution = signal.digits === null ? 0 : 1 / 10 ** signal.digits;
    this.expectEveryMs = signal.expectEveryMs;
    this.written = written;
    this.own = canonicalUnit(signal.unit);
    this.problems = problems;
  }

  of(input: number): SettingsReader {
    return new WrittenSettings(this.written, this.signals, input, this.problems, this.marks);
  }

  limit(key: string): number | null {
    const read = this.quantity(key, 'limit');
    if (read === null) return null;
    const canonical = isDifference(this.own) ? differenceOf(read) : readingOf(read);
    return withoutDust(canonical);
  }

  difference(key: string, fallback: number): number {
    const read = this.quantity(key, 'difference');
    if (read === null) return fallback;
    if (read.value >= 0) return withoutDust(differenceOf(read));
    return this.refuse(
      key,
      fallback,
      `a difference cannot be negative (${read.value} ${read.unit.code})`,
      `write it as "${-read.value} ${read.unit.code}"`,
    );
  }

  share(key: string): number | null {
    if (!this.has(key)) return null;
    const read = parseQuantity(asText(this.at(key)));
    if (!read.ok || read.value.unit.dimension !== 'ratio') return null;
    const percent = readingOf(read.value);
    if (percent >= 0) return percent / 100;
    return this.refuse(key, null, 'a share cannot be negative', `write it as "${-percent} %"`);
  }

  duration(key: string, fallbackMs: number): number {
    if (!this.has(key)) return fallbackMs;
    const read = parseDuration(asText(this.at(key)));
    return read.ok ? read.value : this.refuse(key, fallbackMs, read.problem, read.fix);
  }

  number(key: string, fallback: number): number {
    if (!this.has(key)) return fallback;
    const value = this.at(key);
    if (typeof value === 'number' && Number.isFinite(value)) return value;
    return this.refuse(key, fallback, `${asText(value)} is no number`, 'write a bare number, as 5');
  }

  flag(key: string, fallback: boolean): boolean {
    if (!this.has(key)) return fallback;
    const value = this.at(key);
    if (typeof value === 'boolean') return value;
    return this.refuse(key, fallback, `${asText(value)} is no yes or no`, 'write true or false');
  }

  text(key: string): string | null {
    if (!this.has(key)) return null;
    const value = this.at(key);
    if (typeof value === 'string') return value;
    return this.refuse(key, null, `${asText(value)} is no text`, 'write it in quotes');
  }

  has(key: string): boolean {
    const value = this.at(key);
    return value !== undefined && value !== null;
  }

  report(problem: SettingsProblem): void {
    this.problems.push(problem);
  }

  private at(key: string): unknown {
    return Object.hasOwn(this.written, key) ? this.written[key] : undefined;
  }

  /** The quantity at `key` if it can be compared with the signal; null when absent or refused. */
  private quantity(key: string, use: 'limit' | 'difference'): Quantity | null {
    if (!this.has(key)) return null;
    const own = this.own;
    const read = parseQuantity(asText(this.at(key)), `7 ${own.code}`);
    if (!read.ok) return this.refuse(key, null, read.problem, read.fix);
    const { value, unit } = read.value;
    if (fits(unit, own, use)) return read.value;
    return this.refuse(
      key,
      null,
      `${use} in ${unit.code} for ${dimensionWords(own)} (${own.code})`,
      `write it as "${value} ${own.code}"`,
    );
  }

  private refuse<Answer>(key: string, answer: Answer, problem: string, fix: string): Answer {
    this.report({ path: [key], problem, fix });
    return answer;
  }
}

const isDifference = (unit: Unit): boolean => unit.dimension === 'temperatureDifference';
const readingOf = (read: Quantity): number => toCanonical(read.value, read.unit);
const differenceOf = (read: Quantity): number => differenceToCanonical(read.value, read.unit);

/**
 * Whether a written unit can be compared with the signal's own. A difference of temperatures may be
 * written in any temperature unit; a limit of a temperature must not be written as a difference.
 */
function fits(written: Unit, own: Unit, use: 'limit' | 'difference'): boolean {
  if (isDifference(own) || (own.dimension === 'temperature' && use === 'difference')) {
    return temperatures.has(written.dimension);
  }
  return written.dimension === own.dimension;
}

const temperatures: ReadonlySet<Dimension> = new Set(['temperature', 'temperatureDifference']);

const asText = (value: unknown): string =>
  typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));
