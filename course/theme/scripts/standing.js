/** Where a reader stands: the answers that were right and the pages read to their end, kept on this device alone. */

import { button, make, parts } from "./dom.js";
import { remember, remembered } from "./memory.js";

/** @typedef {"right" | "read"} What */

const KEPT = "standing";
const LEAST = 0.15; // of the dial's mark of a unit, as soon as it is begun
const ROOT = new URL(".", /** @type {HTMLScriptElement} */ (document.currentScript).src).href;

const kept = readKept();

/** @returns {Record<What, Set<string>>} */
function readKept() {
  /** @type {unknown} */ let found = null;
  try {
    found = JSON.parse(remembered(KEPT) ?? "null");
  } catch {
    // not ours: it begins anew
  }
  const listed = (/** @type {What} */ what) => {
    const list = found && typeof found === "object" ? /** @type {Record<string, unknown>} */ (found)[what] : [];
    return new Set(Array.isArray(list) ? list.filter((each) => typeof each === "string") : []);
  };
  return { right: listed("right"), read: listed("read") };
}

/** Whether something was answered right, or read. @param {What} what @param {string} which */
export const isKept = (what, which) => kept[what].has(which);

/** @param {What} what @param {string} which */
export function keep(what, which) {
  if (kept[what].has(which)) return;
  kept[what].add(which);
  keepAll();
}

function keepAll() {
  remember(KEPT, JSON.stringify({ right: [...kept.right], read: [...kept.read] }));
  showStanding();
}

/** The page of an address, below the site's own: "unit03_tuned_circuit/index.html". @param {string} address */
const pageOf = (address) => address.replace(/[?#].*/, "").replace(/\/$/, "/index.html").replace(ROOT, "");

/** What there is in a unit, and what of it is done. @param {string} folder */
function standingIn(folder) {
  const inUnit = (/** @type {string} */ name) => name.startsWith(`${folder}/`);
  const pages = Object.keys(PAGES).filter(inUnit);
  const fields = pages.reduce((sum, page) => sum + PAGES[page], 0);
  const read = pages.filter((page) => kept.read.has(page)).length;
  const right = Math.min([...kept.right].filter(inUnit).length, fields);
  return { pages: pages.length, fields, read, right };
}

/** @param {ReturnType<typeof standingIn>} standing */
const inWords = ({ pages, fields, read, right }) =>
  read + right ? `${read} of ${pages} pages read${fields ? `, ${right} of ${fields} answers right` : ""}` : "";

/** On the dial of every page, and in the list of units. */
export function showStanding() {
  for (const link of /** @type {HTMLAnchorElement[]} */ (parts(document, ".dial a, .home .units a"))) {
    const place = /** @type {HTMLElement} */ (link.closest("li"));
    const standing = standingIn(pageOf(link.href).split("/")[0]);
    const words = inWords(standing);
    const inDial = link.closest(".dial") !== null;
    const note = place.querySelector(".how-far") ?? make("span", inDial ? "how-far unseen" : "how-far");
    if (!note.isConnected) (inDial ? link : place).insertBefore(note, inDial ? null : link.nextSibling);
    note.textContent = words && `${inDial ? ": " : " "}${words}`;
    const done = standing.read + standing.right;
    place.style.setProperty("--done", String(done && LEAST + (1 - LEAST) * (done / (standing.pages + standing.fields))));
  }
  for (const line of parts(document, ".how-far-all")) line.hidden = kept.right.size + kept.read.size === 0;
}

/** Show it, and note that a page is read when its end comes into view. */
export function followReading() {
  const units = document.querySelector(".home .units");
  if (units) {
    const all = make("p", "how-far-all", "What you have read and answered is kept on this device alone. ");
    all.append(button("forget", "Forget it all", forget));
    units.after(all);
  }
  showStanding();
  const page = pageOf(location.href);
  const end = document.querySelector(".onward");
  if (!(page in PAGES) || !end) return;
  const watch = new IntersectionObserver(([seen]) => {
    if (!seen.isIntersecting) return;
    watch.disconnect();
    keep("read", page);
  });
  watch.observe(end);
}

function forget() {
  kept.right.clear();
  kept.read.clear();
  keepAll();
}
