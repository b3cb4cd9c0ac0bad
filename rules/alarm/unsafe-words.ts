/**
 * Acts that no text may advise where people can be hurt: they have killed people in front of an
 * oven, a vessel or a running machine. Held over the texts that come with the stations (by their
 * tests) and over those a site writes.
 */
const acts: readonly RegExp[] = [
  /\bopen(s|ed|ing)?\b/i,
  /\blook(s|ed|ing)? (in|into|inside)\b/i,
  /\bscrap(e|es|ed|ing)\b/i,
  /\bpok(e|es|ed|ing)\b/i,
  /\breach(es|ed|ing)? (in|into|past)\b/i,
  /\bstop(s|ped|ping)? the conveyor\b/i,
  /\bblow(s|ing)? .*\b(residue|hot)\b/i,
];

/** The first such act a text names, as it stands there; null where it names none. English only. */
export function unsafeWords(text: string): string | null {
  for (const act of acts) {
    const found = act.exec(text);
    if (found !== null) return found[0];
  }
  return null;
}
