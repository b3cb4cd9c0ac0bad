import type { Scenario } from '../scenario.ts';

export const drumMixer: Scenario = {
  kind: 'drum-mixer',
  station: `
    material: adhesive-a
    container: drum-7
    signals:
      agitator: { topic: a, payload: { kind: plain }, unit: /min }
      in-use: { topic: u, payload: { kind: plain }, unit: "1" }
      level: { topic: l, payload: { kind: plain }, unit: mm }
    rules:
      blade-uncovered: { low: 250 mm }`,
  stories: [
    {
      title: 'The air fails at 00:10; it is found and mended after an hour and twenty minutes.',
      tell: (line) => {
        line.run(0, 10, { 'in-use': 1, agitator: 25 });
        line.run(10, 90, { 'in-use': 1, agitator: 0 });
        line.run(90, 100, { 'in-use': 1, agitator: 25 });
      },
    },
    {
      title: 'Somebody turns the regulator up, sees it, and goes too low.',
      tell: (line) => {
        line.run(0, 5, { agitator: 37 });
        line.run(5, 15, { agitator: 17 });
        line.run(15, 20, { agitator: 25 });
      },
    },
    {
      title: 'The drum runs low and is changed.',
      tell: (line) => {
        line.run(0, 30, { level: (m) => 300 - 4 * m, agitator: 25 });
        line.run(30, 40, { level: 820, agitator: 25 });
      },
    },
  ],
};
