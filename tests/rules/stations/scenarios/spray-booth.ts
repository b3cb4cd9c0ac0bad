import type { Scenario } from '../scenario.ts';
import { usedOnHold } from './held-stories.ts';

const hour = 60;
const day = 24 * hour;
const plain = (topic: string, unit: string) =>
  `{ topic: ${topic}, payload: { kind: plain }, unit: ${unit} }`;
const hand = (unit: string) => `{ unit: ${unit}, by_hand: true }`;
/** Panels of a line that runs well: 19 µm over a base of 10, with a scatter that comes back every five. */
const scatter = [0, 0.0012, -0.0009, 0.0005, -0.0011] as const;
const panel = (i: number) => 0.029 + scatter[i % 5]!;

export const sprayBooth: Scenario = {
  kind: 'spray-booth',
  station: `
    material: adhesive-a
    signals:
      face-velocity: ${plain('v', 'm/s')}
      fan-proof: ${plain('f', '"1"')}
      filter-dp: ${plain('d', 'Pa')}
      spraying: ${plain('s', '"1"')}
      trigger: ${plain('t', '"1"')}
      air: ${plain('a', 'Cel')}
      humidity: ${plain('h', '"%"')}
      part: ${plain('p', 'Cel')}
      atomising-air: ${plain('aa', 'bar')}
      pot-pressure: ${plain('pp', 'bar')}
      pot-on: ${plain('po', '"1"')}
      pot-filled: ${plain('pf', '"1"')}
      pot-level: ${plain('pl', 'mm')}
      pot-paddle: ${plain('pa', '/min')}
      film-base: ${hand('um')}
      film-gauge: ${hand('um')}
      film-edge-gauge: ${hand('um')}
      film-total-gauge: ${hand('um')}
    rules:
      filter-loaded: { target: 60 Pa }
      pot-pressure: { target: 2 bar }
      pot-rating: { high: 6.3 bar }
      dip-tube-near: { low: 80 mm }
      atomising-air: { target: 3 bar }
      needle-worn: { high: 4 h }
      cap-worn: { high: 5 h }`,
  stories: [
    {
      title: 'A good hour: purged, first part released, rack R-1 sprayed, panel measured.',
      tell: (line) => {
        line.mark(0, 'flushed').mark(0, 'rack-in', 'R-1');
        const well = { 'face-velocity': 0.62, 'fan-proof': 1, 'filter-dp': 0.075, part: 52 };
        const pot = { 'pot-on': 1, 'pot-filled': 1, 'pot-pressure': 200, 'pot-paddle': 12 };
        const rest = { spraying: 1, trigger: 1, 'atomising-air': 302, air: 23, humidity: 50 };
        line.run(0, 3, { ...well, ...pot, ...rest }).mark(3, 'first-off');
        line.run(3, 30, { ...well, ...pot, ...rest }).mark(30, 'coated', 'R-1');
        line.run(40, 41, { 'film-base': 0.01, 'film-gauge': 0.029 }, 60).mark(41, 'panel-taken');
        line.run(41, 42, { spraying: 0, trigger: 0 }).mark(50, 'flushed').waitTo(hour);
      },
    },
    {
      title:
        'The exhaust weakens while somebody sprays; later the belt breaks. Each time it is mended.',
      tell: (line) => {
        line.run(0, 2, { spraying: 1, 'face-velocity': 0.6, 'fan-proof': 1 });
        line.run(2, 5, { spraying: 1, 'face-velocity': 0.44, 'fan-proof': 1 });
        line.run(5, 8, { spraying: 1, 'face-velocity': 0.62, 'fan-proof': 1 });
        line.run(8, 10, { spraying: 1, 'face-velocity': 0.62, 'fan-proof': 0 });
        line.run(10, 12, { spraying: 1, 'face-velocity': 0.62, 'fan-proof': 1 });
      },
    },
    {
      title: 'Fan off and nobody sprays: no one is told.',
      tell: (line) => {
        line.run(0, 10, { spraying: 0, 'face-velocity': 0.02, 'fan-proof': 0, 'filter-dp': 0 });
      },
    },
    {
      title: 'Filters load until they are changed; one is forgotten.',
      tell: (line) => {
        line.run(0, 60, { 'fan-proof': 1, 'filter-dp': (m) => 0.15 + 0.001 * m });
        line.run(60, 75, { 'fan-proof': 1, 'filter-dp': 0.022 });
        line.run(75, 80, { 'fan-proof': 1, 'filter-dp': 0.061 });
      },
    },
    {
      title: 'The pot’s regulator creeps up to its rating; its air is shut off.',
      tell: (line) => {
        line.run(0, 1, { 'pot-on': 1, 'pot-pressure': 200 });
        line.run(1, 6, { 'pot-on': 1, 'pot-pressure': (m) => 200 + 100 * (m - 1) });
        line.run(6, 8, { 'pot-on': 0, 'pot-pressure': 50 });
        line.run(8, 9, { 'pot-on': 1, 'pot-pressure': 200 });
      },
    },
    {
      title: 'The pot’s paddle stands for a quarter of an hour, then its level runs low.',
      tell: (line) => {
        line.run(0, 15, { 'pot-filled': 1, 'pot-on': 1, 'pot-paddle': 0, 'pot-level': 200 });
        line.run(15, 20, { 'pot-filled': 1, 'pot-on': 1, 'pot-paddle': 12, 'pot-level': 78 });
        line.run(20, 22, { 'pot-filled': 1, 'pot-on': 1, 'pot-paddle': 12, 'pot-level': 300 });
      },
    },
    {
      title: 'The atomising air sags with the trigger on, and rack R-3 comes cold.',
      tell: (line) => {
        line.mark(0, 'rack-in', 'R-3');
        line.run(0, 1, { trigger: 1, spraying: 1, 'atomising-air': 250, part: 52 });
        line.run(1, 2, { trigger: 1, spraying: 1, 'atomising-air': 300, part: 31 });
        line.run(2, 3, { trigger: 1, spraying: 1, 'atomising-air': 300, part: 50 });
      },
    },
    {
      title:
        'The panel after rack R-4 is thin, the next thick, the one after would split; then it is right.',
      tell: (line) => {
        line.mark(0, 'rack-in', 'R-4').mark(20, 'coated', 'R-4');
        line.run(40, 41, { 'film-base': 0.01, 'film-gauge': 0.021, 'film-edge-gauge': 0.019 }, 60);
        line.run(70, 71, { 'film-gauge': 0.042 }, 60);
        line.run(100, 101, { 'film-gauge': 0.064, 'film-total-gauge': 0.066 }, 60);
        line.run(130, 131, { 'film-gauge': 0.03, 'film-edge-gauge': 0.027 }, 60);
        line.run(131, 132, { 'film-total-gauge': 0.033 }, 60).waitTo(140);
      },
    },
    {
      title:
        'For ten days the panels scatter about 19 µm; then a needle wears, and they lie to one side.',
      tell: (line) => {
        line.run(0, 1, { 'film-base': 0.01 }, 60);
        for (let i = 1; i <= 36; i += 1) {
          line.run(i * 7 * hour, i * 7 * hour + 1, { 'film-gauge': panel(i) }, 60);
          line.mark(i * 7 * hour + 1, 'panel-taken');
        }
        line.mark(36 * 7 * hour + 2, 'coated', 'R-90');
        for (let i = 37; i <= 40; i += 1) {
          line.run(i * 7 * hour, i * 7 * hour + 1, { 'film-gauge': panel(i) + 0.003 }, 60);
          line.mark(i * 7 * hour + 1, 'panel-taken');
        }
        for (let i = 41; i <= 44; i += 1) {
          line.run(i * 7 * hour, i * 7 * hour + 1, { 'film-gauge': panel(i) }, 60);
          line.mark(i * 7 * hour + 1, 'panel-taken');
        }
      },
    },
    {
      title: 'Nobody takes a panel for a shift.',
      tell: (line) => {
        line
          .waitTo(9 * hour)
          .mark(9 * hour, 'panel-taken')
          .waitTo(10 * hour);
      },
    },
    {
      title: 'The shift ends; the guns are flushed three quarters of an hour later.',
      tell: (line) => {
        line.mark(5, 'shift-ended').waitTo(50).mark(50, 'flushed').waitTo(hour);
      },
    },
    {
      title: 'The guns lie idle for half an hour, are said to, and are sprayed with again.',
      tell: (line) => {
        line
          .mark(0, 'rack-in', 'R-7')
          .run(0, 5, { spraying: 1 })
          .run(5, 6, { spraying: 0 })
          .mark(6, 'guns-idle');
        line.waitTo(35).run(35, 36, { spraying: 1 }).mark(36, 'flushed').waitTo(hour);
      },
    },
    {
      title:
        'After a flush rack R-5 is sprayed without a first part; later a drum is changed and it happens again.',
      tell: (line) => {
        line.run(0, 1, { spraying: 0 }).mark(1, 'flushed').mark(2, 'rack-in', 'R-5');
        line.run(2, 9, { spraying: 1 }).mark(9, 'first-off');
        line.run(9, 10, { spraying: 1 }).mark(10, 'coated', 'R-5');
        line.mark(11, 'drum-changed', 'drum-8').mark(12, 'rack-in', 'R-6');
        line.run(12, 20, { spraying: 1 }).mark(20, 'first-off');
      },
    },
    {
      title: 'Needle and cap are used past their hours and changed.',
      tell: (line) => {
        line.run(0, 5.5 * hour, { trigger: 1 }, 60);
        line.mark(5.5 * hour, 'needle-changed').mark(5.5 * hour, 'cap-changed');
        line.run(5.5 * hour, 5.6 * hour, { trigger: 1 }, 60);
      },
    },
    {
      title: 'A hot and damp afternoon in the booth.',
      tell: (line) => {
        line.run(0, 60, { spraying: 1, air: 32, humidity: 76 });
        line.run(60, 70, { spraying: 1, air: 26, humidity: 60 });
      },
    },
    {
      title: 'For a year nobody surveys the booth or tests the relief valve.',
      tell: (line) => {
        for (let at = 7; at < 366 * 24; at += 7) line.mark(at * hour, 'panel-taken');
        line
          .waitTo(366 * day)
          .mark(366 * day, 'velocity-surveyed')
          .mark(366 * day, 'relief-tested');
      },
    },
    usedOnHold('container', 'drum-changed', 'drum-11'),
    usedOnHold('rack', 'rack-in', 'R-901'),
  ],
};
