/**
 * Recorded data in CSV, long (`time,signal,value[,unit][,quality]`) or wide (`time,<signal>…`).
 *
 * Values come out as written, neither calibrated nor converted: they take the way of a live
 * payload. A row that cannot be read is told with its line and skipped; too many end the reading.
 */
import { counted } from '#rules/quantity/counted.ts';
import { type QualityCode, quality } from '#rules/signal/quality.ts';
import { qualityOfWord } from '#rules/signal/quality-word.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { NumberCells, TimeCells } from './csv-cells.ts';
import { type CsvLayout, layoutOf, type Separator, separatorOf } from './csv-layout.ts';
import { recordsOf } from './csv-records.ts';
import { LocalTime } from './local-time.ts';
import { linesOf, NotText } from './text-lines.ts';

export interface RecordedRow {
  readonly line: number;
  readonly timeMs: EpochMs;
  /** The column's or cell's text; nobody has looked whether there is such a signal. */
  readonly signal: string;
  /** NaN where a bad row of a long file has no value; an infinity for `NaN`, `inf` and beyond a double. */
  readonly value: number;
  /** null: the signal's promised unit. */
  readonly unit: string | null;
  readonly quality: QualityCode;
}

export interface BadRow {
  readonly line: number;
  /** What is wrong with it, in words. */
  readonly problem: string;
}

export interface CsvOptions {
  /** For messages. */
  readonly path: string;
  /** IANA zone of local times. */
  readonly timezone?: string;
  /** So many bad rows are allowed; by default 1 % of the rows, judged at the end. */
  readonly badRowsMax?: number;
  readonly onBadRow: (row: BadRow) => void;
}

/**
 * The readings of a file, in its order, in blocks. Throws AgentError: CSV_ENCODING, CSV_HEADER,
 * CSV_NEEDS_TIMEZONE, CSV_TIMEZONE_UNKNOWN, CSV_BAD_ROWS (by default only after the last block).
 */
export async function* readRecorded(
  chunks: AsyncIterable<Uint8Array>,
  options: CsvOptions,
): AsyncGenerator<RecordedRow[]> {
  const reader = new CsvReader(options);
  try {
    for await (const block of linesOf(chunks, limits.csvLineLengthMax)) {
      const rows = reader.block(block.firstLine, block.lines);
      if (rows.length > 0) yield rows;
    }
  } catch (cause) {
    if (cause instanceof NotText)
      throw new AgentError('CSV_ENCODING', { path: options.path }, cause);
    throw cause;
  }
  reader.end();
}

interface Columns {
  readonly separator: Separator;
  readonly layout: CsvLayout;
  readonly numbers: NumberCells;
}

class CsvReader {
  readonly #options: CsvOptions;
  readonly #times: TimeCells;
  #columns: Columns | null = null;
  #rows = 0;
  #bad = 0;
  #firstBad: BadRow | null = null;

  constructor(options: CsvOptions) {
    this.#options = options;
    this.#times = new TimeCells(zoneOf(options.timezone));
  }

  block(firstLine: number, block: readonly (string | null)[]): RecordedRow[] {
    const lines: string[] = [];
    const numbers: number[] = [];
    block.forEach((text, i) => {
      if (text === null) {
        this.#rows += 1;
        this.#refuse(firstLine + i, 'it is longer than any row');
      } else if (text.trim() === '') return;
      else if (this.#columns === null) this.#columns = this.#header(text);
      else {
        lines.push(text);
        numbers.push(firstLine + i);
      }
    });
    const out: RecordedRow[] = [];
    if (this.#columns === null) return out;
    const records = recordsOf(lines, this.#columns.separator);
    for (let i = 0; i < records.length; i += 1) {
      this.#rows += 1;
      const problem = this.#record(records[i]!, numbers[i]!, this.#columns, out);
      if (problem !== null) this.#refuse(numbers[i]!, problem);
    }
    return out;
  }

  /** Throws where there was no header, or more bad rows than allowed. */
  end(): void {
    if (this.#columns === null) this.#noHeader('it is empty');
    if (this.#bad > (this.#options.badRowsMax ?? this.#rows * limits.csvBadRowsShareMax)) {
      this.#tooManyBad();
    }
  }

  #header(text: string): Columns {
    if (text.includes('\0')) throw new AgentError('CSV_ENCODING', { path: this.#options.path });
    const separator = separatorOf(text);
    if (separator === null) return this.#noHeader('it has one column');
    const [cells] = recordsOf([text], separator);
    if (cells === null || cells === undefined) return this.#noHeader('its quotes do not match');
    const layout = layoutOf(cells);
    if (typeof layout === 'string') return this.#noHeader(layout);
    return { separator, layout, numbers: new NumberCells(separator) };
  }

  #noHeader(problem: string): never {
    throw new AgentError('CSV_HEADER', { path: this.#options.path, problem });
  }

  /** Adds what the row says to `out`; or says what is wrong with it. */
  #record(
    cells: readonly string[] | null,
    line: number,
    by: Columns,
    out: RecordedRow[],
  ): string | null {
    const { layout } = by;
    if (cells === null) return 'its quotes do not match';
    if (cells.length !== layout.columns) {
      return `it has ${counted(cells.length, 'cell')} and the header ${layout.columns}`;
    }
    const timeMs = this.#times.read(cells[0]!);
    if (timeMs === null) {
      const { path } = this.#options;
      throw new AgentError('CSV_NEEDS_TIMEZONE', { text: cells[0]!, line, path });
    }
    if (Number.isNaN(timeMs)) return `"${cells[0]}" is no time`;
    const rows =
      layout.kind === 'long'
        ? longRow(cells, line, timeMs, layout, by.numbers)
        : wideRows(cells, line, timeMs, layout.signals, by.numbers);
    if (typeof rows === 'string') return rows;
    out.push(...rows);
    return null;
  }

  #refuse(line: number, problem: string): void {
    const row = { line, problem };
    this.#bad += 1;
    this.#firstBad ??= row;
    this.#options.onBadRow(row);
    const allowed = this.#options.badRowsMax;
    if (allowed !== undefined && this.#bad > allowed) this.#tooManyBad();
  }

  #tooManyBad(): never {
    throw new AgentError('CSV_BAD_ROWS', {
      path: this.#options.path,
      bad: this.#bad,
      rows: this.#rows,
      line: this.#firstBad?.line ?? 0,
      problem: this.#firstBad?.problem ?? '',
    });
  }
}

function zoneOf(timezone: string | undefined): LocalTime | null {
  if (timezone === undefined) return null;
  try {
    return new LocalTime(timezone);
  } catch (cause) {
    throw new AgentError('CSV_TIMEZONE_UNKNOWN', { timezone }, cause);
  }
}

function longRow(
  cells: readonly string[],
  line: number,
  timeMs: EpochMs,
  layout: Extract<CsvLayout, { kind: 'long' }>,
  numbers: NumberCells,
): RecordedRow[] | string {
  const signal = cells[1]!.trim();
  if (signal === '') return 'it names no signal';
  const word = cells[layout.quality]?.trim() ?? '';
  const code = word === '' ? quality.good : qualityOfWord(word);
  if (code === null) return `"${word}" is no quality: good, uncertain or bad`;
  const text = cells[2]!.trim();
  const value = numbers.read(text);
  const noValue = text === '' && code === quality.sensorBad;
  if (Number.isNaN(value) && !noValue)
    return text === '' ? 'it has no value' : `"${text}" is no number`;
  const unit = cells[layout.unit]?.trim() ?? '';
  return [{ line, timeMs, signal, value, unit: unit === '' ? null : unit, quality: code }];
}

/** An empty cell is no reading. */
function wideRows(
  cells: readonly string[],
  line: number,
  timeMs: EpochMs,
  signals: readonly string[],
  numbers: NumberCells,
): RecordedRow[] | string {
  const rows: RecordedRow[] = [];
  for (let i = 0; i < signals.length; i += 1) {
    const signal = signals[i]!;
    const text = cells[i + 1]!.trim();
    if (text === '') continue;
    const value = numbers.read(text);
    if (Number.isNaN(value)) return `"${text}" of ${signal} is no number`;
    rows.push({ line, timeMs, signal, value, unit: null, quality: quality.good });
  }
  return rows;
}
