/**
 * A data folder judged again: under the site revisions it names where the site that is asked for is
 * the last of them, else wholly under the site that is asked for.
 *
 * Always true: replayed under its own site, a folder gives exactly the effects its ledger holds.
 * So it ends where the agent stood: what was taken and still waited for its moment is left out.
 */
import type { Effect } from '#rules/input.ts';
import type { CompiledSite } from '#rules/plan/compile.ts';
import type { Plan } from '#rules/plan/plan.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import type { FedItem } from '../replay/feed.ts';
import { type ReplayEnd, type ReplayPorts, replayRecord } from '../replay/replay.ts';
import { compileSource, type SiteSource, siteText, sourceOfText } from '../site/revision.ts';
import { ReadOnlyStore } from '../store/read-only.ts';
import { type RecordItem, readRecord } from '../store/reader.ts';
import { planOfText } from './plan-book.ts';

export interface FolderSpan {
  /** Judged at or after. */
  readonly sinceMs?: EpochMs;
  /** Judged before. */
  readonly untilMs?: EpochMs;
  /** Under the site that is asked for even where the record's own revisions would count. */
  readonly wholly?: boolean;
}

export interface FolderSinks {
  /** The site that is asked for, with the wildcard values of the record; before anything else. */
  readonly begin?: (compiled: CompiledSite) => void;
  readonly emit: (effect: Effect) => void;
  readonly damage?: (damage: Extract<RecordItem, { kind: 'damage' }>) => void;
  readonly progress?: (atMs: EpochMs) => void;
}

/** Throws AgentError where the folder's store cannot be opened. */
export function replayFolder(
  source: SiteSource,
  folder: string,
  span: FolderSpan,
  sinks: FolderSinks,
): ReplayEnd {
  const store = ReadOnlyStore.open(folder);
  const revisions = store.siteRevisions();
  const judgedTo = store.judgedTo();
  const rebases = store.rebases(span.sinceMs ?? 0);
  const last = store.revisionBefore();
  const first = span.sinceMs === undefined ? null : store.revisionBefore(span.sinceMs);
  store.close();
  const texts = new Map(revisions.map(({ hash, text }) => [hash, text]));
  const lastText = last === null ? undefined : texts.get(last);
  const { instances, topics } =
    lastText === undefined ? { instances: {}, topics: {} } : sourceOfText(lastText);
  const own = span.wholly !== true && siteText(source, instances, topics) === lastText;
  const compiled = compileSource(source, instances, undefined, topics);
  sinks.begin?.(compiled);
  const kept = (revision: string): Plan => {
    const text = texts.get(revision);
    if (text === undefined) throw new Error(`nobody kept the site revision ${revision}`);
    return planOfText(text);
  };
  let plan = own && first !== null ? kept(first) : compiled.plan;
  const ports: ReplayPorts = {
    plan,
    planOf: (revision) => {
      plan = kept(revision);
      return plan;
    },
    emit: sinks.emit,
    ...(sinks.progress === undefined ? {} : { progress: sinks.progress }),
  };
  const indexOf = ({ name }: { readonly name: string }): number =>
    plan.signals.findIndex(({ id }) => id === name);
  const items = undamaged(readRecord(folder, { ...span, indexOf }), sinks);
  return replayRecord(items, own, ports, span.untilMs ?? judgedTo, rebases);
}

function* undamaged(items: Iterable<RecordItem>, sinks: FolderSinks): Generator<FedItem> {
  for (const item of items)
    if (item.kind === 'damage') sinks.damage?.(item);
    else yield item;
}
