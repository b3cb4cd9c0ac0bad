import type { Scenario } from '../scenario.ts';
import { usedOnHold } from './held-stories.ts';

const cel = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: Cel }`;
const rh = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: "%" }`;
const hour = 60;
const day = 24 * hour;
const slowlyS = 600;

export const coatedStore: Scenario = {
  kind: 'coated-store',
  sheet: { layover: '20 d' },
  station: `
    material: adhesive-a
    signals:
      air: ${cel('a')}
      humidity: ${rh('h')}
      metal: ${cel('m')}
      room-air: ${cel('ra')}
      room-humidity: ${rh('rh')}
      part-probe: { by_hand: true, unit: Cel }`,
  stories: [
    {
      title:
        'R-1 is moulded in time. R-2 waits sixteen days, then twenty; somebody bakes it again and wants its time anew, which is refused; quality scraps it.',
      tell: (line) => {
        line.mark(0, 'coated', 'R-1').mark(1, 'coated', 'R-2').mark(2, 'moved-in', 'R-2');
        line.mark(5 * day, 'moulded', 'R-1').waitTo(17 * day);
        line.mark(17 * day, 'coated', 'R-2').waitTo(21 * day);
        line.mark(21 * day, 'scrapped', 'R-2');
      },
    },
    {
      title: 'The rack R-2 is used again, with new parts: their time begins with them.',
      tell: (line) => {
        line.mark(0, 'coated', 'R-2').mark(10 * day, 'moulded', 'R-2');
        line.mark(11 * day, 'coated', 'R-2').waitTo(26 * day);
      },
    },
    {
      title: 'A wet afternoon with the door left wide.',
      tell: (line) => {
        line
          .run(0, 6 * hour, { humidity: 78 }, slowlyS)
          .run(6 * hour, 7 * hour, { humidity: 50 }, slowlyS);
      },
    },
    {
      title: 'A warm front: damp air of 18 °C flows over metal that is still at 12 °C.',
      tell: (line) => {
        line.run(0, hour, { air: 18, humidity: 62, metal: 12 }, 60);
        line.run(hour, 2 * hour, { air: 18, humidity: 62, metal: 16 }, 60);
      },
    },
    {
      title:
        'R-7 is brought in at 9 °C, and R-8 after it; each is measured, waits and is unwrapped.',
      tell: (line) => {
        line.run(0, 1, { 'room-air': 23, 'room-humidity': 55 });
        line.mark(1, 'brought-in', 'R-7').run(2, 2.2, { 'part-probe': 9 });
        line.run(120, 120.2, { 'part-probe': 21 }).waitTo(121).mark(122, 'unwrapped', 'R-7');
        line.mark(125, 'brought-in', 'R-8').run(126, 126.2, { 'part-probe': 15.5 }).waitTo(127);
        line.run(180, 180.2, { 'part-probe': 20 }).waitTo(181).mark(182, 'unwrapped', 'R-8');
      },
    },
    {
      title: 'A hot afternoon under the roof.',
      tell: (line) => {
        line.run(0, 6 * hour, { air: 38 }, slowlyS).run(6 * hour, 8 * hour, { air: 30 }, slowlyS);
      },
    },
    usedOnHold('rack', 'moulded', 'R-901'),
  ],
};
