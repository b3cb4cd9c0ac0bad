/**
 * The site that `run` runs on: its file's; where that cannot be taken, as it was accepted last.
 *
 * Always true: a file with a fault decides nothing. At a start it must not decide that nobody watches.
 */
import { readSite } from '../site/read-site.ts';
import type { SiteSource } from '../site/revision.ts';
import { lastAccepted } from '../wiring/last-accepted.ts';
import type { RefusedFile } from '../wiring/site-desk.ts';
import { problemLine, problemLines } from './check.ts';
import type { CliParts } from './parts.ts';

export interface SiteToRun {
  readonly source: SiteSource;
  /** Why it is not the file's; null where it is. */
  readonly refused: RefusedFile | null;
}

/** null where there is none: every problem has been printed and the exit code set. */
export async function siteToRun(
  file: string,
  folder: string,
  parts: Pick<CliParts, 'complain' | 'setExitCode'>,
): Promise<SiteToRun | null> {
  const reading = await readSite(file);
  if (reading.ok) return { source: reading.source, refused: null };
  const last = await lastAccepted(file, folder);
  if (last !== null) {
    const { source, revision } = last;
    const lines = reading.problems.map(problemLine);
    return { source, refused: { revision, lines, more: reading.more } };
  }
  for (const line of problemLines(reading)) parts.complain(line);
  parts.setExitCode(1);
  return null;
}
