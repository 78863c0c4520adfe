/** Seeded random numbers, the same on every machine. */

/** Uniform in [0, 1): xorshift128 (G. Marsaglia 2003), seeded by SplitMix32. */
export function uniformSource(seed: number): () => number {
  let mix = seed >>> 0;
  const word = () => {
    mix = (mix + 0x9e3779b9) >>> 0;
    let z = mix;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return (z ^ (z >>> 15)) >>> 0;
  };
  let x = word();
  let y = word();
  let z = word();
  let w = word() | 1;
  return () => {
    const t = x ^ (x << 11);
    x = y;
    y = z;
    z = w;
    w = (w ^ (w >>> 19) ^ t ^ (t >>> 8)) >>> 0;
    return w / 4294967296;
  };
}

/** Standard normal numbers (G. E. P. Box, M. E. Muller 1958). */
export function normalSource(uniform: () => number): () => number {
  let spare = Number.NaN;
  return () => {
    if (!Number.isNaN(spare)) {
      const value = spare;
      spare = Number.NaN;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
