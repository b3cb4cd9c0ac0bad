/**
 * A difference of temperatures in words: 0.6 K are "0.6 °C hotter than the air", never "0.6 °C", which would
 * be read as how warm something is.
 */
import type { SignalView } from '../../agent/web/contract.ts';
import { quantity } from './quantity.ts';
import { say } from './say.ts';

/** By what its signal is called, or begins with: said of what lies above nothing, and of what lies below. */
const phrases = {
  'self-heat-excess': ['hotterThanAir', 'coolerThanAir'],
  'bin-excess': ['hotterThanAir', 'coolerThanAir'],
  'ignition-margin': ['belowIgnition', 'pastIgnition'],
  'dew-margin': ['aboveDew', 'belowDew'],
  'move-margin': ['aboveDew', 'belowDew'],
  'pipe-margin': ['aboveDew', 'belowDew'],
} as const;

/** Signals that end at a value which stands for more, s: rules/derive/drum-time-to-floor.ts. */
const caps: Readonly<Record<string, number>> = { 'drum-time-left': 7 * 86_400 };

type Phrase = (typeof phrases)[keyof typeof phrases][number];

function phraseOf(name: string, value: number): Phrase | null {
  for (const [start, [above, below]] of Object.entries(phrases))
    if (name === start || name.startsWith(`${start}-`)) return value < 0 ? below : above;
  return null;
}

/** Of a surface less the air beside it, K. */
export const excessText = (valueK: number, resolution: number | null): string =>
  say(valueK < 0 ? 'coolerThanAir' : 'hotterThanAir', {
    value: quantity(Math.abs(valueK), 'K', resolution),
  });

/** A signal's value as people read it: number and unit; what it is the difference of, where it is one. */
export function valueText(
  value: number,
  signal: Pick<SignalView, 'signal' | 'unit' | 'written_unit' | 'resolution'>,
): string {
  const { unit, resolution } = signal;
  const capS = caps[signal.signal];
  if (unit === 's' && capS !== undefined && value >= capS)
    return say('orMore', { value: quantity(capS, unit, resolution) });
  if (unit !== 'K') return quantity(value, signal, resolution);
  const phrase = phraseOf(signal.signal, value);
  return phrase === null
    ? say('asDifference', { value: quantity(value, signal, resolution) })
    : say(phrase, { value: quantity(Math.abs(value), signal, resolution) });
}
