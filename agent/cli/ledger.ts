/**
 * `forebond ledger verify --data DIR`: recomputes the ledger's chain.
 *
 * Exit 0 with the count and the head, or 1 naming the first record that is not as it was.
 */
import type { Command } from 'commander';
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
    }
  | {
      readonly ok: false;
      readonly id: number;
      readonly why: 'changed' | 'missing' | 'swapped';
    };

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
      parts.print(options.json === true ? verifiedJson(verified) : verifiedLine(verified));
      parts.setExitCode(verified.ok && verified.damage === null ? 0 : 1);
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
          : `${archived.count} records up to ${archived.head.id} archived in ${to}`,
      );
      parts.setExitCode(0);
    });
}

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');

/** One line for people. */
export function verifiedLine(verified: VerifiedLedger): string {
  if (!verified.ok) return `record ${verified.id} ${words[verified.why]}`;
  if (verified.damage !== null)
    return `the database is damaged (${verified.damage}); ${verified.count} records of its ledger can still be followed. Start an agent on it: it sets the damaged file aside and says so`;
  if (verified.count === 0) return 'the ledger is whole: no records yet';
  const records = verified.count === 1 ? '1 record' : `${verified.count} records`;
  return `the ledger is whole: ${records}, head ${hex(verified.head.hash)}`;
}

/** A whole ledger's `id` and `hash` make a checkpoint. */
function verifiedJson(verified: VerifiedLedger): string {
  if (!verified.ok) return JSON.stringify(verified);
  const { count, head, damage } = verified;
  if (damage !== null) return JSON.stringify({ ok: false, damage, count });
  return JSON.stringify({ ok: true, count, id: head.id, hash: hex(head.hash) });
}
