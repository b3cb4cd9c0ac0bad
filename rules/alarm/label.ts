/**
 * The safety label of an alarm: who can be hurt (signal word, ANSI Z535.4 / ISO 3864), what it
 * means, what to do and what not to do. Texts are whole sentences; `{$name}` is filled in with a
 * number and its unit, a clock or a name.
 */
export type SignalWord = 'DANGER' | 'WARNING' | 'CAUTION' | 'NOTICE';

export interface Label {
  readonly word: SignalWord;
  /** One sentence: subject, fact, limit, time. */
  readonly sentence: string;
  readonly consequence: string;
  /** The first three things to do. */
  readonly steps: readonly string[];
  readonly doNot: readonly string[];
  readonly caution: string;
}

/** A do-not, which is a clause. What a site ends with a stop gets no second one. */
export const doNotSentence = (what: string): string => `Do not ${what.replace(/\.$/, '')}.`;

/** The same on a German page, of what the site wrote in whatever language. */
export const ownDoNotInGerman = (what: string): string => `Nicht: ${what.replace(/\.$/, '')}.`;

/** Stands under every label. */
export const deferral =
  'Advice only; this is no safety system. The safety data sheet, the equipment maker’s ' +
  'instructions, your site’s plan and local codes come first. Work on burners, electrics, ' +
  'pressure and fire equipment is for licensed people.';
