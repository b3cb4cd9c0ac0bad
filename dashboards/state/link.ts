/**
 * The live link: opens the stream, resumes it, says when the agent was last heard.
 *
 * Always true: after 15 s without a byte the page is stale, and everything that shows a moment
 * stands at the last one heard; on `reset` everything is read again before the page counts as live.
 */
import type { StreamEvent } from '../../agent/web/contract.ts';
import { readBoard, tellListeners, useTold } from './board.ts';
import { EventParser, type StreamedEvent } from './event-stream.ts';
import { isSignedOut, signedOut } from './session.ts';

export const staleAfterMs = 15_000;
const retryMs = [500, 1_000, 2_000, 4_000, 8_000];

interface LinkState {
  readonly stale: boolean;
  /** The phone's clock when a byte last came; null before the first. */
  readonly heardAt: number | null;
}

let state: LinkState = { stale: false, heardAt: null };
/** The engine's clock less the phone's. */
let offsetMs = 0;
let shownAt = 0;

export const readLink = (): LinkState => state;
/** What was kept from before is stale until it is read anew. */
export const isStale = (): boolean => state.stale || readBoard().kept !== null;
export const useStale = (): boolean => useTold(isStale);

/** The engine's time; stands still while the page is stale. */
export function nowMs(): number {
  return (isStale() && state.heardAt !== null ? state.heardAt : Date.now()) + offsetMs;
}

/** What is shown was heard then: by the phone's clock, and by the engine's. */
export function standAt(heardAt: number, engineAt: number): void {
  state = { stale: true, heardAt };
  offsetMs = engineAt - heardAt;
}

/** The agent said what time it is. */
export function setEngineTime(at: number): void {
  offsetMs = at - Date.now();
  tellListeners();
}

/** The engine's time in whole steps; the view is drawn again at each. */
export const useNow = (everyMs = 1_000): number =>
  useTold(() => Math.floor(nowMs() / everyMs) * everyMs);

function heard(): void {
  if (readBoard().kept !== null) return; // until it is read anew
  const now = Date.now();
  const wasStale = state.stale;
  state = { stale: false, heardAt: now };
  if (wasStale || now - shownAt > 900) {
    shownAt = now;
    tellListeners();
  }
}

function look(): void {
  const { heardAt, stale } = state;
  if (heardAt !== null && !stale && Date.now() - heardAt > staleAfterMs)
    state = { ...state, stale: true };
  tellListeners();
}

export interface LinkParts {
  /** Reads everything anew; resolves when the board is written. */
  readonly load: () => Promise<void>;
  readonly take: (event: StreamEvent) => void;
}

/** Keeps the link for as long as the page lives. */
export async function keepLink(parts: LinkParts): Promise<never> {
  if (readBoard().kept === null) state = { stale: false, heardAt: Date.now() };
  setInterval(look, 1_000);
  const parser = new EventParser();
  let loaded = false;
  let failures = 0;
  for (;;) {
    // Whoever signs in begins the page anew.
    if (isSignedOut()) await new Promise<never>(() => undefined);
    try {
      await readStream(parser, async (event) => {
        failures = 0;
        // Another site runs, or events were missed: all of it is read again.
        const anew = event.event === 'reset' || event.event === 'site';
        if (!loaded || anew) {
          loaded = false; // stays so where reading fails: the next connection reads again
          await parts.load();
          loaded = true;
          heard();
        }
        if (!anew) parts.take(event);
      });
    } catch {
      failures += 1; // the top line says since when nothing was heard
    }
    await pause(retryMs[Math.min(failures, retryMs.length - 1)]!);
  }
}

/** Waits, but not while somebody has just come back to the page or the network. */
function pause(ms: number): Promise<void> {
  const { promise, resolve } = Promise.withResolvers<void>();
  const again = (): void => {
    clearTimeout(timer);
    document.removeEventListener('visibilitychange', again);
    window.removeEventListener('online', again);
    resolve();
  };
  const timer = setTimeout(again, ms);
  document.addEventListener('visibilitychange', again);
  window.addEventListener('online', again);
  return promise;
}

/** One connection to its end. A silent one is given up after the time that makes a page stale. */
async function readStream(
  parser: EventParser,
  take: (event: StreamEvent) => Promise<void>,
): Promise<void> {
  const control = new AbortController();
  let timer = setTimeout(() => control.abort(), staleAfterMs);
  parser.begin();
  try {
    const answer = await fetch('/api/stream', {
      headers: {
        accept: 'text/event-stream',
        ...(parser.lastId === '' ? {} : { 'last-event-id': parser.lastId }),
      },
      signal: control.signal,
      cache: 'no-store',
    });
    if (answer.status === 401) signedOut();
    if (!answer.ok || answer.body === null) throw new Error(`the stream answered ${answer.status}`);
    const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      clearTimeout(timer);
      timer = setTimeout(() => control.abort(), staleAfterMs);
      heard();
      for (const event of parser.take(value)) await take(parsed(event));
    }
  } finally {
    clearTimeout(timer);
    control.abort();
  }
}

const parsed = ({ event, data }: StreamedEvent): StreamEvent =>
  ({ event, data: JSON.parse(data) }) as StreamEvent;
