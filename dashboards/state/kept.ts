/**
 * The last state of the line, kept on this phone for when there is no agent to ask.
 *
 * Always true: it is shown only with its age, and only until the agent is read; it is forgotten when somebody
 * signs out, after a day, and by another build of the page, which may not understand it.
 */
import { type Board, readBoard, writeBoard } from './board.ts';
import { isStale, nowMs, readLink, standAt } from './link.ts';
import { isSignedOut, knownNames, setNames } from './session.ts';

const cacheName = 'state-1';
const place = '/last-state';
const ageMsMax = 86_400_000;
const keepEveryMs = 30_000;
const lookEveryMs = 2_000;
/** The agent is waited for so long before what was kept is shown. */
const recallAfterMs = 2_000;
const build = import.meta.url;

interface Kept {
  readonly build: string;
  /** The phone's clock, and the engine's, when the agent was last heard. */
  readonly heardAt: number;
  readonly engineAt: number;
  readonly names: Readonly<Record<string, string>>;
  readonly board: Pick<Board, 'site' | 'coverage' | 'health'> & {
    readonly [Slice in MapSlice]: readonly Entry<Board[Slice]>[];
  };
}
type MapSlice = 'signals' | 'alarms' | 'holds' | 'aside' | 'rules';
type Entry<Of> = Of extends ReadonlyMap<string, infer Value> ? readonly [string, Value] : never;

/** Browsers have no such store for a page over plain http from elsewhere. */
const store = async (): Promise<Cache | null> =>
  'caches' in window ? await caches.open(cacheName) : null;

async function keep(board: Board): Promise<void> {
  const { site, coverage, health } = board;
  const kept: Kept = {
    build,
    heardAt: readLink().heardAt ?? Date.now(),
    engineAt: nowMs(),
    names: knownNames(),
    board: {
      ...{ site, coverage, health },
      signals: [...board.signals],
      alarms: [...board.alarms],
      holds: [...board.holds],
      aside: [...board.aside],
      rules: [...board.rules],
    },
  };
  await (await store())?.put(place, new Response(JSON.stringify(kept)));
}

async function keptBefore(): Promise<Kept | null> {
  const answer = await (await store())?.match(place);
  if (answer === undefined) return null;
  const kept = (await answer.json()) as Kept;
  return kept.build === build && Date.now() - kept.heardAt < ageMsMax ? kept : null;
}

export async function forget(): Promise<void> {
  await (await store())?.delete(place);
}

/** Shows what was kept, unless the agent was read meanwhile. */
async function recall(): Promise<void> {
  const kept = await keptBefore();
  if (kept === null || readBoard().loads > 0 || isSignedOut()) return;
  standAt(kept.heardAt, kept.engineAt);
  setNames(kept.names);
  const { site, coverage, health, signals, alarms, holds, aside, rules } = kept.board;
  writeBoard({
    ...{ site, coverage, health },
    signals: new Map(signals),
    alarms: new Map(alarms),
    holds: new Map(holds),
    aside: new Map(aside),
    rules: new Map(rules),
    kept: kept.heardAt,
  });
}

/** Keeps the state from now on, and shows the one before where the agent does not answer. */
export function beginKeeping(): void {
  let last: Board | null = null;
  let at = 0;
  const look = (soon: boolean): void => {
    const board = readBoard();
    if (isSignedOut()) {
      if (last !== null) void forget();
      last = null;
      return;
    }
    if (board.loads === 0 || isStale() || board === last) return;
    if (last !== null && !soon && Date.now() - at < keepEveryMs) return;
    [last, at] = [board, Date.now()];
    keep(board).catch((error: unknown) => console.warn('the state was not kept', error));
  };
  setInterval(() => look(false), lookEveryMs);
  document.addEventListener('visibilitychange', () => look(true));
  setTimeout(() => {
    recall().catch((error: unknown) => console.warn('nothing kept can be shown', error));
  }, recallAfterMs);
}
