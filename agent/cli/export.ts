/**
 * `forebond export --data DIR --signal ID… --since T --until T --format csv`: samples out, also
 * while an agent runs on the folder.
 *
 * The long format that `replay` reads: `time,signal,value,unit,quality,cause` (RFC 4180), times in
 * RFC 3339 UTC. A bad sample has no value; one that was kept and never judged is not good. Numbers
 * stay numbers; a text that a spreadsheet would take for a formula gets an apostrophe in front.
 */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { causeStored, gradeStored } from '#rules/signal/doubt.ts';
import { instantOfRfc3339, lastInstantMs } from '#rules/signal/instant-text.ts';
import { isBad } from '#rules/signal/quality.ts';
import { type RangeItem, type RangeRequest, readRange } from '../store/range.ts';
import { csvText } from '../web/csv-cell.ts';
import { openDerived } from '../wiring/open-derived.ts';
import { dataOption } from './data-option.ts';

/** What the command needs of the rest: reading, and somewhere to write. */
export interface ExportParts {
  readonly readRange?: (folder: string, request: RangeRequest) => Iterable<RangeItem>;
  /** Data folder where none is named. */
  readonly defaultFolder: string;
  /** Resolves once there is room for more; false when nobody reads any more. By default stdout. */
  readonly write?: (text: string) => Promise<boolean>;
  /** One line for people, apart from the output. By default on stderr. */
  readonly warn?: (line: string) => void;
  readonly setExitCode: (code: number) => void;
}

interface ExportOptions {
  readonly data: string;
  readonly signal?: readonly string[];
  readonly since?: number;
  readonly until?: number;
}

function instant(text: string): number {
  const at = instantOfRfc3339(text);
  if (Number.isNaN(at))
    throw new InvalidArgumentError('It is no time such as 2026-11-25T09:30:00Z.');
  return at;
}

export function exportCommand(program: Command, parts: ExportParts): void {
  program
    .command('export')
    .description('write stored samples to the standard output')
    .addOption(dataOption('data folder').default(parts.defaultFolder))
    .option('--signal <ids...>', 'line/station/signal; all signals where none is named')
    .option('--since <time>', 'samples at or after it (RFC 3339)', instant)
    .option('--until <time>', 'samples before it (RFC 3339)', instant)
    .addOption(new Option('--format <format>').choices(['csv']).default('csv'))
    .action(async (options: ExportOptions) => {
      const whole = await exportCsv(parts, options.data, {
        signals: options.signal ?? [],
        sinceMs: options.since ?? 0,
        untilMs: options.until ?? lastInstantMs + 1,
      });
      parts.setExitCode(whole ? 0 : 1);
    });
}

const rangeWithOpen = (folder: string, request: RangeRequest): Iterable<RangeItem> =>
  readRange(folder, request, openDerived);

/** False where some of it could not be read; what that was is said. */
async function exportCsv(
  parts: ExportParts,
  folder: string,
  request: RangeRequest,
): Promise<boolean> {
  const { write = toStandardOutput, warn = toStandardError } = parts;
  let whole = true;
  let text = header;
  for (const item of (parts.readRange ?? rangeWithOpen)(folder, request)) {
    if (item.kind === 'samples') {
      if (!(await write(text + csvRows(item)))) return whole;
      text = '';
    } else {
      whole = false;
      warn(damageLine(item));
    }
  }
  await write(text);
  return whole;
}

function toStandardOutput(text: string): Promise<boolean> {
  const { promise, resolve, reject } = Promise.withResolvers<boolean>();
  const failed = (error: Error): void => {
    // The program behind the pipe, as `head`, has seen enough.
    if ('code' in error && error.code === 'EPIPE') resolve(false);
    else reject(error);
  };
  process.stdout.once('error', failed);
  process.stdout.write(text, (error) => {
    if (error) failed(error);
    else {
      process.stdout.off('error', failed);
      resolve(true);
    }
  });
  return promise;
}

const toStandardError = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

const header = 'time,signal,value,unit,quality,cause\r\n';

function csvRows({ batch, signals }: RangeItem & { readonly kind: 'samples' }): string {
  const names = signals.map(({ name }) => csvText(name));
  const units = signals.map(({ unit }) => csvText(unit));
  let text = '';
  for (let i = 0; i < batch.count; i += 1) {
    const signal = batch.signal[i]!;
    const code = batch.quality[i]!;
    const time = new Date(batch.at[i]!).toISOString();
    const value = isBad(code) ? '' : String(batch.value[i]!);
    const flags = batch.flags[i]!;
    const cause = csvText(causeStored(code, flags) ?? '');
    text += `${time},${names[signal]},${value},${units[signal]},${gradeStored(code, flags)},${cause}\r\n`;
  }
  return text;
}

function damageLine(item: RangeItem & { readonly kind: 'damage' }): string {
  const [from, to] = [item.fromMs, item.toMs].map((at) => new Date(at).toISOString());
  return `left out: ${item.signal ?? 'some signals'} from ${from} to ${to}: ${item.reason}`;
}
