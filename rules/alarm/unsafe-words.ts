/**
 * Acts that no text may advise where people can be hurt: they have killed people in front of an
 * oven, a vessel or a running machine. Held over the texts that come with the stations (by their
 * tests) and over those a site writes, in English and German. A list of words cannot know every danger.
 */
const acts: readonly RegExp[] = [
  /\bopen(s|ed|ing)?\b/i,
  /\b(look(s|ed|ing)? |a look )(in|into|inside|through)\b/i,
  /\b(peek|peer)(s|ed|ing)?\b/i,
  /\bscrap(e|es|ed|ing)\b/i,
  /\bpok(e|es|ed|ing)\b/i,
  /\breach(es|ed|ing)? (in|into|past)\b/i,
  /\bclimb(s|ed|ing)? (in|into)\b/i,
  /\b(stop(s|ped|ping)?|halt(s|ed|ing)?|hold) the (conveyor|chain)\b/i,
  /\bkeep the (conveyor|chain|line) (halted|stopped|still|off)\b/i,
  /\bblow(s|ing)? .*\b(residue|hot)\b/i,
  /\b(take|lift|pull|remove|crack)(s|d|ing)? .*\b(lid|door|cover|guard)\b/i,
  /\breset(s|ting)? .*\b(emergency stop|trip|interlock)\b/i,
  /\b(bridge|bypass|jumper|override|defeat)(s|d|ing)?\b/i,
  /\bpull(s|ed|ing)? .*\b(rack|load|parts?|stack)\b/i,
  /\b(use|spray|throw|pour|put)(s|ing)? water\b/i,
  /\bhose (it|down)\b/i,
  /\b(put|douse|extinguish)(s|ing)? .*\bwith water\b/i,
  /(?<!\p{L})öffne(n|t)?(?!\p{L})/iu,
  /\b(hinein|rein)(sehen|schauen|greifen|gehen|fassen)\b/i,
  /\b(sieh|sehen|schau|schauen|greifen?)\b.*\b(hinein|rein)\b/i,
  /\b(ab)?(kratzen|schaben)\b/i,
  /(förderer|kette|linie)\b.*\b(anhalten|stoppen|stillsetzen)\b/i,
  /\bhalten? .*(förderer|kette|linie)\b.*\ban\b/i,
  /(?<!\p{L})überbrück(e|en|t)(?!\p{L})/iu,
  /\bmit wasser\b.*\b(löschen|kühlen|spritzen)\b/i,
  /\blöschen? .*\bmit wasser\b/i,
  /\bnot-?(halt|aus)\b.*\bzurück(setzen)?\b/i,
  /(tür|klappe|deckel|haube)\b.*\b(aufmachen|abnehmen|anheben)\b/i,
];

/** What is forbidden is not advised, nor what is for those whose work it is. */
const forbids =
  /\b(not(?!-?(halt|aus))|never|nobody|no one|nicht|nie|niemals|niemand|keine?[mnrs]?)\b/i;
const forOthers =
  /\b(licensed|authori[sz]ed|fire brigade|fire service|electrician|feuerwehr|fachleute|fachkraft|zugelassene\w*|befugte\w*)\b/i;

/** The first such act a text advises, as it stands there; null where it advises none. */
export function unsafeWords(text: string): string | null {
  for (const clause of text.split(/[.!?;:]/)) {
    if (forOthers.test(clause)) continue;
    for (const act of acts) {
      const found = act.exec(clause);
      if (found === null) continue;
      const before = clause.slice(0, found.index).split(',').at(-1)!;
      if (!forbids.test(`${before}${found[0]}`)) return found[0];
    }
  }
  return null;
}
