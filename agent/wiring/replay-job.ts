/**
 * One replay from what a person asks for: a data folder or a CSV file, the whole of it or a span,
 * under a site. The CSV way takes the wildcard values that the names in the file imply.
 */
import { createReadStream, statSync } from 'node:fs';
import type { Effect } from '#rules/input.ts';
import { isInstance } from '#rules/plan/binding.ts';
import type { CompiledSite, Instances } from '#rules/plan/compile.ts';
import { causeOf } from '#rules/signal/quality.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { AgentError } from '../errors.ts';
import { createIntake } from '../intake/intake.ts';
import { limits } from '../limits.ts';
import { BadRows } from '../replay/bad-rows.ts';
import { readRecorded } from '../replay/csv.ts';
import { type RecordedValue, type ReplayEnd, replayValues } from '../replay/replay.ts';
import { compileSource, type SiteSource } from '../site/revision.ts';
import type { RecordItem } from '../store/reader.ts';
import { replayFolder } from './replay-folder.ts';

/** Plain data, so that it can be handed to a thread. */
export interface ReplayJob {
  readonly source: SiteSource;
  /** The site file, for messages. */
  readonly site: string;
  /** A CSV file or a data folder. */
  readonly from: string;
  readonly sinceMs?: EpochMs;
  readonly untilMs?: EpochMs;
  readonly timezone?: string;
  readonly badRowsMax?: number;
  /** Of a data folder: judged under this site from end to end, whatever sites the record names. */
  readonly wholly?: boolean;
}

export interface ReplaySinks {
  /** The site, with the wildcard values of the record; before anything else. */
  readonly begin: (compiled: CompiledSite) => void;
  readonly emit: (effect: Effect) => void;
  readonly damage: (damage: Extract<RecordItem, { kind: 'damage' }>) => void;
  /** What was passed over, and why: one line for people. */
  readonly complain: (line: string) => void;
  /** How far it is, now and then. */
  readonly progress?: (atMs: EpochMs) => void;
}

/** Throws AgentError: REPLAY_NOTHING_THERE, REPLAY_NOTHING_KNOWN, and those of the store and of CSV. */
export async function replayJob(job: ReplayJob, sinks: ReplaySinks): Promise<ReplayEnd> {
  const there = statSync(job.from, { throwIfNoEntry: false });
  if (there === undefined) throw new AgentError('REPLAY_NOTHING_THERE', { path: job.from });
  if (!there.isDirectory()) return replayCsv(job, sinks);
  const { sinceMs, untilMs, wholly = false } = job;
  const span = {
    wholly,
    ...(sinceMs === undefined ? {} : { sinceMs }),
    ...(untilMs === undefined ? {} : { untilMs }),
  };
  return replayFolder(job.source, job.from, span, sinks);
}

type NamedValue = Omit<RecordedValue, 'signal'> & { readonly name: string };

async function replayCsv(job: ReplayJob, sinks: ReplaySinks): Promise<ReplayEnd> {
  const { source, from, site } = job;
  const bad = new BadRows();
  const rows = await rowsOf(job, sinks, bad);
  const compiled = compileSource(source, instancesIn(source, new Set(rows.map((r) => r.name))));
  const index = new Map(compiled.plan.signals.map(({ id }, i) => [id, i]));
  const fed = new Set(compiled.bindings.flatMap((b) => [b.id, ...instanceIds(b)]));
  const unknown = new Set<string>();
  const values: RecordedValue[] = [];
  for (const { name, ...value } of rows) {
    const signal = index.get(name);
    if (signal === undefined || !fed.has(name)) unknown.add(name);
    else values.push({ ...value, signal });
  }
  for (const name of unknown)
    sinks.complain(`${from}: ${name} is no measured signal of ${site}; skipped`);
  if (values.length === 0) throw new AgentError('REPLAY_NOTHING_KNOWN', { path: from, site });
  sinks.begin(compiled);
  const intake = createIntake({
    bindings: compiled.bindings,
    discover: () => null,
    limits,
    clock: 'samples',
  });
  const end = replayValues(values, intake, {
    plan: compiled.plan,
    planOf: () => compiled.plan,
    emit: sinks.emit,
    readLast: besideOthers(compiled),
    unusable: ({ line, signal }, code) =>
      bad.note({ line, problem: `${compiled.plan.signals[signal]!.id}: ${causeOf(code)}` }),
    ...(sinks.progress === undefined ? {} : { progress: sinks.progress }),
  });
  return { ...end, badRows: bad.now };
}

/** Thermocouples with a cold junction of its own signal: of one row, that is read first. */
const besideOthers = ({ bindings }: CompiledSite): ReadonlySet<number> =>
  new Set(
    bindings
      .filter(
        ({ sensor }) => sensor?.kind === 'thermocouple' && sensor.coldJunction.kind === 'signal',
      )
      .flatMap(({ signal, instances }) => (signal === null ? [...instances.values()] : [signal])),
  );

async function rowsOf(job: ReplayJob, sinks: ReplaySinks, bad: BadRows): Promise<NamedValue[]> {
  const { from, timezone, badRowsMax, sinceMs = -Infinity, untilMs = Infinity } = job;
  const rows: NamedValue[] = [];
  const blocks = readRecorded(createReadStream(from), {
    path: from,
    ...(timezone === undefined ? {} : { timezone }),
    ...(badRowsMax === undefined ? {} : { badRowsMax }),
    onBadRow: (row) => {
      bad.note(row);
      sinks.complain(`${from}:${row.line} ${row.problem}; skipped`);
    },
  });
  for await (const block of blocks)
    for (const { signal, ...value } of block)
      if (value.timeMs >= sinceMs && value.timeMs < untilMs) rows.push({ name: signal, ...value });
  return rows;
}

const instanceIds = (binding: CompiledSite['bindings'][number]): string[] =>
  [...binding.instances.keys()].map((instance) => `${binding.id}-${instance}`);

/** The wildcard values that the names in a file imply. */
function instancesIn(source: SiteSource, names: ReadonlySet<string>): Instances {
  const { bindings } = compileSource(source, {});
  const found: Record<string, string[]> = {};
  for (const { id, signal, levels } of bindings) {
    if (signal !== null) continue;
    found[id] = [...names]
      .filter((name) => name.startsWith(`${id}-`))
      .map((name) => name.slice(id.length + 1))
      .filter((instance) => isInstance(instance, levels.length))
      .slice(0, limits.wildcardInstancesMax);
  }
  return found;
}
