/** What an exponential law makes of a carrier: the modified Bessel functions I0 and I1, as averages round a cycle. */

const MOMENTS = 160; // of half a cycle: for a crest up to 1000 slope voltages the average is then exact
const LEAST = 1e-7; // below this crest I1/I0 is half of it
const cosines = Float64Array.from({ length: MOMENTS }, (_, k) => Math.cos((Math.PI * (k + 0.5)) / MOMENTS));

/**
 * ln I0(x) − x, and I1(x)/I0(x).
 *
 * Source: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, NBS AMS 55, 1964, eqs. 9.6.16 and 9.6.19:
 * averages of exp(x cos θ), and of cos θ weighted by it, round a cycle.
 *
 * @param {number} x 0 to 1000
 */
export function besselAverages(x) {
  if (x < LEAST) return { logarithm: -x, ratio: x / 2 };
  let less = 0;
  let weighted = 0;
  for (const cosine of cosines) {
    const below = Math.expm1(x * (cosine - 1));
    less += below;
    weighted += (1 + below) * cosine;
  }
  return { logarithm: Math.log1p(less / MOMENTS), ratio: weighted / (MOMENTS + less) };
}
