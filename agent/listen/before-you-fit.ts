/** What must be known before anybody names, moves or fits a sensor; said before anything else. */
export const beforeYouFit: readonly string[] = [
  'Before you fit, move or wire anything, ask whoever answers for this line:',
  '  1. Is any of it a classified area (explosive atmosphere)? Booth, mix room and oven duct often are.',
  '     A sensor or radio that is not approved for it can be illegal there, and dangerous.',
  '  2. Does this line also run solvent-borne coating, or electrostatic guns?',
  '  3. Who may open or drill this oven, this pressure pot, this duct? Nobody else does.',
  'Never tap a burner, purge or over-temperature circuit: fit a separate sensor.',
  'A pressure pot is vented before it is opened; its relief valve is the protection, not this program.',
];

/** The same as lines to fill in, in the site file. */
export const questionsInFile: readonly string[] = [
  '# Fill in before anything is fitted:',
  '#   area classification of this line: ____',
  '#   solvent-borne coating or electrostatic guns on this line: ____',
  '#   who may open or drill oven, pot and duct: ____',
  '# Never tap a burner, purge or over-temperature circuit: fit a separate sensor.',
];
