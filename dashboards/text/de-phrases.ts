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
  'The MQTT door is not open.': 'Der Eingang für MQTT ist nicht offen.',
};
