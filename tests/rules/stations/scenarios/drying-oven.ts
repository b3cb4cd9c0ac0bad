import type { Scenario } from '../scenario.ts';

/** Metal that follows air of `airC` from 20 °C with a time constant of eight minutes. */
const metal = (airC: number, fromMin: number) => (minute: number) =>
  airC - (airC - 20) * Math.exp(-(minute - fromMin) / 8);
const cel = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: Cel }`;
const state = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: "1" }`;

export const dryingOven: Scenario = {
  kind: 'drying-oven',
  site: { fire_plan: { phone: '5555', muster_point: 'gate 2' } },
  sheet: {
    dry_above: '65 Cel',
    dry_for: '10 min',
    bake_peak: '95 Cel',
    dose_at: '80 Cel',
    dose_z: '30 K',
    dose_limit: '30 min',
  },
  station: `
    material: adhesive-a
    signals:
      metal: ${cel('m')}
      loaded: ${state('l')}
      conveyor: ${state('c')}
      heat: ${state('h')}
      exhaust-proof: ${state('e')}
      exhaust-dp: { topic: d, payload: { kind: plain }, unit: Pa }
      zone-1-air: ${cel('a1')}
      zone-1-check: ${cel('b1')}
      zone-2-air: ${cel('a2')}
      zone-2-check: ${cel('b2')}
      zone-3-air: ${cel('a3')}
      zone-3-check: ${cel('b3')}
    rules:
      under-dried: { dwell: 30 min }
      exhaust-weak: { target: 120 Pa }
      zone-1-high: { target: 90 Cel }
      zone-2-high: { target: 90 Cel }
      zone-3-high: { target: 90 Cel }`,
  stories: [
    {
      title: 'A good load: rack R-41 is in for half an hour at 90 °C of air.',
      tell: (line) => {
        line.run(0, 1, { loaded: 0 }).mark(1, 'rack-in', 'R-41');
        line.run(1, 31, { loaded: 1, metal: metal(90, 1) }).mark(31, 'rack-out', 'R-41');
        line.run(31, 32, { loaded: 0 });
      },
    },
    {
      title:
        'A heavy load at 67 °C of air: rack R-42 cannot be dry any more; the next load is a good one.',
      tell: (line) => {
        line.run(0, 1, { loaded: 0 }).mark(1, 'rack-in', 'R-42');
        line.run(1, 31, { loaded: 1, metal: metal(67, 1) }).mark(31, 'rack-out', 'R-42');
        line.run(31, 35, { loaded: 0 }).mark(35, 'rack-in', 'R-43');
        line.run(35, 65, { loaded: 1, metal: metal(90, 35) });
      },
    },
    {
      title: 'The air stands at 115 °C; rack R-44 gets too hot, and too much heat altogether.',
      tell: (line) => {
        line.run(0, 1, { loaded: 0 }).mark(1, 'rack-in', 'R-44');
        line.run(1, 31, { loaded: 1, metal: metal(115, 1) }).mark(31, 'rack-out', 'R-44');
        line.run(31, 35, { loaded: 0 });
        line.run(35, 45, { loaded: 1, metal: metal(90, 35) });
      },
    },
    {
      title: 'The conveyor stands from 00:10 to 00:14 with rack R-45 inside.',
      tell: (line) => {
        line.mark(0, 'rack-in', 'R-45');
        line.run(0, 10, { loaded: 1, conveyor: 1 });
        line.run(10, 14, { loaded: 1, conveyor: 0 });
        line.run(14, 16, { loaded: 1, conveyor: 1 });
      },
    },
    {
      title: 'The exhaust weakens and then stops; at 00:12 it is back.',
      tell: (line) => {
        line.run(0, 5, { heat: 1, 'exhaust-proof': 1, 'exhaust-dp': 0.12 });
        line.run(5, 10, { heat: 1, 'exhaust-proof': 1, 'exhaust-dp': 0.05 });
        line.run(10, 12, { heat: 1, 'exhaust-proof': 0, 'exhaust-dp': 0.005 });
        line.run(12, 14, { heat: 1, 'exhaust-proof': 1, 'exhaust-dp': 0.12 });
      },
    },
    ...([1, 2, 3] as const).map((zone) => ({
      title: `Zone ${zone} runs away to 104 °C and is brought back; its second sensor sticks at 96 °C.`,
      tell: (line: Parameters<Scenario['stories'][number]['tell']>[0]) => {
        const [air, check] = [`zone-${zone}-air`, `zone-${zone}-check`];
        line.run(0, 10, { [air]: 90, [check]: 90 });
        line.run(10, 20, { [air]: 104, [check]: 104 });
        line.run(20, 40, { [air]: 90, [check]: 96 });
        line.run(40, 60, { [air]: 90, [check]: 90 });
      },
    })),
    {
      title: 'Nobody sends a logger through for a quarter.',
      tell: (line) => {
        line.waitTo(91 * 24 * 60).mark(91 * 24 * 60, 'profiled');
      },
    },
  ],
};
