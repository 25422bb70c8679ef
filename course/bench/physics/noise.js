/** Noise of crest 1 for each of its two parts; always the same. */

export const NOISE_BITS = 15;
export const NOISES = 1 << NOISE_BITS;

export function noises() {
  const table = new Float32Array(NOISES);
  let seed = 1;
  const chance = () => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return (seed + 0.5) / 2 ** 32;
  };
  for (let k = 0; k < NOISES; k += 2) {
    const size = Math.sqrt(-2 * Math.log(chance()));
    const angle = 2 * Math.PI * chance();
    table[k] = size * Math.cos(angle);
    table[k + 1] = size * Math.sin(angle);
  }
  return table;
}
