/** Polynomials with real coefficients, from the constant upwards, and their roots. */

import { abs, add, complex, div, mul, sub } from "./complex.js";

/** @typedef {import("./complex.js").Complex} Complex */

const ROUNDS = 60; // of all roots together; a dozen or so are enough
const CLOSE = 1e-9; // a root's last move, beside the root: each is the cube of the one before

/** @param {number[][]} factors */
export const product = (...factors) =>
  factors.reduce((left, right) => {
    const result = new Array(left.length + right.length - 1).fill(0);
    left.forEach((a, i) => right.forEach((b, j) => (result[i + j] += a * b)));
    return result;
  });

/** @param {number[][]} terms */
export const sum = (...terms) => {
  const result = new Array(Math.max(...terms.map((term) => term.length))).fill(0);
  for (const term of terms) term.forEach((a, i) => (result[i] += a));
  return result;
};

/** @param {number[]} polynomial */
export const negative = (polynomial) => polynomial.map((a) => -a);

/**
 * A polynomial and its slope at a place, by Horner's rule.
 *
 * @param {number[]} polynomial
 * @param {Complex} at
 * @returns {[Complex, Complex]}
 */
export function valueAndSlope(polynomial, at) {
  let re = 0;
  let im = 0;
  let slopeRe = 0;
  let slopeIm = 0;
  for (let power = polynomial.length - 1; power >= 0; power--) {
    [slopeRe, slopeIm] = [slopeRe * at.re - slopeIm * at.im + re, slopeRe * at.im + slopeIm * at.re + im];
    [re, im] = [re * at.re - im * at.im + polynomial[power], re * at.im + im * at.re];
  }
  return [complex(re, im), complex(slopeRe, slopeIm)];
}

/** Size of a polynomial where its variable is an imaginary number. @param {number[]} polynomial @param {number} along */
export function sizeAt(polynomial, along) {
  const square = -along * along;
  let even = 0;
  let odd = 0;
  for (let power = polynomial.length - 1; power >= 0; power--) {
    if (power % 2) odd = odd * square + polynomial[power];
    else even = even * square + polynomial[power];
  }
  return Math.hypot(even, odd * along);
}

/**
 * All roots at once, each moved by Newton's step with the others divided out.
 *
 * Source: O. Aberth, Mathematics of Computation 27, 339 (1973), from memory.
 *
 * @param {number[]} polynomial its last coefficient not 0
 * @param {Complex[]} guesses as many as there are roots, no two alike
 * @returns {Complex[]}
 */
export function roots(polynomial, guesses) {
  const found = [...guesses];
  for (let round = 0; round < ROUNDS; round++) {
    let moved = 0;
    for (let k = 0; k < found.length; k++) {
      const [value, slope] = valueAndSlope(polynomial, found[k]);
      if (value.re === 0 && value.im === 0) continue;
      const newton = div(value, slope);
      let others = complex(0);
      for (let j = 0; j < found.length; j++) {
        if (j !== k) others = add(others, div(complex(1), sub(found[k], found[j])));
      }
      const step = div(newton, sub(complex(1), mul(newton, others)));
      found[k] = sub(found[k], step);
      moved = Math.max(moved, abs(step) / abs(found[k]));
    }
    if (moved < CLOSE) break;
  }
  return found;
}

/** @param {number[]} polynomial @param {number} factor every x becomes x times it */
export const stretched = (polynomial, factor) => polynomial.map((a, power) => a * factor ** power);

