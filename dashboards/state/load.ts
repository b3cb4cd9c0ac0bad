/** Fills the board: all of it on load, entry by entry from the live stream. */
import type {
  AlarmView,
  AsideView,
  CoverageView,
  HoldView,
  RuleView,
  SignalView,
  SiteView,
  StreamEvent,
} from '../../agent/web/contract.ts';
import { announce } from './announce.ts';
import { get, Refused } from './api.ts';
import { type Board, readBoard, withEntry, writeBoard } from './board.ts';
import { setEngineTime } from './link.ts';
import { loadMe, loadNames } from './session.ts';
import { soundAlarm } from './sound.ts';

const byKey = <T>(rows: readonly T[], key: (row: T) => string): Map<string, T> =>
  new Map(rows.map((row) => [key(row), row]));

/** Reads everything the page shows. Throws where the agent does not answer, or refuses; then the board says why. */
export async function loadBoard(): Promise<void> {
  try {
    await readBoardAnew();
  } catch (error) {
    if (error instanceof Refused)
      writeBoard({ problem: `${error.problem.detail} ${error.problem.fix}` });
    throw error;
  }
}

async function readBoardAnew(): Promise<void> {
  const [site, signals, alarms, holds, aside, coverage, rules] = await Promise.all([
    get<SiteView>('/api/site'),
    get<{ signals: SignalView[] }>('/api/signals'),
    get<{ alarms: AlarmView[] }>('/api/alarms'),
    get<{ holds: HoldView[] }>('/api/holds'),
    get<{ aside: AsideView[] }>('/api/put-aside'),
    get<CoverageView>('/api/coverage'),
    get<{ rules: RuleView[] }>('/api/rules'),
    loadNames(),
    loadMe(),
  ]);
  setEngineTime(site.at);
  writeBoard({
    site,
    coverage,
    signals: byKey(signals.signals, ({ id }) => id),
    alarms: byKey(alarms.alarms, ({ occurrence }) => occurrence),
    holds: byKey(holds.holds, ({ id }) => id),
    aside: byKey(aside.aside, ({ rule }) => rule),
    rules: byKey(rules.rules, ({ id }) => id),
    loads: readBoard().loads + 1,
    kept: null,
    problem: null,
  });
}

export const anewAfterMs = 1_000;
let anewAsked = false;

/** A signal was first heard since all was read: read again, once for all that is new and at most each second. */
function refreshBoard(): void {
  if (anewAsked) return;
  anewAsked = true;
  setTimeout(async () => {
    try {
      await loadBoard();
    } catch {
      // Its next sample asks again; where the agent does not answer the top line says so.
    } finally {
      anewAsked = false;
    }
  }, anewAfterMs);
}

let coverageAsked = false;

/** Coverage follows signals that fall silent or speak again; read again at most every 5 s. */
function refreshCoverage(): void {
  if (coverageAsked) return;
  coverageAsked = true;
  setTimeout(async () => {
    coverageAsked = false;
    try {
      writeBoard({ coverage: await get<CoverageView>('/api/coverage') });
    } catch {
      // The link is being opened again, and reads everything when it is.
    }
  }, 1_000);
}

/** At most so many closed alarms stay in sight; the rest is behind "Look back". */
const closedMax = 50;

/** A new occurrence takes the place of what was left unseen of the same rule. */
export function withAlarm(board: Board, alarm: AlarmView): ReadonlyMap<string, AlarmView> {
  const alarms = withEntry(board.alarms, alarm.occurrence, alarm);
  for (const [id, { rule, raised, state, superseded_by: by }] of alarms)
    if (rule === alarm.rule && raised < alarm.raised && state !== 'normal' && by === null)
      alarms.set(id, { ...alarms.get(id)!, superseded_by: alarm.occurrence });
  const closed = [...alarms.values()].filter(({ state }) => state === 'normal');
  for (const { occurrence } of closed.slice(0, Math.max(0, closed.length - closedMax)))
    alarms.delete(occurrence);
  return alarms;
}

function withAside(all: Board['aside'], rule: string, aside: AsideView | null): Board['aside'] {
  if (aside !== null) return withEntry(all, rule, aside);
  const rest = new Map(all);
  rest.delete(rule);
  return rest;
}

export function takeEvent(event: StreamEvent): void {
  const board = readBoard();
  switch (event.event) {
    case 'sample': {
      const known = board.signals.get(event.data.signal);
      const { at, value, quality } = event.data;
      if (known === undefined) refreshBoard();
      else
        writeBoard({
          signals: withEntry(board.signals, known.id, { ...known, at, value, quality }),
        });
      // What has never been heard is no more.
      if (board.coverage?.unheard?.some(({ signal }) => signal === event.data.signal) === true)
        refreshCoverage();
      return;
    }
    case 'alarm':
      writeBoard({ alarms: withAlarm(board, event.data.alarm) });
      announce(event.data, board);
      soundAlarm(event.data);
      refreshCoverage();
      return;
    case 'hold':
      writeBoard({ holds: withEntry(board.holds, event.data.hold.id, event.data.hold) });
      return;
    case 'aside':
      writeBoard({ aside: withAside(board.aside, event.data.rule, event.data.aside) });
      refreshCoverage();
      return;
    case 'mark':
      writeBoard({ marksSaid: board.marksSaid + 1 });
      return;
    case 'health':
      writeBoard({ health: event.data });
      refreshCoverage();
      return;
    case 'reset':
      return; // the link reads everything again
  }
}
