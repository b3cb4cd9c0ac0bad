import type { Scenario } from '../scenario.ts';

const cel = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: Cel }`;
const state = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: "1" }`;
/** Metal that follows air of `airC` from 20 °C with a time constant of five minutes. */
const metal = (airC: number, fromMin: number) => (minute: number) =>
  airC - (airC - 20) * Math.exp(-(minute - fromMin) / 5);
const hour = 60;

export const primerPreBake: Scenario = {
  kind: 'primer-pre-bake',
  site: { fire_plan: { phone: '5555', muster_point: 'gate 2' } },
  sheet: {
    prebake_for: '6 min',
    cover_after: '20 min',
    cover_within: '8 h',
    bake_peak: '90 Cel',
    dose_at: '80 Cel',
    dose_z: '30 K',
    dose_limit: '15 min',
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
      zone-2-air: ${cel('a2')}
      zone-3-air: ${cel('a3')}
    rules:
      under-baked: { dwell: 20 min }
      exhaust-weak: { target: 120 Pa }
      zone-off-1: { target: 80 Cel }
      zone-off-2: { target: 80 Cel }
      zone-off-3: { target: 80 Cel }`,
  stories: [
    {
      title: 'A good load: rack R-7 is primed, baked and covered within its time.',
      tell: (line) => {
        line.mark(0, 'primed', 'R-7').run(1, 2, { loaded: 0 });
        line.mark(2, 'rack-in', 'R-7').run(2, 22, { loaded: 1, metal: metal(80, 2) });
        line.run(22, 23, { loaded: 0 }).mark(23, 'rack-out', 'R-7');
        line.mark(60, 'covered', 'R-7').waitTo(12 * hour);
      },
    },
    {
      title: 'The air is down at 66 °C: the primer of rack R-8 cannot get its minutes any more.',
      tell: (line) => {
        line.run(0, 1, { loaded: 0 }).mark(1, 'rack-in', 'R-8');
        line.run(1, 21, { loaded: 1, metal: metal(66, 1) });
        line.run(21, 25, { loaded: 0 }).mark(25, 'rack-in', 'R-9');
        line.run(25, 45, { loaded: 1, metal: metal(80, 25) });
      },
    },
    {
      title: 'The air stands at 100 °C: rack R-10 gets too hot, and too much heat altogether.',
      tell: (line) => {
        line.run(0, 1, { loaded: 0 }).mark(1, 'rack-in', 'R-10');
        line.run(1, 21, { loaded: 1, metal: metal(100, 1) });
        line.run(21, 25, { loaded: 0 }).mark(25, 'rack-in', 'R-11');
        line.run(25, 45, { loaded: 1, metal: metal(80, 25) });
      },
    },
    {
      title: 'Rack R-12 is covered ten minutes after priming, while rack R-13 has only just come.',
      tell: (line) => {
        line.mark(0, 'primed', 'R-12').mark(8, 'primed', 'R-13');
        line.mark(10, 'covered', 'R-12').mark(40, 'covered', 'R-13').waitTo(hour);
      },
    },
    {
      title: 'Rack R-14 waits overnight for its cover coat.',
      tell: (line) => {
        line.mark(0, 'primed', 'R-14').waitTo(9 * hour);
        line.mark(9 * hour, 'covered', 'R-14').waitTo(10 * hour);
      },
    },
    ...([1, 2, 3] as const).map((zone) => ({
      title: `With a load inside zone ${zone} sinks to 68 °C; its fan is mended.`,
      tell: (line: Parameters<Scenario['stories'][number]['tell']>[0]) => {
        line.run(0, 1, { loaded: 0 });
        line.run(1, 10, { loaded: 1, metal: 80, [`zone-${zone}-air`]: 80 });
        line.run(10, 20, { loaded: 1, metal: 80, [`zone-${zone}-air`]: 68 });
        line.run(20, 25, { loaded: 1, metal: 80, [`zone-${zone}-air`]: 80 });
      },
    })),
    {
      title: 'Zones one and three stand twelve kelvin apart, and then alike.',
      tell: (line) => {
        const others = { loaded: 1, metal: 80, 'zone-2-air': 80 };
        line.run(0, 1, { loaded: 0 });
        line.run(1, 20, { ...others, 'zone-1-air': 74, 'zone-3-air': 86.5 });
        line.run(20, 40, { ...others, 'zone-1-air': 80, 'zone-3-air': 80 });
      },
    },
    {
      title: 'The conveyor stands with rack R-15 inside; then the exhaust weakens and stops.',
      tell: (line) => {
        line.mark(0, 'rack-in', 'R-15');
        line.run(0, 3, { loaded: 1, metal: 80, conveyor: 0 });
        line.run(3, 10, { loaded: 1, metal: 80, conveyor: 1 });
        line.run(10, 12, { heat: 1, 'exhaust-proof': 1, 'exhaust-dp': 0.05 });
        line.run(12, 14, { heat: 1, 'exhaust-proof': 0, 'exhaust-dp': 0.005 });
        line.run(14, 16, { heat: 1, 'exhaust-proof': 1, 'exhaust-dp': 0.12 });
      },
    },
    {
      title: 'Nobody sends a logger through for a quarter.',
      tell: (line) => {
        line.waitTo(91 * 24 * hour).mark(91 * 24 * hour, 'profiled');
      },
    },
  ],
};
