/** The thread that works a calendar out: it answers once and ends; it may be ended any time. */
import { parentPort, workerData } from 'node:worker_threads';
import type { RotaSpan } from '#rules/telling/rota.ts';
import {
  type CalendarBounds,
  CalendarError,
  type CalendarWindow,
  readCalendar,
} from './read-calendar.ts';

export interface CalendarJob {
  readonly text: string;
  readonly window: CalendarWindow;
  readonly bounds: CalendarBounds;
}

export type CalendarRead =
  | { readonly ok: true; readonly spans: readonly RotaSpan[] }
  | { readonly ok: false; readonly cause: string };

function answer({ text, window, bounds }: CalendarJob): CalendarRead {
  try {
    return { ok: true, spans: readCalendar(text, window, bounds) };
  } catch (error) {
    if (error instanceof CalendarError) return { ok: false, cause: error.message };
    throw error;
  }
}

parentPort?.postMessage(answer(workerData as CalendarJob));
