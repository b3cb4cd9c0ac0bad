/**
 * What a derived signal is: one formula over readings, stored and charted like a sensor.
 */

export interface DerivedInput {
  readonly name: string;
  /** Canonical UCUM code; `K` is a temperature difference. */
  readonly unit: string;
  /** What must be measured, and how: gauge or absolute, at which place. */
  readonly meaning: string;
}

export interface DerivedKind {
  readonly name: string;
  /** One sentence: what it gives, by which convention. */
  readonly summary: string;
  readonly inputs: readonly DerivedInput[];
  /** Canonical UCUM code of the result. */
  readonly unit: string;
  /** Decimals the result is quantised to. */
  readonly digits: number;
  /** Where the formula is published. */
  readonly source: string;
  /**
   * Finite inputs in canonical units, in the order of `inputs`; the result in `unit`, not yet
   * quantised. null where the inputs lie outside the formula's range; never NaN.
   */
  compute(inputs: ArrayLike<number>): number | null;
}
