/** What wildcards took, and whose the places are, as the site that judged last has them. */

import { sourceOfText } from '../site/revision.ts';
import { inputKind } from '../store/contract.ts';
import type { StoreReader } from '../store/store-types.ts';
import type { Places } from './plan-book.ts';

/**
 * By the site that the record names last, not by the revision that was kept last: a site that
 * comes back, as after a change that was undone, has its row already.
 */
export function lastPlaces(read: StoreReader, sealedSeq: number): Places {
  const revisions = read.siteRevisions();
  if (revisions.length === 0) return { instances: {} };
  const last = revisions.length === 1 ? null : lastNamed(read, sealedSeq);
  const named = revisions.find(({ hash }) => hash === last);
  // Those of one number came one after the other, before anything was judged under them.
  return sourceOfText((named ?? revisions.at(-1)!).text);
}

function lastNamed(read: StoreReader, sealedSeq: number): string | null {
  let last: string | null = null;
  const passOver = (): void => undefined;
  for (const { kind, body } of read.inputsAfter(sealedSeq, passOver))
    if (kind === inputKind.site)
      last = (JSON.parse(new TextDecoder().decode(body)) as { revision: string }).revision;
  return last ?? read.snapshots()[0]?.revision ?? null;
}
