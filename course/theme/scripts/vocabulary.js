/** The switch between British and American words. The page holds both: one shown, one in an attribute. */

import { part, parts } from "./dom.js";
import { remember, remembered } from "./memory.js";

export function switchWords() {
  const button = part(document, "#words");
  const pairs = parts(document, "[data-us], [data-gb]");

  /** @param {boolean} american */
  function show(american) {
    for (const pair of pairs) {
      pair.dataset.gb ??= pair.textContent ?? "";
      pair.dataset.us ??= pair.textContent ?? "";
      pair.textContent = american ? pair.dataset.us : pair.dataset.gb;
    }
    button.setAttribute("aria-pressed", String(american));
    part(button, ".state").textContent = american ? "American" : "British";
    part(button, ".next").textContent = american ? "British" : "American";
  }

  const usual = document.documentElement.dataset.words; // those with which the club's pages begin, if not the British
  const chosen = remembered("words");
  if (usual || chosen === "american") show((chosen || usual) === "american");
  button.addEventListener("click", () => {
    const american = button.getAttribute("aria-pressed") !== "true";
    show(american);
    remember("words", american ? "american" : "british");
  });
}
