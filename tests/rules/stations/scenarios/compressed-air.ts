import type { Scenario } from '../scenario.ts';

const hour = 60;
const cel = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: Cel }`;
const bar = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: bar }`;

export const compressedAir: Scenario = {
  kind: 'compressed-air',
  station: `
    signals:
      pdp: ${cel('d')}
      pipe: ${cel('p')}
      header: ${bar('h')}
      separator-dp: ${bar('s')}
      blotter: { unit: "1", by_hand: true }`,
  stories: [
    {
      title: 'A good shift: dry air, a clean blotter, the drains seen to.',
      tell: (line) => {
        line.run(0, 60, { pdp: -22, pipe: 14, header: 680, 'separator-dp': 12 });
        line.run(61, 62, { blotter: 0 }, 60).mark(62, 'blotter-tested');
        line.mark(70, 'separators-drained').waitTo(7 * hour);
      },
    },
    {
      title: 'The dryer fails at 00:10; it is found and mended.',
      tell: (line) => {
        line.run(0, 10, { pdp: 3, pipe: 18 });
        line.run(10, 40, { pdp: 8, pipe: 18 });
        line.run(40, 60, { pdp: 2, pipe: 18 });
      },
    },
    {
      title:
        'The dew point is as ever, but frost comes into the hall: a drop at the gate stands at 4 °C.',
      tell: (line) => {
        line.run(0, 10, { pdp: -2, pipe: 16 });
        line.run(10, 30, { pdp: -2, pipe: 4 });
        line.run(30, 60, { pdp: -8, pipe: 6 });
      },
    },
    {
      title: 'The blotter shows a trace of oil; after a new element it is clean.',
      tell: (line) => {
        line.run(10, 11, { blotter: 1 }, 60).mark(11, 'blotter-tested');
        line.run(90, 91, { blotter: 0 }, 60).mark(91, 'blotter-tested').waitTo(100);
      },
    },
    {
      title: 'Nobody tests the air or drains a separator until the next shift.',
      tell: (line) => {
        line.waitTo(9 * hour).mark(9 * hour, 'blotter-tested');
        line.mark(9 * hour + 10, 'separators-drained').waitTo(10 * hour);
      },
    },
    {
      title: 'The compressor unloads for two minutes.',
      tell: (line) => {
        line.run(0, 5, { header: 680 }).run(5, 7, { header: 520 }).run(7, 10, { header: 670 });
      },
    },
    {
      title: 'The separator’s element loads until it is changed.',
      tell: (line) => {
        line.run(0, 60, { 'separator-dp': (m) => 25 + 0.25 * m });
        line.run(60, 70, { 'separator-dp': 10 });
      },
    },
  ],
};
