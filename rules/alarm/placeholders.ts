/**
 * The names a label's text may use as `{$name}`, and what each prints. Numbers print with their
 * canonical unit, times in the site's zone.
 */
export const placeholders = {
  station: 'the station’s name',
  signal: 'the signal’s name',
  container: 'the container at the station, or the station where none is named',
  value: 'the value that decided',
  limit: 'the limit it passed or nears',
  side: 'on which side of it the value is: above or below',
  slope: 'how much it changes in an hour, rising or falling',
  minuteslope: 'how much it changes in a minute, rising or falling',
  signals: 'the names of all the signals it judges',
  which: 'the one of them that stands apart',
  reference: 'what the value is compared with',
  difference: 'how far the value is from it',
  allowed: 'how far it may be from it',
  per: 'the time in which it changed so much',
  other: 'the other of two signals that disagree',
  reached: 'how long it was where it should be',
  required: 'how long it had to be there',
  left: 'time left before the exit, or before the limit',
  item: 'the rack, container, lot or shot it is about',
  items: 'how many of them are as far',
  setter: 'who put it on hold: a person, or a rule',
  reason: 'why it was put on hold',
  early: 'time until the limit at the earliest',
  late: 'time until the limit at the latest',
  duration: 'how long the condition has held',
  clock: 'since when the condition has held',
  cause: 'why the last reading could not be used',
  target: 'where to bring the value',
  low: 'lower end of where it should be',
  high: 'upper end of where it should be',
  rest: 'how long the material may rest',
  stir: 'how long to stir before use',
  mixing: 'how the container is mixed',
  plan: 'the fire plan’s telephone and muster point, where the site gave them',
  smother: 'what smothering does to residue of this kind',
  fumes: 'what fumes of this residue may be',
} as const satisfies Record<string, string>;

export type Placeholder = keyof typeof placeholders;

/** Known wherever a text stands: in steps and cautions too, which no evidence fills. */
export const nameFacts: readonly Placeholder[] = ['station', 'signal', 'signals', 'container'];
/** Filled from the rule's facts. */
export const ruleFacts: readonly Placeholder[] = [
  'target',
  'low',
  'high',
  'rest',
  'stir',
  'mixing',
  'plan',
  'smother',
  'fumes',
];
/** Filled from the evidence: in the sentence alone. */
export const evidenceFacts: readonly Placeholder[] = [
  'value',
  'limit',
  'side',
  'slope',
  'minuteslope',
  'which',
  'reference',
  'difference',
  'allowed',
  'per',
  'other',
  'reached',
  'required',
  'left',
  'item',
  'items',
  'setter',
  'reason',
  'early',
  'late',
  'duration',
  'clock',
  'cause',
];

/** Every `{$name}` in a text, in order of appearance. */
export const placeholdersIn = (text: string): readonly string[] =>
  [...text.matchAll(/\{\$([^}]*)\}/g)].map((match) => match[1]!);
