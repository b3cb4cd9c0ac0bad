/** What a station watches, each hazard once. */
import { expect, test } from 'vitest';
import { compiled, signalLine } from './site.ts';

test('a rule that is called as its hazard is does not make the hazard a second one', () => {
  const { coverage } = compiled(`
m:
  store:
    kind: coated-store
    material: adhesive-a
    signals:
      air: ${signalLine('store/air', 'Cel')}
`);
  const [station] = coverage.stations;
  const hazards = [...station!.watched, ...station!.unwatched].map(({ hazard }) => hazard);
  expect(hazards).toContain('layover');
  expect(hazards).toHaveLength(new Set(hazards).size);
});

test('one switched off hides no sensor that is missing besides', () => {
  const off = '{ off: true, reason: racks stand apart, signed_by: A. Byrne }';
  const { coverage } = compiled(`
m:
  r:
    kind: residue
    signals:
      stack: ${signalLine('r/stack', 'Cel')}
    rules: { stack-hot: ${off} }
`);
  const waste = coverage.stations[0]!.unwatched.find(({ hazard }) => hazard === 'waste');
  expect(waste!.why).toMatch(
    /^stack-hot is switched off by A\. Byrne: racks stand apart\. No sensor: bind bin/,
  );
});
