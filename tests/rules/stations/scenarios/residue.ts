import type { Scenario } from '../scenario.ts';

const hour = 60;
const day = 24 * hour;
const quiet = { surface: 60, air: 58 };

export const residue: Scenario = {
  kind: 'residue',
  site: { fire_plan: { phone: '5555', muster_point: 'gate 2' } },
  station: `
    material: adhesive-a
    signals:
      surface: { topic: s, payload: { kind: plain }, unit: Cel }
      air: { topic: a, payload: { kind: plain }, unit: Cel }
      thickness: { unit: mm, by_hand: true }
      bin: { topic: b, payload: { kind: plain }, unit: Cel }
      bin-air: { topic: h, payload: { kind: plain }, unit: Cel }
      stack: { topic: k, payload: { kind: plain }, unit: Cel }`,
  stories: [
    {
      title:
        'The oven floor creeps up from 00:20 with the air, 1 K a minute, is seen, and the heat is taken back at 01:15.',
      tell: (line) => {
        line.run(0, 20, quiet);
        line.run(20, 75, { surface: (m) => 60 + (m - 20), air: (m) => 58 + (m - 20) });
        line.run(75, 130, { surface: (m) => 115 - (m - 75), air: (m) => 113 - (m - 75) });
      },
    },
    {
      title:
        'At night the heat is off, and one surface goes on warming by itself from 00:30; it falls again from 00:40.',
      tell: (line) => {
        line.run(0, 30, quiet);
        line.run(30, 40, { surface: (m) => 60 + 2 * (m - 30), air: 58 });
        line.run(40, 60, { surface: (m) => Math.max(60, 80 - 2 * (m - 40)), air: 58 });
      },
    },
    {
      title: 'The floor is gauged at 0.6 and then 1.2 mm; it is cleaned, and gauged again.',
      tell: (line) => {
        line.run(10, 11, { thickness: 0.6 }, 60);
        line.run(5 * hour, 5 * hour + 1, { thickness: 1.2 }, 60);
        line.mark(8 * hour, 'cleaned');
        line.run(8 * hour + 5, 8 * hour + 6, { thickness: 0.1 }, 60);
      },
    },
    {
      title:
        'A filter bank is gauged at 50 mm and runs at 40, then 55 °C: far below 112, and too near for so much residue; the heat is taken back.',
      tell: (line) => {
        line.run(0, 10, { surface: 40, air: 40, thickness: 50 });
        line.run(10, 20, { surface: 55, air: 55, thickness: 50 });
        line.run(20, 30, { surface: 40, air: 40, thickness: 50 });
      },
    },
    {
      title: 'Nobody writes down a cleaning for eight days.',
      tell: (line) => {
        for (let at = 7 * hour; at <= 8 * day; at += 7 * hour) line.mark(at, 'bin-emptied');
        line.mark(8 * day, 'cleaned');
        line.waitTo(8 * day + hour);
      },
    },
    {
      title: 'The bin is emptied after the first shift and forgotten in the second.',
      tell: (line) => {
        line.mark(7 * hour, 'bin-emptied').waitTo(16 * hour);
        line.mark(16 * hour, 'bin-emptied').waitTo(17 * hour);
      },
    },
    {
      title: 'Wipes in the bin heat by themselves from 00:20, and are put out.',
      tell: (line) => {
        line.run(0, 20, { bin: 22, 'bin-air': 20 });
        line.run(20, 60, { bin: (m) => 22 + 0.5 * (m - 20), 'bin-air': 20 });
        line.run(60, 80, { bin: 21, 'bin-air': 20 });
      },
    },
    {
      title: 'Racks are stacked hot and cool down.',
      tell: (line) => {
        line.run(0, 60, { stack: (m) => 62 - 0.4 * m });
      },
    },
  ],
};
