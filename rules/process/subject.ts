/**
 * What a file of this room says about itself, in words that a process engineer reads.
 *
 * Every file here exports one record, `export const subject: Subject = { … }`, with an entry for
 * each function it exports. docs/science.md is made from these records (`npm run docs`), and a test
 * refuses a file without one, a function without an entry and an entry without a function.
 */

export interface Subject {
  /** A heading: "Solids from density". */
  readonly title: string;
  /** What question of the trade it answers, and what it must not be used for. Full sentences. */
  readonly about: string;
  /** Each symbol of the formulas with its meaning and unit: `rho_s: 'density of the solids, g/mL'`. */
  readonly symbols: Readonly<Record<string, string>>;
  /** Who says so; "common practice, no published source" and "from memory" are said as such. */
  readonly source: string;
  /** How far the figures can be trusted, with numbers. */
  readonly uncertainty: string;
  /** By the exported name. */
  readonly functions: Readonly<Record<string, Formula>>;
}

export interface Formula {
  /** In plain text, with the symbols above; in words where it is a method and no formula. */
  readonly formula: string;
  /** What is taken, and what the answer is outside of it. */
  readonly range: string;
  /** Where it differs from that of the subject. */
  readonly source?: string;
  readonly uncertainty?: string;
}
