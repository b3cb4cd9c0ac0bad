/** A speed that a station kind knows is told as the trade tells it, whatever unit its sensor sends. */
import { expect, test } from 'vitest';
import { displayOf } from '#rules/alarm/reader-units.ts';
import { compiled, signalLine } from './site.ts';

const metric = { temperature: 'Cel', pressure: 'bar', smallLength: 'um', speed: 'm' } as const;

test.each([
  ['spray-booth', 'face-velocity', 'm/s', 'm/s'],
  ['spray-booth', 'face-velocity', '[ft_i]/min', 'm/s'],
  ['spray-booth', 'face-velocity', 'm/min', 'm/s'],
  ['dip-tank', 'withdrawal', 'm/min', 'm/min'],
  ['dip-tank', 'withdrawal', 'm/s', 'm/min'],
  ['custom', 'conveyor', 'm/min', 'm/min'],
  ['custom', 'fan', 'm/s', 'm/s'],
])('%s %s sent in %s is told in %s', (kind, name, unit, told) => {
  const { plan } = compiled(`
l:
  s:
    kind: ${kind}
    signals:
      ${name}: ${signalLine('t', unit)}
`);
  const signal = plan.signals.find(({ id }) => id === `l/s/${name}`)!;
  expect(displayOf(signal.unit, signal.written, metric).symbol).toBe(told);
});
