/** Complex numbers, as small objects that nothing changes. */

/** @typedef {{re: number, im: number}} Complex */

/** @param {number} re @param {number} [im] @returns {Complex} */
export const complex = (re, im = 0) => ({ re, im });

/** @param {Complex[]} terms */
export const add = (...terms) => {
  let re = 0;
  let im = 0;
  for (const term of terms) {
    re += term.re;
    im += term.im;
  }
  return { re, im };
};

/** @param {Complex} a @param {Complex} b */
export const sub = (a, b) => ({ re: a.re - b.re, im: a.im - b.im });

/** @param {Complex} a @param {Complex} b */
export const mul = (a, b) => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });

/** @param {Complex} a @param {number} factor */
export const scale = (a, factor) => ({ re: a.re * factor, im: a.im * factor });

/** @param {Complex} a @param {Complex} b */
export const div = (a, b) => {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
};

/** @param {Complex} a */
export const abs = (a) => Math.hypot(a.re, a.im);

/** @param {Complex} a */
export const exp = (a) => {
  const size = Math.exp(a.re);
  return { re: size * Math.cos(a.im), im: size * Math.sin(a.im) };
};

/** The root whose real part is not below 0. @param {Complex} a */
export const sqrt = (a) => {
  const re = Math.sqrt((abs(a) + Math.abs(a.re)) / 2);
  const im = re && a.im / (2 * re);
  return a.re >= 0 ? { re, im } : { re: Math.abs(im), im: a.im < 0 ? -re : re };
};
