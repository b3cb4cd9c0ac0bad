/**
 * The rota as it is known now: the hours of the week from the site file, and its calendars, read
 * again now and then.
 *
 * Always true: a calendar that cannot be read keeps what it said last, with the cause beside it; one
 * that takes too long to work out is given up, and holds up nothing else.
 */
import { Worker } from 'node:worker_threads';
import type { RotaEntryWritten } from '#rules/site/telling-schema.ts';
import type { CalendarEntry, Rota, RotaSpan } from '#rules/telling/rota.ts';
import { weekEntry } from '#rules/telling/settings.ts';
import { limits } from '../limits.ts';
import { workerFile } from '../worker-file.ts';
import { type CalendarPlace, calendarText } from './calendar-text.ts';
import type { CalendarJob, CalendarRead } from './calendar-worker.ts';
import { CalendarError } from './read-calendar.ts';

const dayMs = 86_400_000;
const aheadMs = 60 * dayMs;
const behindMs = 7 * dayMs;

export interface RotaBookParts {
  /** What the site file says now. */
  readonly written: () => readonly RotaEntryWritten[];
  readonly timezone: () => string;
  readonly place: () => CalendarPlace;
  readonly nowMs: () => number;
  /** Default limits.rotaFetchMs. */
  readonly workMs?: number;
}

interface Known {
  readonly spans: readonly RotaSpan[];
  readonly knownUntilMs: number;
  readonly cause: string | null;
}

/** Of a calendar in the first moments after a start. */
export const unreadCause = 'it has not been read yet';
const unread: Known = { spans: [], knownUntilMs: 0, cause: unreadCause };

export class RotaBook {
  private readonly parts: RotaBookParts;
  private known = new Map<string, Known>();

  constructor(parts: RotaBookParts) {
    this.parts = parts;
  }

  now(): Rota {
    return {
      timezone: this.parts.timezone(),
      entries: this.parts.written().map((entry) => {
        if (!('calendar' in entry)) return weekEntry(entry);
        const { calendar, stations = null, hazards = null } = entry;
        const known = this.known.get(calendar) ?? unread;
        return { kind: 'calendar', calendar, stations, hazards, ...known } satisfies CalendarEntry;
      }),
    };
  }

  /** Calendars the site file names that were not read yet. */
  get hasUnread(): boolean {
    return this.names().some((name) => !this.known.has(name));
  }

  /** Reads every calendar. Rejects for nothing that a calendar does. */
  async read(): Promise<void> {
    const names = this.names();
    const read = await Promise.all(
      names.map(async (name) => [name, await this.one(name)] as const),
    );
    this.known = new Map(read);
  }

  private names(): string[] {
    const all = this.parts
      .written()
      .flatMap((entry) => ('calendar' in entry ? entry.calendar : []));
    return [...new Set(all)];
  }

  private async one(name: string): Promise<Known> {
    const { place, timezone, nowMs, workMs = limits.rotaFetchMs } = this.parts;
    const before = this.known.get(name) ?? unread;
    try {
      const text = await calendarText(name, place());
      const now = nowMs();
      const window = { fromMs: now - behindMs, toMs: now + aheadMs, timezone: timezone() };
      const bounds = { eventsMax: limits.rotaEventsMax, repeatsMax: limits.rotaRepeatsMax };
      const read = await workedOut({ text, window, bounds }, workMs);
      if (!read.ok) throw new CalendarError(read.cause);
      return { spans: read.spans, knownUntilMs: window.toMs, cause: null };
    } catch (error) {
      if (!(error instanceof CalendarError)) throw error;
      return { ...before, cause: error.message };
    }
  }
}

/** In a thread of its own: a rule that never comes to an end ends with it. */
function workedOut(job: CalendarJob, workMs: number): Promise<CalendarRead> {
  const { promise, resolve } = Promise.withResolvers<CalendarRead>();
  const worker = new Worker(workerFile('./calendar-worker.ts', import.meta.url), {
    workerData: job,
    name: 'calendar',
    resourceLimits: { maxOldGenerationSizeMb: 128 },
  });
  const give = (cause: string): void => resolve({ ok: false, cause });
  const timer = setTimeout(() => {
    give(`it takes longer than ${workMs / 1_000} s to work out`);
    void worker.terminate();
  }, workMs);
  worker.once('message', resolve);
  worker.once('error', () => give('it cannot be worked out'));
  worker.once('exit', () => {
    clearTimeout(timer);
    give('it cannot be worked out');
  });
  return promise;
}
