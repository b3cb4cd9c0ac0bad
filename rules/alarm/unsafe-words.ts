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
  /\b(peek|peer)(s|ed|ing)?\b/i,
  /\b(take|lift|pull)(s|ing)? .*\b(lid|door|cover|guard)\b/i,
  /\b(halt|keep)(s|ed|ing)? .*\b(conveyor|chain|line)\b.*\b(halted|stopped|still|off)\b/i,
  /\bhalt(s|ed|ing)? the (conveyor|chain)\b/i,
  /\breset(s|ting)? .*\b(emergency stop|trip|interlock)\b/i,
  /\b(bridge|bypass|jumper|override)(s|d|ing)?\b/i,
  /\bpull(s|ed|ing)? .*\b(rack|load|parts?|stack)\b/i,
  /\b(use|spray|throw|pour|put)(s|ing)? water\b/i,
  /(?<!\p{L})öffne(n|t)?(?!\p{L})/iu,
  /\b(hinein|rein)(sehen|schauen|greifen|gehen|fassen)\b/i,
  /\bnachsehen, (ob|was)\b.*\b(drin|innen|im ofen)\b/i,
  /\b(ab)?(kratzen|schaben)\b/i,
  /\b(förderer|kette|linie)\b.*\b(anhalten|stoppen|stillsetzen)\b/i,
  /(?<!\p{L})überbrücken(?!\p{L})/iu,
  /\bmit wasser\b.*\b(löschen|kühlen|spritzen)\b/i,
  /\bnot-?(halt|aus)\b.*\bzurücksetzen\b/i,
  /\b(deckel|haube|tür|klappe)\b.*\b(abnehmen|anheben|aufmachen)\b/i,
];

/** The first such act a text names, as it stands there, in English or German; null where it names none. */
export function unsafeWords(text: string): string | null {
  for (const act of acts) {
    const found = act.exec(text);
    if (found !== null) return found[0];
  }
  return null;
}
