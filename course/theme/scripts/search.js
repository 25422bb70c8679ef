/** Search over all pages: a dialog under `/`, an index that is fetched when it is first asked for, results by section. */

import MiniSearch from "minisearch";

import { button, make, parts } from "./dom.js";

/** @typedef {[address: string, kind: string, page: number, title: string, names: string, says: string, formula: number, steps: string]} Row */
/** @typedef {{words: string, pages: string[], sections: Row[]}} Index as press/publishing/search.py writes it */

const HERE = /** @type {HTMLScriptElement} */ (document.currentScript).src;
const MOST = 20; // results that are shown
const KINDS = { section: "", exercise: "Exercise", word: "Glossary" };
const FIELDS = ["title", "names", "says", "words"];
const OPTIONS = {
  prefix: (/** @type {string} */ term) => term.length > 2,
  fuzzy: (/** @type {string} */ term) => (term.length > 4 ? 0.2 : false),
  boost: { title: 4, names: 3, says: 1.5 },
  boostDocument: (/** @type {string} */ _, /** @type {string} */ __, /** @type {Record<string, unknown> | undefined} */ stored) =>
    stored?.address && String(stored.address).includes("instructor") ? 0.6 : 1,
};

/** @type {Promise<(words: string) => Found[]> | null} */ let asked = null;
/** @typedef {{address: string, kind: keyof typeof KINDS, page: string, title: string, says: string, formula: number}} Found */

/** A script beside this one. @param {string} name */
function bring(name) {
  return new Promise((resolve, reject) => {
    const script = make("script");
    script.src = new URL(name, HERE).href;
    script.onload = resolve;
    script.onerror = () => reject(new Error(`${name} is not beside the pages`));
    document.head.append(script);
  });
}

/** What answers words with sections, the best first. @returns {Promise<(words: string) => Found[]>} */
async function searcher() {
  await bring("search-index.js");
  const { words, pages, sections } = /** @type {Index} */ (/** @type {any} */ (globalThis).COURSE_SEARCH);
  const list = words.split(" ");
  const spelt = (/** @type {string} */ steps) => {
    let at = 0;
    return steps && steps.split(" ").map((step) => list[(at += parseInt(step, 36))]).join(" ");
  };
  const search = new MiniSearch({ fields: FIELDS, storeFields: ["address", "kind", "page", "title", "says", "formula"] });
  search.addAll(
    sections.map(([address, kind, page, title, names, says, formula, steps], id) => (
      { id, address, kind, page: pages[page], title, names, says, formula, words: spelt(steps) }
    )),
  );
  return (asks) => {
    const all = search.search(asks, { ...OPTIONS, combineWith: "AND" });
    const some = all.length ? all : search.search(asks, OPTIONS);
    return /** @type {Found[]} */ (/** @type {unknown} */ (some.slice(0, MOST)));
  };
}

/** @param {Found} found */
function itemOf({ address, kind, page, title, says, formula }) {
  const link = make("a");
  link.href = new URL(address, HERE).href;
  link.append(make("b", "", title || page));
  const where = [KINDS[kind], kind === "word" || page === title ? "" : page, formula ? "with its formula" : ""].filter(Boolean).join(" · ");
  if (where) link.append(" ", make("small", "", where));
  link.append(make("span", "found-says", says));
  const item = make("li");
  item.append(link);
  return item;
}

function createDialog() {
  const dialog = make("dialog", "search");
  const field = make("input");
  const label = make("label", "", "Search all pages");
  const status = make("p", "search-status");
  const list = make("ul", "found");
  const head = make("p", "search-field");
  Object.assign(field, { type: "search", id: "search-words", autocomplete: "off", enterKeyHint: "search" });
  field.setAttribute("aria-describedby", "search-status");
  Object.assign(status, { id: "search-status", role: "status" });
  label.htmlFor = field.id;
  list.setAttribute("aria-label", "Found");
  head.append(field, button("search-close", "Close", () => dialog.close()));
  dialog.setAttribute("aria-label", "Search");
  dialog.append(label, head, status, list);
  document.body.append(dialog);

  async function answer() {
    const words = field.value.trim();
    try {
      asked ??= searcher();
      const found = (await asked)(words);
      if (words !== field.value.trim()) return;
      list.replaceChildren(...found.map(itemOf));
      const counted = found.length === MOST ? `The ${MOST} nearest` : `${found.length} found`;
      status.textContent = !words ? "A word, a name, a function of an exercise." : found.length ? `${counted}.` : "Nothing found. Try fewer words.";
    } catch (fault) {
      asked = null;
      status.textContent = `No search here: ${fault instanceof Error ? fault.message : fault}.`;
    }
  }

  /** Up and down go from the field through what was found, and back. @param {KeyboardEvent} event */
  function step(event) {
    const way = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (!way) return;
    event.preventDefault();
    const places = [field, ...parts(list, "a")];
    const next = places.indexOf(/** @type {HTMLElement} */ (document.activeElement)) + way;
    places[Math.min(Math.max(next, 0), places.length - 1)].focus();
  }

  field.addEventListener("input", answer);
  field.addEventListener("keydown", (event) => {
    if (event.key === "Enter") list.querySelector("a")?.click();
  });
  dialog.addEventListener("keydown", step);
  dialog.addEventListener("click", (event) => {
    if (event.target === dialog || (event.target instanceof Element && event.target.closest("a"))) dialog.close();
  });
  return () => {
    if (dialog.open) return;
    dialog.showModal();
    field.select();
    answer();
  };
}

/** @type {(() => void) | null} */ let open = null;
const openSearch = () => (open ??= createDialog())();

for (const opens of parts(document, ".search-opens")) opens.addEventListener("click", openSearch);
addEventListener("keydown", (event) => {
  const written = event.target instanceof Element && event.target.closest("input:not([type=range], [type=checkbox], [type=radio]), textarea, select");
  if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey || written || document.querySelector(".stage")) return;
  event.preventDefault();
  openSearch();
});
