/**
 * The part of a site file that can be read although other parts cannot, so that one pass finds
 * the faults of the trade beside those of the writing. Never used to run a site.
 */
import type { z } from 'zod/mini';
import type { SiteProblem } from './problem.ts';
import { ruleWritten } from './rule-schema.ts';
import { type SiteWritten, siteWritten } from './schema.ts';
import { derivedWritten, signalWritten } from './signal-schema.ts';

type Block = Record<string, unknown>;

export interface SoundPart {
  readonly site: SiteWritten;
  /** `line/station/signal` of signals left out. */
  readonly broken: readonly string[];
}

const groups = { signals: signalWritten, derived: derivedWritten, rules: ruleWritten } as const;
type Group = keyof typeof groups;

/** null where nothing of it can be compiled. `value` is not changed. */
export function soundPart(value: unknown, problems: readonly SiteProblem[]): SoundPart | null {
  const site: unknown = structuredClone(value);
  if (!isBlock(site)) return null;
  for (const { path } of problems) take(site, path);
  const broken = dropRaw(site, problems);
  for (const [line, stations] of blocksOf(site.lines))
    for (const [name, station] of blocksOf(stations)) {
      for (const group of Object.keys(groups) as Group[])
        broken.push(...dropUnsound(station, group, groups[group], `${line}/${name}`));
      // Told by the schema; the rest of the station is checked as far as it can be without.
      if (typeof station.kind !== 'string') station.kind = 'unknown';
    }
  const read = siteWritten.safeParse({ site: 'site', timezone: 'UTC', lines: {}, ...site });
  return read.success ? { site: read.data, broken } : null;
}

/** Signals whose sensor cannot be read: without it nobody knows what they measure. Answers their ids. */
function dropRaw(site: Block, problems: readonly SiteProblem[]): string[] {
  const ids = problems.flatMap(({ path }) => {
    const [, line, station, group, name, field] = path;
    return group === 'signals' && field === 'sensor' ? [`${line}/${station}/${name}`] : [];
  });
  const dropped = [...new Set(ids)];
  for (const id of dropped) {
    const [line = '', station = '', name = ''] = id.split('/');
    take(site, ['lines', line, station, 'signals', name]);
  }
  return dropped;
}

/** Levels of a path down to a field of a signal, a derived signal or a rule. */
const fieldDepth = 6;

/** Takes out what a problem is about: at most the whole field it lies in. */
function take(site: Block, path: SiteProblem['path']): void {
  let here: unknown = site;
  const whole = path.slice(0, fieldDepth);
  for (const key of whole.slice(0, -1)) {
    if (!isBlock(here) || !Object.hasOwn(here, key)) return;
    here = here[key];
  }
  const last = whole.at(-1);
  if (isBlock(here) && last !== undefined) delete here[last];
}

/** Takes out the entries that still do not fit; answers the ids of the signals among them. */
function dropUnsound(station: Block, group: Group, schema: z.ZodMiniType, id: string): string[] {
  const entries = station[group];
  if (entries === undefined) return [];
  if (!isBlock(entries)) {
    delete station[group];
    return [];
  }
  const dropped: string[] = [];
  for (const [name, entry] of Object.entries(entries)) {
    if (schema.safeParse(entry).success) continue;
    const byMessage = group === 'signals' && isBlock(entry) && !Object.hasOwn(entry, 'by_hand');
    const filled = byMessage ? { ...standIn(entry), ...entry } : null;
    if (filled !== null && schema.safeParse(filled).success) {
      entries[name] = filled;
      continue;
    }
    delete entries[name];
    if (group !== 'rules') dropped.push(`${id}/${name}`);
  }
  return dropped;
}

/** Fits any signal, so that the rest of one without topic or payload can still be checked. */
const standIn = (signal: Block): Block => ({
  topic: ['unknown', ...(Array.isArray(signal.names) ? signal.names.map(() => '+') : [])].join('/'),
  payload: { kind: 'json', value: '', time: '' },
});

const isBlock = (value: unknown): value is Block =>
  value !== null && typeof value === 'object' && !Array.isArray(value);

const blocksOf = (value: unknown): [string, Block][] =>
  isBlock(value)
    ? Object.entries(value).filter((entry): entry is [string, Block] => isBlock(entry[1]))
    : [];
