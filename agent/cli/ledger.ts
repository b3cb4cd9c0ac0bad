/**
 * `forebond ledger verify --data DIR`: recomputes the ledger's chain.
 *
 * Exit 0 with the count and the head, or 1 naming the first record that is not as it was. A loss that
 * the record speaks of is said; where records of the ledger itself were lost, exit 1.
 */
import type { Command } from 'commander';
import { counted } from '#rules/quantity/counted.ts';
import { dataOption } from './data-option.ts';
import { timeArgument } from './time-argument.ts';

/** What the command needs of the rest: the verifying itself, and somewhere to write. */
export interface LedgerParts {
  readonly verify: (folder: string, checkpoint?: string) => VerifiedLedger;
  /** null where there is nothing so old. */
  readonly archive: (
    folder: string,
    beforeMs: number,
    to: string,
  ) => { readonly count: number; readonly head: { readonly id: number } } | null;
  readonly verifyArchive: (folder: string, file: string) => boolean;
  /** Data folder where none is named. */
  readonly defaultFolder: string;
  /** One line, without its end. */
  readonly print: (line: string) => void;
  readonly setExitCode: (code: number) => void;
}

export type VerifiedLedger =
  | {
      readonly ok: true;
      readonly count: number;
      readonly head: { readonly id: number; readonly hash: Uint8Array };
      /** What is wrong with the database that holds it; null where nothing is. */
      readonly damage: string | null;
      /** Losses that the record itself speaks of. */
      readonly noted: readonly NotedLoss[];
    }
  | {
      readonly ok: false;
      readonly id: number;
      readonly why: 'changed' | 'missing' | 'swapped';
    };

export interface NotedLoss {
  readonly id: number;
  /** Epoch milliseconds. */
  readonly at: number;
  readonly words: string;
  readonly ofLedger: boolean;
}

const words = {
  changed: 'was changed',
  missing: 'is missing',
  swapped: 'was swapped with another',
} as const;

export function ledgerCommand(program: Command, parts: LedgerParts): void {
  const ledger = program.command('ledger').description('the chained record of alarms and answers');
  ledger
    .command('verify')
    .description('recompute the chain; name the first record that is not as it was written')
    .addOption(dataOption('data folder').default(parts.defaultFolder))
    .option(
      '--checkpoint <file>',
      'compare with a record noted elsewhere earlier: JSON with id and hash',
    )
    .option(
      '--archive <file>',
      'verify that archive instead: it is what was taken from this folder',
    )
    .option('--json', 'print one JSON object')
    .action((options: VerifyFlags) => {
      if (options.archive !== undefined) {
        const is = parts.verifyArchive(options.data, options.archive);
        parts.print(is ? 'the archive is whole' : 'the archive is not what was taken from here');
        parts.setExitCode(is ? 0 : 1);
        return;
      }
      const verified = parts.verify(options.data, options.checkpoint);
      if (options.json === true) parts.print(verifiedJson(verified));
      else for (const line of verifiedLines(verified)) parts.print(line);
      parts.setExitCode(isWhole(verified) ? 0 : 1);
    });
  archiveCommand(ledger, parts);
}

interface VerifyFlags {
  readonly data: string;
  readonly checkpoint?: string;
  readonly archive?: string;
  readonly json?: boolean;
}

function archiveCommand(ledger: Command, parts: LedgerParts): void {
  ledger
    .command('archive')
    .description('move old records to a file; the chain goes on from an anchor')
    .addOption(dataOption('data folder').default(parts.defaultFolder))
    .requiredOption('--before <time>', 'records of before then (RFC 3339)', timeArgument)
    .requiredOption('--to <file>', 'the file, which must not be there yet')
    .action(({ data, before, to }: { data: string; before: number; to: string }) => {
      const archived = parts.archive(data, before, to);
      parts.print(
        archived === null
          ? 'nothing is so old'
          : `${counted(archived.count, 'record')} up to ${archived.head.id} archived in ${to}`,
      );
      parts.setExitCode(0);
    });
}

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');

/** The chain holds, and nothing of the ledger is known to be missing. */
const isWhole = (verified: VerifiedLedger): boolean =>
  verified.ok && verified.damage === null && !verified.noted.some(({ ofLedger }) => ofLedger);

/** For people: the verdict, and a line for each loss that the record speaks of. */
export function verifiedLines(verified: VerifiedLedger): string[] {
  if (!verified.ok) return [`record ${verified.id} ${words[verified.why]}`];
  const { count, head, damage, noted } = verified;
  if (damage !== null)
    return [
      `the database is damaged (${damage}); ${counted(count, 'record')} of its ledger can still be followed. Start an agent on it: it sets the damaged file aside and says so`,
    ];
  if (count === 0) return ['the ledger is whole: no records yet'];
  const records = `${counted(count, 'record')}, head ${hex(head.hash)}`;
  if (noted.length === 0) return [`the ledger is whole: ${records}`];
  const losses = noted.map(
    ({ id, at, words: said }) => `record ${id}, ${new Date(at).toISOString()}: ${said}`,
  );
  return [
    `the chain holds: ${records}; but it says itself what was lost:`,
    ...losses.slice(0, lossesMax),
    ...(losses.length > lossesMax ? [`and ${losses.length - lossesMax} more`] : []),
  ];
}

const lossesMax = 20;

/** A whole ledger's `id` and `hash` make a checkpoint. */
function verifiedJson(verified: VerifiedLedger): string {
  if (!verified.ok) return JSON.stringify(verified);
  const { count, head, damage, noted } = verified;
  if (damage !== null) return JSON.stringify({ ok: false, damage, count });
  const lost = noted.length === 0 ? {} : { lost: noted };
  return JSON.stringify({
    ok: isWhole(verified),
    count,
    id: head.id,
    hash: hex(head.hash),
    ...lost,
  });
}
