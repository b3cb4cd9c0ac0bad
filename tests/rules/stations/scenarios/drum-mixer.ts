import type { Scenario } from '../scenario.ts';
import { usedOnHold } from './held-stories.ts';

const hour = 60;
const state = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: "1" }`;
const working = { 'in-use': 1, agitator: 25 };

export const drumMixer: Scenario = {
  kind: 'drum-mixer',
  station: `
    material: adhesive-a
    container: drum-7
    signals:
      agitator: { topic: a, payload: { kind: plain }, unit: /min }
      in-use: ${state('u')}
      feed: ${state('f')}
      level: { topic: l, payload: { kind: plain }, unit: mm }
      air: { topic: t, payload: { kind: plain }, unit: Cel }
    derived:
      tip-speed: { blade_diameter: 400 mm }
    rules:
      blade-uncovered: { low: 250 mm }`,
  stories: [
    {
      title: 'The air fails at 00:10; it is found and mended after an hour and twenty minutes.',
      tell: (line) => {
        line.run(0, 10, { 'in-use': 1, level: 800, agitator: 25 });
        line.run(10, 90, { 'in-use': 1, level: 800, agitator: 0 });
        line.run(90, 100, { 'in-use': 1, level: 800, agitator: 25 });
      },
    },
    {
      title: 'Somebody turns the regulator up, sees it, and goes too low.',
      tell: (line) => {
        line.run(0, 5, { 'in-use': 1, level: 800, agitator: 37 });
        line.run(5, 15, { agitator: 17 }).run(15, 20, { agitator: 25 });
      },
    },
    {
      title:
        'The drum runs low; its agitator is stopped for it, which nobody needs to be told; it is changed.',
      tell: (line) => {
        line.run(0, 20, { ...working, level: (m) => 300 - 4 * m });
        line.run(20, 35, { 'in-use': 1, agitator: 0, level: 210 });
        line.run(35, 40, { ...working, level: 820 });
      },
    },
    {
      title:
        'drum-8 is connected and cranked by hand: a quarter of an hour at ten turns, out of use, says nothing.',
      tell: (line) => {
        line.run(0, 1, { ...working, level: 820 }).mark(1, 'connected', 'drum-8');
        line.run(1, 16, { 'in-use': 0, level: 820, agitator: 10 });
        line.mark(16, 'hand-cranked', 'drum-8').run(16, 20, { ...working, level: 820 });
      },
    },
    {
      title:
        'drum-9 is drawn from after three hours of mixing; the feed is stopped, and it is mixed on to eight.',
      tell: (line) => {
        line.run(0, 1, { feed: 0, agitator: 0 }, 60).mark(1, 'connected', 'drum-9');
        line.run(1, 3 * hour + 1, { feed: 0, agitator: 25 }, 60);
        line.run(3 * hour + 1, 3 * hour + 11, { feed: 1, agitator: 25 }, 60);
        line.run(3 * hour + 11, 8 * hour + 1, { feed: 0, agitator: 25 }, 60);
        line.run(8 * hour + 1, 9 * hour, { feed: 1, agitator: 25 }, 60);
      },
    },
    usedOnHold('container', 'connected', 'drum-11'),
  ],
};
