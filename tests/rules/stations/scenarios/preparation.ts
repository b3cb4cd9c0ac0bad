import type { Scenario } from '../scenario.ts';

const hour = 60;
const day = 24 * hour;
const plain = (topic: string, unit: string) =>
  `{ topic: ${topic}, payload: { kind: plain }, unit: ${unit} }`;
const hand = (unit: string) => `{ unit: ${unit}, by_hand: true }`;

export const preparation: Scenario = {
  kind: 'preparation',
  sheet: {
    profile_low: '25 um',
    profile_high: '60 um',
    phosphate_low: '1.5 g/m2',
    phosphate_high: '4.5 g/m2',
    rinse_conductivity_high: '50 uS/cm',
  },
  station: `
    material: adhesive-a
    signals:
      air: ${plain('a', 'Cel')}
      humidity: ${plain('h', '"%"')}
      metal: ${plain('m', 'Cel')}
      blast-pressure: ${plain('b', 'bar')}
      blasting: ${plain('r', '"1"')}
      rinse-conductivity: ${plain('c', 'uS/cm')}
      blast-profile: ${hand('um')}
      media-oily: ${hand('"1"')}
      water-break: ${hand('"1"')}
      rust-bloom: ${hand('"1"')}
      phosphate-weight: ${hand('g/m2')}
      bath-points: ${hand('"1"')}
      make-up-conductivity: ${hand('uS/cm')}
    rules:
      blast-pressure: { target: 5 bar }
      bath-points: { low: 18 1, high: 24 1 }`,
  stories: [
    {
      title:
        'A good shift: rack R-1 is degreased, blasted, phosphated, rinsed and coated the day after; all is checked.',
      tell: (line) => {
        line.mark(0, 'degreased', 'R-1').mark(30, 'blasted', 'R-1');
        line.mark(hour, 'converted', 'R-1').mark(70, 'rinsed', 'R-1');
        line.run(80, 81, { 'water-break': 0, 'rust-bloom': 0, 'make-up-conductivity': 3 }, 60);
        line.run(
          81,
          82,
          { 'blast-profile': 0.042, 'phosphate-weight': 2.8, 'bath-points': 21 },
          60,
        );
        line.mark(90, 'shift-checked').mark(8 * hour, 'shift-checked');
        line.mark(15 * hour, 'shift-checked').mark(22 * hour, 'shift-checked');
        line.mark(day, 'coated', 'R-1').waitTo(day + 30);
      },
    },
    {
      title: 'In dry air rack R-2 waits over lunch and longer for its coat.',
      tell: (line) => {
        line.run(0, 5, { humidity: 45, air: 21 }).mark(5, 'blasted', 'R-2');
        line
          .waitTo(4.5 * hour)
          .mark(4.5 * hour, 'coated', 'R-2')
          .waitTo(5 * hour);
      },
    },
    {
      title: 'The air turns damp an hour after rack R-3 was blasted: its time is halved.',
      tell: (line) => {
        line.run(0, 5, { humidity: 45, air: 21 }).mark(5, 'blasted', 'R-3');
        line.run(hour, 3 * hour, { humidity: 68, air: 21 }, 600);
        line.mark(3 * hour, 'coated', 'R-3').waitTo(3.5 * hour);
      },
    },
    {
      title: 'Phosphated rack R-4 stands over a long weekend.',
      tell: (line) => {
        line.mark(0, 'converted', 'R-4');
        for (let at = 7; at < 80; at += 7) line.mark(at * hour, 'shift-checked');
        line
          .waitTo(80 * hour)
          .mark(80 * hour, 'coated', 'R-4')
          .waitTo(81 * hour);
      },
    },
    {
      title: 'Bloom is seen on rack R-5; after another blast it is clean.',
      tell: (line) => {
        line
          .mark(0, 'blasted', 'R-5')
          .mark(99, 'inspected', 'R-5')
          .run(100, 101, { 'rust-bloom': 1 }, 60);
        line.mark(130, 'blasted', 'R-5').run(140, 141, { 'rust-bloom': 0 }, 60);
      },
    },
    {
      title: 'The water film breaks on rack R-6, and oil is found in the media.',
      tell: (line) => {
        line.mark(0, 'degreased', 'R-6').mark(5, 'blasted', 'R-6').mark(9, 'inspected', 'R-6');
        line.run(10, 11, { 'water-break': 1 }, 60).run(15, 16, { 'media-oily': 1 }, 60);
        line.mark(60, 'media-changed').run(70, 71, { 'media-oily': 0, 'water-break': 0 }, 60);
      },
    },
    {
      title: 'A worn nozzle: the profile of rack R-7 comes out too smooth, and the pressure sags.',
      tell: (line) => {
        line
          .mark(0, 'blasted', 'R-7')
          .mark(4, 'inspected', 'R-7')
          .run(5, 6, { 'blast-profile': 0.019 }, 60);
        line.run(6, 10, { blasting: 1, 'blast-pressure': 500 });
        line.run(10, 15, { blasting: 1, 'blast-pressure': 430 });
        line.run(15, 20, { blasting: 1, 'blast-pressure': 495 });
        line.run(30, 31, { 'blast-profile': 0.038 }, 60);
      },
    },
    {
      title: 'The phosphate bath runs strong, and rack R-8 comes out powdery.',
      tell: (line) => {
        line.mark(0, 'converted', 'R-8').mark(4, 'inspected', 'R-8');
        line.run(5, 6, { 'bath-points': 27 }, 60).run(10, 11, { 'phosphate-weight': 6.2 }, 60);
        line.run(70, 71, { 'bath-points': 22 }, 60).run(90, 91, { 'phosphate-weight': 3.1 }, 60);
      },
    },
    {
      title: 'The deioniser is spent: first the make-up water, then the last rinse.',
      tell: (line) => {
        line.run(0, 1, { 'make-up-conductivity': 13 }, 60);
        line.run(10, 20, { 'rinse-conductivity': 30 });
        line.run(20, 30, { 'rinse-conductivity': 64 });
        line.run(30, 31, { 'make-up-conductivity': 24 }, 60);
        line.run(90, 91, { 'make-up-conductivity': 2 }, 60);
        line.run(91, 99, { 'rinse-conductivity': 20 });
      },
    },
    {
      title: 'Castings come in cold from the yard into a humid hall, and warm up.',
      tell: (line) => {
        line.run(0, 120, { air: 22, humidity: 62, metal: (m) => 6 + 0.12 * m }, 60);
      },
    },
    {
      title: 'Nobody checks anything for a shift.',
      tell: (line) => {
        line
          .waitTo(9 * hour)
          .mark(9 * hour, 'shift-checked')
          .waitTo(10 * hour);
      },
    },
  ],
};
