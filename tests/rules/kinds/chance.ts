/** Seeded chance for tests: the same seed gives the same numbers. */

/** Uniform on [0, 1). Marsaglia, Xorshift RNGs, J. Stat. Softw. 8 (2003), 32 bits, (13, 17, 5). */
export function uniform(seed: number): () => number {
  let x = seed | 0 || 1;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 2 ** 32;
  };
}

/** Standard normal, by Box and Muller, Ann. Math. Stat. 29 (1958) 610-611. */
export function normal(seed: number): () => number {
  const next = uniform(seed);
  for (let i = 0; i < 20; i += 1) next();
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}
