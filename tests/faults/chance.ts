/** Chance that can be had again: a seeded generator of integers (mulberry32, public domain). */
export function seededInteger(seed: number, min: number, max: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    const unit = ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
    return min + Math.floor(unit * (max - min + 1));
  };
}
