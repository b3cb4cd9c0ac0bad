/**
 * Fixed phrases of the agent in German: why a reading is not usable, and what the box says of itself. What
 * is not here stays English and is marked as English.
 */
import { causes } from '#rules/german/causes.ts';

export const phrases: Readonly<Record<string, string>> = {
  ...causes,
  // what the box says of itself
  'The system clock is behind or was set back; samples are marked. Check the time source.':
    'Die Systemuhr geht nach oder wurde zurückgestellt; Messwerte sind markiert. Zeitquelle prüfen.',
  'Nobody can be told: no person has a phone or an e-mail address.':
    'Niemand kann gerufen werden: Keine Person hat ein Telefon oder eine E-Mail-Adresse.',
  'Nobody can be told: no person has a phone or an e-mail address. Switch push on under Look back, My phone, or enter an address there.':
    'Niemand kann gerufen werden: Keine Person hat ein Telefon oder eine E-Mail-Adresse. Unter Rückblick, Mein Telefon einschalten oder dort eine Adresse eintragen.',
  'This agent tells nobody: it has neither people nor webhooks.':
    'Dieser Agent ruft niemanden: Er hat weder Personen noch Webhooks.',
  'The rota says nobody is on call now, so everyone who wants alarms is told.':
    'Nach dem Dienstplan hat zurzeit niemand Bereitschaft; gerufen werden alle, die Alarme wollen.',
  // what is not watched
  'Its sensors have not been heard yet.': 'Von seinen Sensoren kam noch nichts.',
  'The MQTT door is not open.': 'Der Eingang für MQTT ist nicht offen.',
};
