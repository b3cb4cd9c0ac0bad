/**
 * What a stored sample is worth where it leaves the agent: its quality, and whether it was judged.
 *
 * Always true: a sample that was kept and never judged is not good, whatever its sensor said.
 */
import { causeOf, type Grade, gradeOf, isBad, type QualityCode, quality } from './quality.ts';
import { sampleFlag, unjudgedFlags } from './sample.ts';

/** Usable, and not to be trusted as it stands: uncertain, late or in conflict with another. */
export const isInDoubt = (code: QualityCode, flags: number): boolean =>
  !isBad(code) && (code !== quality.good || (flags & unjudgedFlags) !== 0);

export const gradeStored = (code: QualityCode, flags: number): Grade =>
  isInDoubt(code, flags) ? 'uncertain' : gradeOf(code);

/** What was wrong with it, in words; null for a good sample that was judged. */
export function causeStored(code: QualityCode, flags: number): string | null {
  const late = (flags & sampleFlag.late) !== 0 ? 'late: kept and not judged' : null;
  const causes = [causeOf(code), late].filter((cause) => cause !== null);
  return causes.length === 0 ? null : causes.join('; ');
}
