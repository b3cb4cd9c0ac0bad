import type { Scenario, Story } from '../scenario.ts';
import { usedOnHold } from './held-stories.ts';

const cel = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: Cel }`;
const state = (topic: string) => `{ topic: ${topic}, payload: { kind: plain }, unit: "1" }`;
const cavities = [1, 2, 3, 4] as const;
const mouldAt = (value: number) =>
  Object.fromEntries(cavities.map((cavity) => [`cavity-${cavity}`, value]));
const idle = { 'insert-in': 0, closed: 0 };
/** Bar would be a plant's own word; the engine holds kilopascal. */
const cureKPa = 12_000;

export const press: Scenario = {
  kind: 'press',
  sheet: {
    cure_above: '155 Cel',
    cure_for: '8 min',
    cure_pressure: '10 MPa',
    insert_wait: '45 s',
  },
  station: `
    material: adhesive-a
    signals:
      cavity-1: ${cel('c1')}
      cavity-2: ${cel('c2')}
      cavity-3: ${cel('c3')}
      cavity-4: ${cel('c4')}
      producing: ${state('p')}
      insert-in: ${state('i')}
      closed: ${state('c')}
      pressure: { topic: h, payload: { kind: plain }, unit: MPa }
    rules:
      mould-hot-1: { target: 160 Cel }
      mould-hot-2: { target: 160 Cel }
      mould-hot-3: { target: 160 Cel }
      mould-hot-4: { target: 160 Cel }`,
  stories: [
    {
      title: 'A good shot: loaded within half a minute, cured nine minutes at 12 MPa.',
      tell: (line) => {
        line.run(0, 1, { producing: 1, ...mouldAt(160), ...idle });
        line.mark(1, 'inserts-in', 'S-100');
        line.run(1, 1.5, { 'insert-in': 1, closed: 0 });
        line.run(1.5, 10.5, { 'insert-in': 1, closed: 1, pressure: cureKPa, ...mouldAt(159) });
        line.run(10.5, 11, { ...idle, pressure: 0 });
      },
    },
    {
      title: 'An insert does not fit: shot S-101 lies two minutes in the hot mould.',
      tell: (line) => {
        line.run(0, 1, idle).mark(1, 'inserts-in', 'S-101');
        line.run(1, 3, { 'insert-in': 1, closed: 0 }).run(3, 12, { 'insert-in': 1, closed: 1 });
        line.run(12, 13, idle);
      },
    },
    {
      title: 'Shot S-102 is let go after five minutes of eight.',
      tell: (line) => {
        line.run(0, 1, idle).mark(1, 'inserts-in', 'S-102');
        line
          .run(1, 1.5, { 'insert-in': 1, closed: 0 })
          .run(1.5, 6.5, { 'insert-in': 1, closed: 1 });
        line.run(6.5, 12, idle);
      },
    },
    {
      title: 'The pump sags to 7 MPa while shot S-103 cures, and comes back for the next.',
      tell: (line) => {
        line.run(0, 1, idle).mark(1, 'inserts-in', 'S-103');
        line.run(1, 1.5, { 'insert-in': 1, closed: 0 });
        line.run(1.5, 10.5, { 'insert-in': 1, closed: 1, pressure: 7_000 });
        line.run(10.5, 11, { ...idle, pressure: 0 });
        line.mark(11, 'inserts-in', 'S-104');
        line.run(11, 11.5, { 'insert-in': 1, closed: 0 });
        line.run(11.5, 20.5, { 'insert-in': 1, closed: 1, pressure: cureKPa });
        line.run(20.5, 21, { ...idle, pressure: 0 });
      },
    },
    ...cavities.map(
      (cavity): Story => ({
        title: `Cavity ${cavity} is cold after a change of mould, soaks, and later runs away.`,
        tell: (line) => {
          const at = `cavity-${cavity}`;
          line.run(0, 5, { producing: 0, [at]: 120 }).mark(5, 'inserts-in', `S-20${cavity}`);
          line.run(5, 8, { producing: 1, [at]: 150 }).run(8, 12, { producing: 1, [at]: 160 });
          line.run(12, 15, { producing: 1, [at]: 170 }).run(15, 18, { producing: 1, [at]: 160 });
        },
      }),
    ),
    {
      title: 'Cavity three runs seven kelvin above cavity one; its heater is set right.',
      tell: (line) => {
        const others = { producing: 1, ...mouldAt(160) };
        line.run(0, 10, { ...others, 'cavity-1': 157, 'cavity-3': 164.5 });
        line.run(10, 20, others);
      },
    },
    usedOnHold('lot', 'insert-lot', 'I-901'),
    usedOnHold('lot', 'compound-batch', 'C-901'),
  ],
};
