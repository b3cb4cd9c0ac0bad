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
