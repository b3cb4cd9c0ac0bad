/** Where the reader is: a place behind the `#`, its parts decoded, and what follows the `?`. */
import { useEffect, useState } from 'preact/hooks';

export interface Place {
  readonly name: string;
  readonly parts: readonly string[];
  readonly query: URLSearchParams;
}

const decoded = (part: string): string => {
  try {
    return decodeURIComponent(part);
  } catch {
    return part; // a stray "%": no id has one, so nothing will be found by it
  }
};

export function placeOf(hash: string): Place {
  const [path = '', query = ''] = hash.replace(/^#\/?/, '').split('?', 2);
  const [name = '', ...parts] = path.split('/').map(decoded);
  return { name, parts, query: new URLSearchParams(query) };
}

/** `#/signal/mounts-1%2Fmixer-3%2Fagitator` */
export const to = (name: string, ...parts: readonly string[]): string =>
  `#/${[name, ...parts.map(encodeURIComponent)].join('/')}`;

export function usePlace(): Place {
  const [place, setPlace] = useState(() => placeOf(location.hash));
  useEffect(() => {
    const turn = (): void => setPlace(placeOf(location.hash));
    window.addEventListener('hashchange', turn);
    return () => window.removeEventListener('hashchange', turn);
  }, []);
  return place;
}
