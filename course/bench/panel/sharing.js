/** The setting as a link, as a line for a lesson, and in the address bar. */

import { input, link as linkIn, part, tell } from "./page.js";

/** @param {HTMLElement} root @returns {(setting: string) => void} */
export function sharing(root) {
  const link = linkIn(root, ".setting-link");
  const line = input(root, ".setting-line");
  const copied = part(root, ".copied");
  const offer = (/** @type {string} */ button, /** @type {() => string} */ text) =>
    part(root, button).addEventListener("click", async () => {
      const done = await copy(text());
      tell(copied, done ? "Copied." : "This browser lets no page copy: mark the text and copy it by hand.");
    });
  offer(".copy-link", () => link.href);
  offer(".copy-line", () => line.value);
  return (setting) => {
    link.href = `#${setting}`;
    line.value = `{{ bench("${setting}") }}`;
    tell(copied, "");
    inAddressBar(`#${setting}`);
  };
}

/** @param {string} text */
async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

/** @param {string} address */
export function inAddressBar(address) {
  try {
    if (location.hash !== address) history.replaceState(null, "", address);
  } catch {
    // a browser that is asked too often says no
  }
}
