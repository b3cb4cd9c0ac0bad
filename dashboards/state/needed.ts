/** Which alarms this phone has already been asked about, "was this needed?", so that each is asked once. */
const place = 'forebond.needed';
const keptMax = 200;

function read(): string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(place) ?? '[]');
    return Array.isArray(kept) ? kept.filter((each) => typeof each === 'string') : [];
  } catch {
    return []; // nothing kept, or storage is closed to this page
  }
}

let said: readonly string[] = read();

export const isSaid = (occurrence: string): boolean => said.includes(occurrence);

export function keepSaid(occurrence: string): void {
  said = [...said.filter((each) => each !== occurrence), occurrence].slice(-keptMax);
  try {
    localStorage.setItem(place, JSON.stringify(said));
  } catch {
    // Storage is closed: it is known until the page is left.
  }
}
