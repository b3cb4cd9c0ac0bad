/** A station with what people and scanners write down: clocks of racks, a bin, a reading by hand. */
const seconds = (ms: number): string => `${ms} ms`;

const rules = (limitMs: number) => ({
  'blast-to-coat': {
    kind: 'age',
    marks: ['blasted', 'coated'],
    limit: seconds(limitMs),
    hold: { what: 'rack' },
    priority: 'medium',
    consequence: 'The metal rusts under the film.',
    actions: ['Blast the rack again.'],
  },
  'ph-low': {
    kind: 'band',
    signal: 'ph',
    low: '7 [pH]',
    priority: 'low',
    consequence: 'The bath attacks the metal.',
    actions: ['Read it again.'],
  },
  'bin-late': {
    kind: 'age',
    marks: ['bin-emptied'],
    limit: '24 h',
    priority: 'low',
    consequence: 'Residue lies where it can light itself.',
    actions: ['Have the bin emptied.'],
  },
});

export const prepSite = (limitMs: number) => ({
  site: 'works',
  timezone: 'Europe/Dublin',
  lines: {
    m: {
      prep: {
        kind: 'custom',
        signals: {
          ph: {
            by_hand: true,
            unit: '[pH]',
            resolution: 0.1,
            due_every: '8 h',
            range: ['4 [pH]', '11 [pH]'],
          },
          air: { topic: 'prep/air', payload: { kind: 'plain' }, unit: 'Cel' },
        },
        marks: {
          blasted: {
            what: 'rack',
            meaning: 'The rack came out of the blaster.',
            topic: 'prep/blasted',
          },
          coated: {
            what: 'rack',
            meaning: 'The rack was coated.',
            topic: 'prep/coated',
            payload: { kind: 'json', item: '/rack', time: '/t' },
          },
          'bin-emptied': { what: 'none', meaning: 'The waste bin was emptied.' },
        },
        rules: rules(limitMs),
      },
    },
  },
});
