/** How thick residue lies and how long since it was cleaned off: the barrier where heat leaves none. */
import { judgement, managedClass, type RuleTemplate } from './station.ts';

export const thick: RuleTemplate = {
  name: 'residue-thick',
  kind: 'band',
  signals: ['thickness'],
  numbers: [
    {
      setting: 'high',
      value: '1 mm',
      basis: judgement('thicker residue lights at a lower temperature'),
      confirm: 'SITE',
      needs: 'the thickness at which the site cleans this place (rule residue-thick: high)',
    },
  ],
  fixed: { inclusive: true },
  gate: null,
  class: managedClass,
  priority: ['low', 'low'],
  respond: '8 h',
  hazard: 'thickness',
  hold: null,
  label: {
    word: 'WARNING',
    sentence: '{$signal} at {$value}, at or above {$limit}: this place is due for cleaning.',
    consequence: 'Every further millimetre lowers the temperature at which it lights itself.',
    steps: [
      'Shut the oven down, let it cool and isolate it by local rules.',
      'Have it cleaned under the site’s permit with non-sparking tools, damp as the data sheet says.',
      'Take the waste out of the building at once; write down the thickness left.',
    ],
    doNot: ['clean it hot', 'grind it, or use a steel scraper'],
    caution: 'Friction, impact and sparks light cold residue too.',
  },
};

export const cleaningLate: RuleTemplate = {
  name: 'cleaning-late',
  kind: 'age',
  signals: [],
  marks: ['cleaned'],
  numbers: [
    {
      setting: 'limit',
      value: '7 d',
      basis: judgement(
        'a week of spraying can leave some millimetres; daily where it gathers fast',
      ),
      confirm: 'SITE',
      needs: 'how often the site cleans this place (rule cleaning-late: limit)',
    },
    { setting: 'early', value: '80 %', basis: judgement('time left to plan a shutdown') },
  ],
  gate: null,
  class: managedClass,
  priority: ['low', 'medium'],
  respond: '8 h',
  hazard: 'thickness',
  hold: null,
  label: {
    ...thick.label,
    sentence:
      '{$station}: {$reached} since somebody wrote down that it was cleaned, of {$required} at most.',
    steps: [
      'Shut the oven down, let it cool and isolate it by local rules.',
      'Once it is cold and released under the site’s permit, have the thickness gauged and the place cleaned with non-sparking tools, damp as the data sheet says.',
      'Take the waste out of the building at once; write down the cleaning and the thickness left.',
    ],
  },
};
