/** Parts of the page by selector: they are there, or the page is not the one this was written for. */

import { part, partOf, parts } from "../../theme/scripts/dom.js";

export { part, parts };

/** @param {ParentNode} root @param {string} selector */
export const input = (root, selector) => partOf(root, selector, HTMLInputElement);

/** @param {ParentNode} root @param {string} selector */
export const canvas = (root, selector) => partOf(root, selector, HTMLCanvasElement);

/** @param {ParentNode} root @param {string} selector */
export const select = (root, selector) => partOf(root, selector, HTMLSelectElement);

/** @param {ParentNode} root @param {string} selector */
export const link = (root, selector) => partOf(root, selector, HTMLAnchorElement);

/** Put words in a place, if they are not there already. @param {Element} place @param {string} words */
export function tell(place, words) {
  const text = place.firstChild ?? place.appendChild(new Text());
  if (text.nodeValue !== words) text.nodeValue = words;
}

/** What stands in a place. @param {ParentNode} root @param {string} selector */
export const textOf = (root, selector) => part(root, selector).textContent ?? "";
