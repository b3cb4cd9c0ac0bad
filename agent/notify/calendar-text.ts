/**
 * The text of a calendar, from a file beside the site file or from an address.
 *
 * Always true: no file above the site file's folder is read; of an address no more than a bound is
 * read, within a time, without following a redirect; an address inside the plant only where its
 * host is listed, a link-local one only then.
 */
import { readFile, realpath, stat } from 'node:fs/promises';
import { request as plainRequest } from 'node:http';
import { request as secureRequest } from 'node:https';
import { isAbsolute, relative, resolve } from 'node:path';
import { limits } from '../limits.ts';
import { networkWords } from './channels/ask.ts';
import { checkLiteral, lookupWithin, OutOfReach } from './channels/reach.ts';
import { CalendarError } from './read-calendar.ts';

export interface CalendarPlace {
  /** Of the site file; null where the agent runs on none. */
  readonly folder: string | null;
  /** Hosts inside the plant that may be asked. */
  readonly hosts: readonly string[];
  readonly fetchMs?: number;
  readonly authorities?: readonly string[];
}

const tooLong = (): CalendarError =>
  new CalendarError(`it is longer than ${limits.rotaFileBytesMax / 1_048_576} MiB`);

/** Rejects with CalendarError, whose message is for people. */
export function calendarText(name: string, place: CalendarPlace): Promise<string> {
  return /^https?:/i.test(name) ? fetched(name, place) : fromFile(name, place.folder);
}

async function fromFile(name: string, folder: string | null): Promise<string> {
  if (folder === null) throw new CalendarError('this agent runs on no site file');
  try {
    const path = await realpath(resolve(folder, name));
    const way = relative(await realpath(folder), path);
    if (way.startsWith('..') || isAbsolute(way))
      throw new CalendarError('it lies outside the folder of the site file');
    if ((await stat(path)).size > limits.rotaFileBytesMax) throw tooLong();
    return await readFile(path, 'utf8');
  } catch (error) {
    if (error instanceof CalendarError) throw error;
    const missing = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    throw new CalendarError(missing ? 'there is no such file' : 'the file cannot be read', {
      cause: error,
    });
  }
}

async function fetched(address: string, place: CalendarPlace): Promise<string> {
  const { hosts, fetchMs = limits.rotaFetchMs } = place;
  const stop = AbortSignal.timeout(fetchMs);
  try {
    const url = new URL(address);
    const listed = hosts.includes(url.hostname);
    if (url.protocol !== 'https:' && !listed)
      throw new CalendarError('it is not an https address, and its host is not listed');
    if (!listed) checkLiteral('public', url.hostname);
    return await bodyOf(url, listed, place, stop);
  } catch (error) {
    if (error instanceof CalendarError) throw error;
    if (error instanceof OutOfReach)
      throw new CalendarError('its host is inside the plant and not listed in calendar_hosts');
    if (stop.aborted) throw new CalendarError(`no answer came within ${fetchMs / 1_000} s`);
    throw new CalendarError(networkWords(error), { cause: error });
  }
}

function bodyOf(
  url: URL,
  listed: boolean,
  { authorities }: CalendarPlace,
  signal: AbortSignal,
): Promise<string> {
  const request = url.protocol === 'https:' ? secureRequest : plainRequest;
  const { promise, resolve: done, reject } = Promise.withResolvers<string>();
  const asking = request(url, {
    agent: false,
    signal,
    headers: { accept: 'text/calendar' },
    ...(listed ? {} : { lookup: lookupWithin('public') }),
    ...(authorities === undefined ? {} : { ca: [...authorities] }),
  });
  asking.on('error', reject);
  asking.on('response', (answer) => {
    const { statusCode = 0 } = answer;
    if (statusCode !== 200) {
      const sends = statusCode >= 300 && statusCode < 400;
      const words = sends ? 'it sends on to another address' : `it answered ${statusCode}`;
      reject(new CalendarError(words));
      asking.destroy();
      return;
    }
    const parts: Buffer[] = [];
    let bytes = 0;
    answer.on('data', (part: Buffer) => {
      bytes += part.length;
      parts.push(part);
      if (bytes <= limits.rotaFileBytesMax) return;
      reject(tooLong());
      asking.destroy();
    });
    answer.on('error', reject);
    answer.on('end', () => done(Buffer.concat(parts).toString('utf8')));
  });
  asking.end();
  return promise;
}
