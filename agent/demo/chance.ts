/**
 * Chance without a memory: the same seed, channel and moment always give the same number, in
 * whatever order and however often they are asked for.
 */

/** 0 to 2^32 - 1; a 32-bit mix (two rounds of multiply and shift) of seed, channel and step. */
function mixed(seed: number, channel: number, step: number): number {
  let bits = (seed ^ Math.imul(channel + 1, 0x9e3779b1) ^ Math.imul(step | 0, 0x85ebca6b)) >>> 0;
  bits = Math.imul(bits ^ (bits >>> 16), 0x21f0aaad) >>> 0;
  bits = Math.imul(bits ^ (bits >>> 15), 0x735a2d97) >>> 0;
  return (bits ^ (bits >>> 15)) >>> 0;
}

/** In [0, 1). */
export const chanceAt = (seed: number, channel: number, step: number): number =>
  mixed(seed, channel, step) / 4_294_967_296;

/** Nearly normal, mean 0, standard deviation 1, never beyond 3.5: four of the above, scaled. */
export function noiseAt(seed: number, channel: number, step: number): number {
  let sum = 0;
  for (let i = 0; i < 4; i += 1) sum += chanceAt(seed, channel * 4 + i, step);
  return (sum - 2) * Math.sqrt(3);
}

/** Smooth, within -1 to 1, wandering from one value to the next once in `periodS`. */
export function driftAt(seed: number, channel: number, atS: number, periodS: number): number {
  const step = Math.floor(atS / periodS);
  const share = (1 - Math.cos(Math.PI * (atS / periodS - step))) / 2;
  const from = chanceAt(seed, channel, step) * 2 - 1;
  const to = chanceAt(seed, channel, step + 1) * 2 - 1;
  return from + (to - from) * share;
}
