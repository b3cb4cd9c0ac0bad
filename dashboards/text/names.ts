/** Ids as people say them: `mounts-1/mixer-3/agitator` is "Mixer 3 agitator". The line is said elsewhere. */

const spoken = (part: string): string => part.replaceAll('-', ' ');
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A station, or a signal or rule with its station before it; other texts as they are. */
export function placeName(id: string): string {
  const parts = id.split('/');
  return capital((parts.length > 1 ? parts.slice(1) : parts).map(spoken).join(' '));
}

/** The last part alone: "Agitator". */
export const ownName = (id: string): string => capital(spoken(id.split('/').at(-1) ?? id));

const id = /^[a-z0-9-]+(\/[a-z0-9-]+){1,2}$/;

/** A text that is an id as people say it; any other as it is. */
export const spokenId = (text: string): string => (id.test(text) ? placeName(text) : text);
