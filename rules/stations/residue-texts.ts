/** Words that depend on what kind of residue it is; of a kind nobody knows they say the worse. */
import { firePlanFacts } from './fire-plan.ts';
import type { Bilingual, Given } from './station.ts';

export const tellEhs = 'Call EHS; hand over in person; nobody re-enters until they say so.';

/** Filled by `fireFacts`. */
export const fumes = '{$fumes}: safety data sheet, sections 5 and 10.';

/**
 * Residue that decomposes needs no air and may give off hydrogen chloride and nitrogen oxides; one
 * that oxidises may go on for long when its air is taken. Neither is told to be safe.
 */
export const fireFacts = (given: Given): Readonly<Record<string, string | Bilingual>> => {
  const oxidising = given.sheet?.residueKind === 'oxidising';
  return {
    ...firePlanFacts(given),
    smother: oxidising ? 'smothering stops it late' : 'smothering may not stop it',
    fumes: oxidising
      ? 'Smoke is toxic'
      : 'Fumes can be toxic even without flames, of hydrogen chloride and nitrogen oxides',
  };
};
