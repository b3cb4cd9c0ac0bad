/** The unit people see a signal in is the one it is written in; what is worked out follows its inputs. */
import { expect, test } from 'vitest';
import { compiled } from './site.ts';

const site = compiled(`
l:
  t:
    kind: custom
    signals:
      exhaust: { topic: e, payload: { kind: plain }, unit: m/s, resolution: 0.01 }
      withdrawal: { topic: w, payload: { kind: plain }, unit: m/min, resolution: 0.0001 }
      tank: { topic: a, payload: { kind: plain }, unit: cm }
      weir: { topic: b, payload: { kind: plain }, unit: mm }
    derived:
      fall: { kind: weir-fall, inputs: { tank: tank, weir: weir } }
      mean: { kind: moving-average, inputs: { signal: withdrawal }, span: 10 min }
      rise: { kind: rate, inputs: { signal: weir }, span: 1 h }
`);

test.each([
  ['exhaust', 'm/s', 'm/s'],
  ['withdrawal', 'm/s', 'm/min'],
  ['tank', 'mm', 'cm'],
  ['fall', 'mm', 'cm'],
  ['mean', 'm/s', 'm/min'],
  ['rise', 'm/s', 'mm/h'],
])('%s is kept in %s and told in %s', (name, unit, written) => {
  expect(site.problems).toEqual([]);
  const signal = site.plan.signals.find(({ id }) => id === `l/t/${name}`);
  expect(signal).toMatchObject({ unit, written });
});
