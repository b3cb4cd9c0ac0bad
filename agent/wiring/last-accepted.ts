/**
 * A site file that cannot be taken at a start: the site as it was accepted last, from the record.
 *
 * Always true: it is that revision whole, with its sheets and its own rules, or nothing; and never
 * that of a site of another name.
 */
import { readSheet } from '#rules/material/read-sheet.ts';
import { compileSite } from '#rules/plan/compile.ts';
import { AgentError } from '../errors.ts';
import { ownKindsOf } from '../site/extensions/own-kinds.ts';
import { fileText } from '../site/read-site.ts';
import { revisionOf, type SiteSource, sheetsOf, siteText, sourceOfText } from '../site/revision.ts';
import { timezoneProblem } from '../site/timezone.ts';
import { readYaml } from '../site/yaml.ts';
import { ReadOnlyStore } from '../store/read-only.ts';

export interface LastAccepted {
  readonly source: SiteSource;
  readonly revision: string;
}

/** null where the folder holds none that can be had whole, or the file names another site. */
export async function lastAccepted(file: string, folder: string): Promise<LastAccepted | null> {
  const kept = newestKept(folder);
  const source = kept === null ? null : wholeSource(kept);
  if (kept === null || source === null) return null;
  const name = await nameIn(file);
  return name === null || name === source.site.site ? { source, revision: kept.hash } : null;
}

interface Kept {
  readonly hash: string;
  readonly text: string;
}

/** Whatever is wrong with the folder: the start itself would say so. */
function newestKept(folder: string): Kept | null {
  let store: ReadOnlyStore | null = null;
  try {
    store = ReadOnlyStore.open(folder);
    const revisions = store.siteRevisions();
    const last = store.revisionBefore();
    // Where the log is gone the settings that were backed up stand alone.
    return revisions.find(({ hash }) => hash === last) ?? revisions.at(-1) ?? null;
  } catch (error) {
    if (error instanceof AgentError) return null;
    throw error;
  } finally {
    store?.close();
  }
}

/** As it was, and as this version would accept it; null where it is not. */
function wholeSource({ hash, text }: Kept): SiteSource | null {
  if (revisionOf(text) !== hash) return null;
  try {
    const { source, instances, topics } = sourceOfText(text);
    return siteText(source, instances, topics) === text && isAcceptable(source) ? source : null;
  } catch {
    // A text of another version, whose shape is not known here.
    return null;
  }
}

function isAcceptable(source: SiteSource): boolean {
  if (timezoneProblem(source.site.timezone) !== null) return false;
  const own = ownKindsOf(source.extensions ?? {});
  const sheets = Object.values(source.materials).map(readSheet);
  if ([own, ...sheets].some(({ problems }) => problems.length > 0)) return false;
  return compileSite(source.site, sheetsOf(source), {}, '', [], own.kinds).problems.length === 0;
}

/** What the file calls its site; null where nobody can tell. */
async function nameIn(file: string): Promise<string | null> {
  const text = await fileText(file);
  const line = typeof text === 'string' ? /^site:.*$/m.exec(text) : null;
  // Where the file ends within it the name may be cut off.
  if (line === null || line.index + line[0].length === line.input.length) return null;
  const { value } = readYaml(line[0], file);
  const name = value !== null && typeof value === 'object' && 'site' in value ? value.site : null;
  return typeof name === 'string' ? name : null;
}
