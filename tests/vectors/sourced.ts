/**
 * How far an expected figure can be trusted.
 *   seen: read in the named source, or computed with the named library at the named version.
 *   calc: computed from a formula whose constants were read; good against change, not proof against a publication.
 *   memory: from memory, not confirmed.
 */
export type Flag = 'seen' | 'calc' | 'memory';

export interface Sourced {
  readonly source: string;
  readonly flag: Flag;
}

const library = 'PsychroLib 2.5.0 (npm psychrolib 1.1.1)';
const libraryTests = 'as quoted in PsychroLib, tests/test_psychrolib_si.py';

export const sources = {
  library,
  ashraeSaturation: `ASHRAE Handbook Fundamentals 2017, chapter 1, table 3, ${libraryTests}`,
  ashraeMoistAir: `ASHRAE Handbook Fundamentals 2017, chapter 1, table 2, ${libraryTests}`,
  ashraeExample: `ASHRAE Handbook Fundamentals 2017, chapter 1, example 1, ${libraryTests}`,
  libraryTests: 'PsychroLib, tests/test_psychrolib_si.py (calculated with a spreadsheet)',
  iapws: 'IAPWS-IF97 and IAPWS sublimation pressure by python iapws 1.5.2',
  sonntag: 'Sonntag 1990, Z. Meteorol. 40, 340-344, computed from its constants',
  wmo: 'WMO-No. 8, Annex 4.B, computed from its formulas',
  isoAir: 'ISO 8573-1:2010, as tabled by two independent makers of compressed air equipment',
  maths: 'follows from the formula',
  custom: 'customary with ISO 8502-4, which is guidance and names no single figure',
  epa: 'US EPA, Unified Guidance on groundwater monitoring, 2009, examples 17-6 and 17-7; data in the R package EnvStats',
  nistControl: 'NIST/SEMATECH e-Handbook of Statistical Methods, as quoted in public test suites',
  montgomery: 'D. C. Montgomery, Introduction to Statistical Quality Control, table 9.1 data (as printed for a library of numerical routines)',
} as const;
