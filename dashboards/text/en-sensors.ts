/** Sensors that need somebody: the texts of refused messages and of calibrations, part of the one catalogue. */
export const sensors = {
  refusedTitle: 'Messages that cannot be used',
  refusedSays: 'The message that came last on these topics was refused.',
  refusedRow: '{$topic}: {$why} {$fix}',
  refusedBegan: 'It began: {$begins}',
  refusedFrom: 'From {$from}, {$clock}, {$count} so far.',
  refusedNobody: 'an unnamed sender',
  refusedFound: 'Looked for {$pointer}; found {$found}.',
  calibrationTitle: 'Calibration overdue',
  calibrationSays: 'Readings of these sensors are uncertain until they are calibrated.',
  calibrationRow: '{$signal}: calibrated {$day}, to hold until {$last}.',
} as const;
