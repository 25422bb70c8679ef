/** What a reader has chosen, kept by the browser; some browsers keep nothing for files on disk. */

/** @param {string} name @returns {string | null} */
export function remembered(name) {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

/** @param {string} name @param {string} value */
export function remember(name, value) {
  try {
    localStorage.setItem(name, value);
  } catch {
    // then it holds for this page only
  }
}
