/** The page's palette as a canvas needs it, and a word when the reader changes the light. */

const NAMES = /** @type {const} */ (["slip", "edge", "ink", "soft", "sea", "brass", "rust", "kelp", "plum", "faint"]);

/** @typedef {Record<typeof NAMES[number], string>} Colours */

/** @returns {Colours} */
export function palette() {
  const style = getComputedStyle(document.documentElement);
  return /** @type {Colours} */ (Object.fromEntries(NAMES.map((name) => [name, style.getPropertyValue(`--${name}`).trim()])));
}

/** @param {() => void} changed */
export function whenLightChanges(changed) {
  new MutationObserver(changed).observe(document.documentElement, { attributeFilter: ["data-light"] });
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", changed);
}
