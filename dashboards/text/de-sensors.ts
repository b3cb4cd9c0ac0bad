/** German for the texts of `en-sensors.ts`. */
export const sensors = {
  refusedTitle: 'Nachrichten, die nicht verwendbar sind',
  refusedSays: 'Die jeweils letzte Nachricht zu diesen Themen wurde abgewiesen.',
  refusedRow: '{$topic}: {$why} {$fix}',
  refusedBegan: 'Sie begann mit: {$begins}',
  refusedFrom: 'Von {$from}, {$clock}, bisher {$count}.',
  refusedNobody: 'einem Absender ohne Namen',
  refusedFound: 'Gesucht: {$pointer}; gefunden: {$found}.',
  calibrationTitle: 'Kalibrierung überfällig',
  calibrationSays: 'Die Werte dieser Sensoren sind unsicher, bis sie kalibriert sind.',
  calibrationRow: '{$signal}: kalibriert {$day}, gültig bis {$last}.',
} as const;
