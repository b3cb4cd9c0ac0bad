import type { Scenario } from '../scenario.ts';
import { usedOnHold } from './held-stories.ts';

const input = (topic: string, unit: string) =>
  `{ topic: ${topic}, payload: { kind: plain }, unit: "${unit}" }`;
const hand = (unit: string) => `{ unit: "${unit}", by_hand: true }`;
const hour = 60;
const mPerMin = 1 / 60;

export const dipTank: Scenario = {
  kind: 'dip-tank',
  sheet: {
    bath_temperature: '23 Cel',
    target_solids: '35 %',
    oven_solids: '35 %',
    oven_solids_u: '0.3 %',
    oven_density: '1.10 g/mL',
    oven_density_u: '0.001 g/mL',
    oven_temperature: '23 Cel',
    ph_low: '7 [pH]',
    ph_high: '9 [pH]',
    conductivity_high: '2000 uS/cm',
    viscosity_low: '200 mPa.s',
    viscosity_high: '600 mPa.s',
  },
  station: `
    material: adhesive-a
    signals:
      temperature: ${input('t', 'Cel')}
      solids: ${hand('%')}
      tank-level: ${input('l', 'mm')}
      weir-level: ${input('w', 'mm')}
      flow: ${input('f', 'L/min')}
      filter-dp: ${input('d', 'bar')}
      withdrawal: ${input('u', 'm/min')}
      withdrawing: ${input('v', '1')}
      density: ${hand('g/mL')}
      sample-temperature: ${hand('Cel')}
      panel-film: ${hand('um')}
      ph: ${hand('[pH]')}
      conductivity: ${hand('uS/cm')}
      viscosity: ${hand('mPa.s')}
      foam: ${hand('1')}
      skin: ${hand('1')}
      make-up-conductivity: ${hand('uS/cm')}
    rules:
      circulation-lost: { target: 40 L/min }
      filter-loaded: { target: 0.2 bar }`,
  stories: [
    {
      title: 'The exchanger fails: the bath warms by 10 K in two hours, and is cooled again.',
      tell: (line) => {
        line.run(0, 2 * hour, { temperature: (m) => 23 + m / 12 });
        line.run(2 * hour, 4 * hour, { temperature: 23 });
      },
    },
    {
      title: 'An oven test finds 33.5 %; after half a correction and stirring it is 34.6 %.',
      tell: (line) => {
        line.run(10, 11, { solids: 33.5 }, 60).run(70, 71, { solids: 34.6 }, 60);
      },
    },
    {
      title:
        'Density says 35 %, later 1.3 points less, and much too little; half corrections bring it back.',
      tell: (line) => {
        const read = (at: number, density: number) =>
          line.run(at, at + 1, { 'sample-temperature': 23, density }, 60);
        read(10, 1_100);
        read(8 * hour, 1_095.8);
        read(16 * hour, 1_090);
        read(17 * hour, 1_098);
        line.waitTo(18 * hour);
      },
    },
    {
      title: 'The level behind the weir sinks, and adhesive is topped up under the surface.',
      tell: (line) => {
        line.run(0, 10, { 'tank-level': 900, 'weir-level': (m) => 890 - 4 * m });
        line.run(10, 15, { 'tank-level': 900, 'weir-level': 885 });
      },
    },
    {
      title: 'The pump’s air is shut and found; then the filter loads up, tears, and is changed.',
      tell: (line) => {
        line.run(0, 2, { flow: 40, 'filter-dp': 20 }).run(2, 8, { flow: 12, 'filter-dp': 12 });
        line.run(8, 10, { flow: 40, 'filter-dp': 20 }).run(10, 20, { flow: 40, 'filter-dp': 75 });
        line.run(20, 30, { flow: 40, 'filter-dp': 5 });
        line.mark(30, 'filter-changed').run(30, 32, { flow: 40, 'filter-dp': 20 });
      },
    },
    {
      title: 'Rack R-31 is drawn out too fast, the next one right.',
      tell: (line) => {
        line.run(0, 1, { withdrawing: 0, withdrawal: 0 }).mark(1, 'rack-in', 'R-31');
        line.run(1, 2, { withdrawing: 1, withdrawal: 1.3 * mPerMin });
        line.run(2, 3, { withdrawing: 0, withdrawal: 0 }).mark(3, 'rack-in', 'R-32');
        line.run(3, 4, { withdrawing: 1, withdrawal: 1 * mPerMin });
      },
    },
    {
      title: 'A panel of rack R-33 is at 31 µm, the next at 20 µm.',
      tell: (line) => {
        line.mark(0, 'rack-in', 'R-33').run(5, 6, { 'panel-film': 0.031 }, 60);
        line.run(90, 91, { 'panel-film': 0.02 }, 60);
      },
    },
    {
      title: 'The tank is made up at 01:00; the first-off panel is drawn at 04:00.',
      tell: (line) => {
        line.mark(hour, 'made-up').waitTo(4 * hour);
        line.mark(4 * hour, 'first-off').waitTo(5 * hour);
      },
    },
    {
      title:
        'The daily round finds the bath thin, sour and salty, with foam and skin; a day later it is well.',
      tell: (line) => {
        const bad = { ph: 6.4, conductivity: 2_600, viscosity: 150, foam: 1, skin: 1 };
        line.run(6 * hour, 6 * hour + 1, bad, 60);
        const well = { ph: 8.1, conductivity: 1_500, viscosity: 350, foam: 0, skin: 0 };
        line.run(30 * hour, 30 * hour + 1, well, 60);
      },
    },
    {
      title: 'The make-up water reads 14, then 26 µS/cm; with a new cartridge it is 1.',
      tell: (line) => {
        line.run(1, 2, { 'make-up-conductivity': 14 }, 60);
        line.run(hour, hour + 1, { 'make-up-conductivity': 26 }, 60);
        line.run(2 * hour, 2 * hour + 1, { 'make-up-conductivity': 1 }, 60);
      },
    },
    usedOnHold('rack', 'rack-in', 'R-901'),
    usedOnHold('lot', 'adhesive-in', 'K-901'),
  ],
};
