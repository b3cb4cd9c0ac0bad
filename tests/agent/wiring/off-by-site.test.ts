/** Health says what the site file switches off where people can be hurt, with who signed and why. */
import { expect, test } from 'vitest';
import { offBySite } from '#agent/wiring/vitals.ts';
import { compiled, signalLine } from '../../rules/plan/site.ts';

test('by the site file, not by a file of own rules', () => {
  const { coverage } = compiled(`
m:
  residue-1:
    kind: residue
    signals:
      stack: ${signalLine('r/stack', 'Cel')}
    rules:
      stack-hot: { off: true, reason: racks stand apart., signed_by: A. Byrne }
`);
  const [note] = offBySite(coverage);
  expect(note).toBe(
    'Switched off by the site file: m/residue-1/stack-hot, signed by A. Byrne: racks stand apart.',
  );
});
