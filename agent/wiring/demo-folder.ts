/**
 * The demo line's data folder: made with a week of history behind it, or found as it was left.
 *
 * Always true: a folder that is not the demo's is never written to; a history stands whole or not
 * at all, since it is made in a folder beside and moved into place; of two starts at once one is
 * refused, and leaves the other's work as it is.
 */
import {
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Effect } from '#rules/input.ts';
import type { EpochMs } from '#rules/signal/sample.ts';
import { messages } from '../demo/messages.ts';
import { Plant, weekBeforeShow } from '../demo/plant.ts';
import { preRollMin } from '../demo/timetable.ts';
import { AgentError } from '../errors.ts';
import type { SiteSource } from '../site/revision.ts';
import { ReadOnlyStore } from '../store/read-only.ts';
import { type History, makeHistory } from './make-history.ts';

export const demoMarkName = 'demo.json';
const weekMs = 7 * 86_400_000;
const everyS = 10;
const minuteMs = 60_000;
const hourMs = 3_600_000;

export interface DemoHistoryOptions {
  readonly folder: string;
  readonly source: SiteSource;
  readonly version: string;
  readonly seed: number;
  /** When the show begins; the history ends there or a little later. */
  readonly showAtMs: EpochMs;
  readonly lengthMs?: number;
  readonly untilMs: () => EpochMs;
  readonly stopped: () => boolean;
  readonly heard?: (effect: Effect) => void;
  readonly warn: (facts: object, message: string) => void;
}

/** A week of the demo line in an empty folder, at 10 s intervals, its alarms answered by somebody. */
export function makeDemoHistory(options: DemoHistoryOptions): Promise<History> {
  const { seed, showAtMs, lengthMs = weekMs } = options;
  const fromMs = showAtMs - lengthMs;
  const plant = new Plant(seed, showAtMs, (fromMs - showAtMs) / 1_000, weekBeforeShow(seed));
  return makeHistory({
    ...options,
    fromMs,
    stepMs: everyS * 1_000,
    sealEveryMs: 6 * hourMs,
    commitEveryMs: 10 * minuteMs,
    arrivals: (atMs) => ({ messages: arrivalsAt(plant, atMs) }),
    answering: {
      by: 'demo-operator',
      acknowledgeMs: 4 * minuteMs,
      resetMs: 20 * minuteMs,
      liftMs: 2 * hourMs,
      untilMs: showAtMs - preRollMin * minuteMs,
      awayMs: showAtMs,
    },
  });
}

function arrivalsAt(plant: Plant, atMs: EpochMs): { topic: string; payload: string }[] {
  const now = plant.moveTo(atMs);
  const arrivals: { topic: string; payload: string }[] = [];
  for (const [index, { topic, everyS: usualS, payload }] of messages.entries()) {
    if (now.lineS % Math.max(everyS, usualS) !== 0) continue;
    const said = payload(plant, now, index);
    if (said !== null) arrivals.push({ topic, payload: said });
  }
  return arrivals;
}

export type DemoFolderState = 'missing' | 'found';

/** Throws DEMO_FOLDER_TAKEN where the folder holds something that the demo did not make. */
export function demoFolderState(folder: string): DemoFolderState {
  if (!existsSync(folder) || readdirSync(folder).length === 0) return 'missing';
  if (!existsSync(join(folder, demoMarkName)))
    throw new AgentError('DEMO_FOLDER_TAKEN', { path: folder });
  return 'found';
}

export interface DemoMark {
  readonly seed: number;
  /** null where it was begun without one. */
  readonly history: (History & { readonly seconds: number }) | null;
}

export function readDemoMark(folder: string): DemoMark {
  const path = join(folder, demoMarkName);
  const mark: unknown = JSON.parse(readFileSync(path, 'utf8'));
  if (typeof mark !== 'object' || mark === null || !('seed' in mark))
    throw new AgentError('DEMO_FOLDER_TAKEN', { path: folder });
  return mark as DemoMark;
}

/** Whole or not at all. Throws EEXIST where there is one. */
function writeDemoMark(folder: string, mark: DemoMark): void {
  const path = join(folder, demoMarkName);
  const fresh = `${path}.${process.pid}`;
  writeFileSync(fresh, `${JSON.stringify(mark, null, 2)}\n`, { mode: 0o600 });
  try {
    linkSync(fresh, path);
  } finally {
    rmSync(fresh);
  }
}

/** Puts it in its place; where another start was quicker its own stands there, and counts. */
function orQuicker(folder: string, mark: DemoMark, put: () => void): DemoMark {
  try {
    put();
    return mark;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null;
    if (code !== 'EEXIST' && code !== 'ENOTEMPTY') throw error;
    return readDemoMark(folder);
  }
}

const makingName = (folder: string): string => `${basename(folder)}.making-`;

/** Removes what broken-off starts left; throws DEMO_FOLDER_MAKING while another one makes it. */
function clearAway(folder: string): void {
  const parent = dirname(folder);
  if (!existsSync(parent)) return;
  const left: string[] = [];
  for (const name of readdirSync(parent)) {
    if (!name.startsWith(makingName(folder))) continue;
    const pid = Number(name.slice(makingName(folder).length));
    if (!Number.isInteger(pid)) continue;
    const making = join(parent, name);
    // Of this process's own number it was left by an earlier one, as in a container.
    if (pid !== process.pid && isAlive(pid))
      throw new AgentError('DEMO_FOLDER_MAKING', { path: folder, making });
    left.push(making);
  }
  for (const making of left) rmSync(making, { recursive: true, force: true });
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/**
 * Makes the folder, with its history where one is wanted. Null where it was stopped on the way.
 * Throws DEMO_FOLDER_MAKING while another start makes it.
 */
export async function makeDemoFolder(
  options: DemoHistoryOptions & { readonly history: boolean },
): Promise<DemoMark | null> {
  const { folder, seed } = options;
  clearAway(folder);
  if (!options.history) {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const mark = { seed, history: null };
    return orQuicker(folder, mark, () => writeDemoMark(folder, mark));
  }
  const making = join(dirname(folder), `${makingName(folder)}${process.pid}`);
  mkdirSync(making, { recursive: true, mode: 0o700 });
  try {
    const began = performance.now();
    const history = await makeDemoHistory({ ...options, folder: making });
    if (options.stopped()) return null;
    const seconds = Number(((performance.now() - began) / 1_000).toFixed(1));
    const mark = { seed, history: { ...history, seconds } };
    writeDemoMark(making, mark);
    // An empty folder may stand in its place; a rename takes it over.
    return orQuicker(folder, mark, () => renameSync(making, folder));
  } finally {
    rmSync(making, { recursive: true, force: true });
  }
}

/** Up to where the folder was judged; null where nothing was. */
export function judgedTo(folder: string): EpochMs | null {
  if (!existsSync(join(folder, 'forebond.db'))) return null;
  const store = ReadOnlyStore.open(folder);
  try {
    return store.judgedTo();
  } finally {
    store.close();
  }
}
