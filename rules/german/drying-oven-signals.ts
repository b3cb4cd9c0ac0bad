/** German for the texts of `rules/stations/drying-oven-signals.ts`. */
import type { Texts } from './texts.ts';

export const dryingOvenSignals: Texts = {
  'air of zone 1': 'Luft der Zone 1',
  'return stream of zone 1 at part height, apart from the control’s sensor; not on the wall':
    'Rückluftstrom der Zone 1 auf Höhe der Teile, getrennt vom Sensor der Steuerung; nicht an der Wand',
  'a second sensor in the same air of zone 1': 'ein zweiter Sensor in derselben Luft der Zone 1',
  'within 50 mm of zone-1-air': 'höchstens 50 mm entfernt von zone-1-air',
  'air of zone 2': 'Luft der Zone 2',
  'return stream of zone 2 at part height, apart from the control’s sensor; not on the wall':
    'Rückluftstrom der Zone 2 auf Höhe der Teile, getrennt vom Sensor der Steuerung; nicht an der Wand',
  'a second sensor in the same air of zone 2': 'ein zweiter Sensor in derselben Luft der Zone 2',
  'within 50 mm of zone-2-air': 'höchstens 50 mm entfernt von zone-2-air',
  'air of zone 3': 'Luft der Zone 3',
  'return stream of zone 3 at part height, apart from the control’s sensor; not on the wall':
    'Rückluftstrom der Zone 3 auf Höhe der Teile, getrennt vom Sensor der Steuerung; nicht an der Wand',
  'a second sensor in the same air of zone 3': 'ein zweiter Sensor in derselben Luft der Zone 3',
  'within 50 mm of zone-3-air': 'höchstens 50 mm entfernt von zone-3-air',
};
