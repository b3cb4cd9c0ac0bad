/** What opening the store found, as a sentence for people. */
import type { Finding } from '../store/store-types.ts';

export function findingWords(finding: Finding): string {
  switch (finding.kind) {
    case 'lost':
      return `Records ${finding.fromSeq} to ${finding.toSeq} of the input log were lost to disk damage.`;
    case 'ledger-lost':
      return `Ledger records ${finding.fromId} to ${finding.toId} were lost to disk damage.`;
    case 'ledger-differs':
      return `Ledger record ${finding.id} is not the one last noted beside the database.`;
    case 'damaged-input':
      return `Record ${finding.seq} of the input log is damaged and was skipped.`;
    case 'damaged-snapshot':
      return `The snapshot at record ${finding.seq} is damaged; an older one was used.`;
    case 'unreadable':
      return `The database could not be read (${finding.why}); a new one was begun.`;
    case 'log-unreadable':
      return `The database's log could not be used (${finding.why}); it was set aside as ${finding.movedTo}.`;
    case 'high-water-unreadable':
      return 'The high-water file could not be read, so losses at the end would not show.';
    case 'migrated':
      return `The store was migrated from schema ${finding.from} to ${finding.to}; the old one is kept as ${finding.backup}.`;
    case 'no-ballast':
      return `The reserve for a full disk could not be made: ${finding.why}.`;
  }
}

/** Findings that people must act on; a migration is none. */
export const isAlarming = (finding: Finding): boolean => finding.kind !== 'migrated';
