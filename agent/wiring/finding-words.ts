/** What opening the store found, as a sentence for people. */
import { counted } from '#rules/quantity/counted.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { LedgerBody } from '../store/contract.ts';
import { type Finding, lossKinds, type Store } from '../store/store-types.ts';
import type { DamageBook } from './damage-book.ts';

/** As the ledger has it. */
export const findingRecord = (finding: Finding, clock: { wallMs(): EpochMs }): LedgerBody => ({
  type: 'finding',
  at: clock.wallMs(),
  finding,
  words: findingWords(finding),
});

export function findingWords(finding: Finding): string {
  switch (finding.kind) {
    case 'lost':
      return `Records ${finding.fromSeq} to ${finding.toSeq} of the input log were lost to disk damage.`;
    case 'ledger-lost':
      return `Ledger records ${finding.fromId} to ${finding.toId} were lost to disk damage.`;
    case 'log-cut':
      return `The database's log is damaged behind record ${finding.afterSeq}: ${counted(finding.commits, 'commit')} or more, of the last second before the end, were lost, and with them what they held of the ledger.`;
    case 'ledger-differs':
      return `Ledger record ${finding.id} is not the one last noted beside the database.`;
    case 'damaged-input':
      return `Record ${finding.seq} of the input log is damaged and was skipped.`;
    case 'damaged-snapshot':
      return `The snapshot at record ${finding.seq} is damaged; an older one was used.`;
    case 'unreadable':
      return unreadableWords(finding);
    case 'gone':
      return goneWords(finding);
    case 'log-unreadable':
      return `The database's log could not be used (${finding.why}); it was set aside as ${finding.movedTo}.`;
    case 'high-water-unreadable':
      return highWaterWords;
    case 'migrated':
      return `The store was migrated from schema ${finding.from} to ${finding.to}; the old one is kept as ${finding.backup}.`;
    case 'no-ballast':
      return `The reserve for a full disk could not be made: ${finding.why}.`;
  }
}

export const highWaterWords =
  'The file that says how far the record had come could not be read, so losses at its end would not show.';

function unreadableWords(finding: Extract<Finding, { kind: 'unreadable' }>): string {
  const { why, movedTo, restoredFrom } = finding;
  const aside = movedTo === null ? '' : ` It was moved aside as ${movedTo}.`;
  return `The database could not be read (${why}): the samples and alarms kept in it are not at hand.${aside} ${begunWords(restoredFrom)} Check the disk, and replace it if this repeats.`;
}

function goneWords({ path, toSeq, toId, restoredFrom }: Extract<Finding, { kind: 'gone' }>) {
  const records =
    toSeq + toId === 0
      ? ''
      : ` with records 1 to ${toSeq} of the input log and 1 to ${toId} of the ledger`;
  return `The record is gone: ${path} is missing or empty, and there was one${records}. ${begunWords(restoredFrom)} If somebody has the file, stop the agent, put it back in the place of the new one, without the -wal and -shm beside that, and start again.`;
}

const begunWords = (restoredFrom: string | null): string =>
  restoredFrom === null
    ? 'A new one was begun, without anything of the old: there is no backup of its settings. Set again what stood on hold.'
    : `A new one was begun, with the signals and holds of the backup ${restoredFrom}. Check what stands on hold: what was set or lifted since then is not in it.`;

/** As long as the file stands there, it is spoken of. */
const setAsideWords = (name: string): string =>
  `${name} in the data folder is a database that could not be read and was moved aside: keep it for whoever can get something out of it, then move it out of the folder.`;

/** All that is wrong with the record, a sentence each. `lockRemadeAt`: when the lock was made again. */
export function recordWords(
  store: Pick<Store, 'findings' | 'setAside'>,
  damage: DamageBook,
  lockRemadeAt: EpochMs | null,
  begunAnew = false,
): string[] {
  const found = store.findings.filter(isAlarming).map(findingWords);
  const aside = store.setAside.filter((name) => !found.some((words) => words.includes(name)));
  const lock = lockRemadeAt === null ? [] : [lockWords(lockRemadeAt)];
  const anew = begunAnew ? [begunAnewWords] : [];
  return [...found, ...anew, ...aside.map(setAsideWords), ...lock, ...damage.words()];
}

/** The engine's state is gone, and with it what every rule had gathered. */
export const begunAnewWords =
  'What was judged before could not be taken up from the record: judging began anew. An alarm from before is no longer followed, and closed; look at each place whose alarm stood, and expect those that still hold to be raised again.';

const lockWords = (at: EpochMs): string =>
  `agent.lock was removed from the data folder at ${new Date(at).toISOString()} and is made again: without it two agents could write one store. Find out who tidies there.`;

/** Something kept is lost; the other findings are a nuisance. */
export const isLoss = (finding: Finding): boolean => lossKinds.includes(finding.kind);

/** Findings that people must act on; a migration is none. */
export const isAlarming = (finding: Finding): boolean => finding.kind !== 'migrated';
