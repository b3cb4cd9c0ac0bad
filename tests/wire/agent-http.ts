/** What a script does with an agent's HTTP interface. */
import { setTimeout as sleep } from 'node:timers/promises';
import { type Family, parseOpenMetrics } from '../agent/web/open-metrics.ts';

export interface Answer<T> {
  readonly status: number;
  readonly body: T;
}

export async function get<T>(page: string, path: string): Promise<Answer<T>> {
  const answer = await fetch(new URL(path, page));
  return { status: answer.status, body: (await answer.json()) as T };
}

export async function post<T>(page: string, path: string, body?: object): Promise<Answer<T>> {
  const answer = await fetch(new URL(path, page), {
    method: 'POST',
    ...(body === undefined
      ? {}
      : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
  });
  return { status: answer.status, body: (await answer.json()) as T };
}

export interface AlarmSeen {
  readonly occurrence: string;
  readonly rule: string;
  readonly state: string;
  readonly judgeable: boolean;
  readonly transitions: readonly { readonly at: number; readonly transition: string }[];
}

export const alarms = async (page: string, query = ''): Promise<AlarmSeen[]> =>
  (await get<{ alarms: AlarmSeen[] }>(page, `/api/alarms${query}`)).body.alarms;

export const commandOf = (occurrence: string, verb: string): string =>
  `/api/alarms/${encodeURIComponent(occurrence)}/${verb}`;

export interface SignalSeen {
  readonly id: string;
  readonly value: number | null;
  readonly at: number | null;
  readonly quality: { readonly grade: string; readonly cause: string | null } | null;
  readonly late_at: number | null;
}

export const signalOf = async (page: string, id: string): Promise<SignalSeen> => {
  const { body } = await get<{ signals: SignalSeen[] }>(page, '/api/signals');
  const found = body.signals.find((signal) => signal.id === id);
  if (found === undefined) throw new Error(`no signal ${id}`);
  return found;
};

export interface HealthSeen {
  readonly condition: string;
  readonly parts: Readonly<Record<string, string>>;
  readonly notes: Readonly<Record<string, string>>;
}

export async function metrics(page: string): Promise<Map<string, Family>> {
  return parseOpenMetrics(await (await fetch(new URL('/metrics', page))).text());
}

/** A figure by its labels, in the order they are written: `value(m, 'x', 'cause="late"')`. */
export function figure(found: Map<string, Family>, family: string, labels = ''): number {
  const wanted = labels === '' ? '' : `{${labels}}`;
  const sample = found.get(family)?.samples.find((each) => each.labels === wanted);
  if (sample === undefined) throw new Error(`no ${family}${wanted}`);
  return sample.value;
}

/** Asks until it is so; throws with what it saw last. */
export async function until<T>(
  look: () => Promise<T>,
  isSo: (seen: T) => boolean,
  withinMs = 5_000,
): Promise<T> {
  const endMs = Date.now() + withinMs;
  for (;;) {
    const seen = await look();
    if (isSo(seen)) return seen;
    if (Date.now() > endMs) throw new Error(`still not so: ${JSON.stringify(seen)}`);
    await sleep(25);
  }
}
