/** Cautions that several texts of the spray booth share. */

/** Booth, pot and mix room may be places where a spark can light what is in the air. */
export const askFirst =
  'First ask how this area is classified, whether solvent or electrostatic guns are used on this line, and who may drill here: a sensor or radio that is not certified for it can light vapour';

export const pressure = 'Stored pressure. Vent and lock out by local rules.';
export const wear = 'Wear what the material’s data sheet asks for.';
export const hotParts = 'Parts are warm and racks move; keep clear of them.';
