/**
 * The address of the page for somebody else's phone: what a link and its QR code begin with.
 *
 * Always true: where no other machine reaches the page, it says so; a QR code of an address that
 * leads a phone to itself is none.
 */
import { networkInterfaces } from 'node:os';
import { inUrl, loopbackOf } from './address.ts';

export interface PagePlace {
  readonly scheme: 'http' | 'https';
  /** As it is listened on. */
  readonly address: string;
  readonly port: number;
  /** Names under which others reach this machine, the one for links first; of its certificate too. */
  readonly names: readonly string[];
  /** `telling: page:` of the site file; null where it names none. */
  readonly sitePage: string | null;
}

export interface PageForOthers {
  /** Without a slash at its end. */
  readonly page: string;
  /** It leads here on this very machine alone. */
  readonly onlyHere: boolean;
}

const isHere = (host: string): boolean => loopbackOf(host) !== null;

/** `asked`: the value of Host under which whoever asks has reached it. */
export function pageForOthers(place: PagePlace, asked?: string): PageForOthers {
  const { scheme, address, port, names, sitePage } = place;
  if (sitePage !== null && !isHere(new URL(sitePage).hostname))
    return { page: sitePage.replace(/\/$/, ''), onlyHere: false };
  const under = (host: string): string => `${scheme}://${inUrl(host)}:${port}`;
  if (isHere(address))
    return { page: asked === undefined ? under(address) : `${scheme}://${asked}`, onlyHere: true };
  const [name] = names.filter((each) => !isHere(each));
  if (name !== undefined) return { page: under(name), onlyHere: false };
  if (asked !== undefined && !isHere(new URL(`${scheme}://${asked}`).hostname))
    return { page: `${scheme}://${asked}`, onlyHere: false };
  const isEvery = address === '0.0.0.0' || address === '::';
  const own = isEvery ? machineAddress() : address;
  // A machine without a network is reached by nobody.
  return own === null
    ? { page: under(address === '::' ? '::1' : '127.0.0.1'), onlyHere: true }
    : { page: under(own), onlyHere: false };
}

/** IPv4 first: a phone in a plant has it. */
function machineAddress(): string | null {
  const all = Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .filter(({ internal, address }) => !internal && !address.startsWith('fe80:'));
  return (all.find(({ family }) => family === 'IPv4') ?? all[0])?.address ?? null;
}
