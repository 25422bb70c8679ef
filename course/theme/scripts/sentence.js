/** The sentence that a slide shows of a paragraph. */

import { make } from "./dom.js";

const CATCHWORD = 24; // letters: a bold catchword with a stop behind it does not count as a sentence
const NOT_WORDS = ".katex, code, .hold";

/** The first sentence of a paragraph, formulas and all. @param {Element} paragraph */
export function firstSentence(paragraph) {
  const walk = document.createTreeWalker(paragraph, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  range.selectNodeContents(paragraph);
  let length = 0;
  while (walk.nextNode()) {
    const text = /** @type {Text} */ (walk.currentNode);
    if (text.parentElement?.closest(NOT_WORDS)) continue;
    for (const { index } of text.data.matchAll(/[.?!](?=["'’)]*(\s|$))/g)) {
      if (length + index > CATCHWORD) {
        range.setEnd(text, index + 1);
        return lineOf(range.cloneContents());
      }
    }
    length += text.data.length;
  }
  return lineOf(range.cloneContents());
}

/** Words as the line of a slide, without ids and what only the page needs. @param {Node} words */
export function lineOf(words) {
  const line = make("p", "stage-say");
  line.append(words);
  for (const hold of line.querySelectorAll(".hold")) hold.remove();
  for (const named of line.querySelectorAll("[id]")) named.removeAttribute("id");
  return line;
}
