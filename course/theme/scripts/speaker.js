/** The speaker's window: every slide with its notes, which one is on, and how long it has been going. */

import { button, copyOf, make } from "./dom.js";

/**
 * @typedef {object} Show what is going on on the stage
 * @property {() => import("./slides.js").Slide[]} slides
 * @property {() => number} place of the slide that is on
 * @property {() => number} began milliseconds
 * @property {() => boolean} isOn
 * @property {(place: number) => void} go
 * @property {() => void} forward
 * @property {(event: KeyboardEvent) => void} key
 */

/** @param {Show} show @param {string} title of the page */
export function createSpeaker(show, title) {
  /** @type {Window | null} */ let opened = null;
  const isOpen = () => opened !== null && !opened.closed;

  /** Open the window; false if the browser kept it shut. */
  function open() {
    opened = window.open("", "course-notes", "width=760,height=860");
    if (!opened) return false;
    const page = opened.document;
    dress(page);
    const bar = make("div", "speaker-bar");
    bar.append(
      make("b", "speaker-clock"),
      button("", "Back", () => show.go(show.place() - 1)),
      button("", "Next", show.forward),
      button("", "Print", () => opened?.print()),
    );
    const list = make("ol", "speaker-slides");
    list.append(...show.slides().map(itemOf));
    const heading = make("h1", "", `${title}: the speaker’s notes`);
    page.body.append(...[bar, heading, list].map((part) => page.adoptNode(part)));
    page.addEventListener("keydown", show.key, true);
    mark();
    tick();
    return true;
  }

  /** @param {import("./slides.js").Slide} slide @param {number} place */
  function itemOf(slide, place) {
    const item = make("li");
    item.append(button("speaker-title", (slide.kicker ? `${slide.kicker}: ` : "") + slide.title, () => show.go(place)));
    if (slide.say) item.append(copyOf(slide.say));
    if (slide.answer) item.append(slide.answer.cloneNode(true));
    for (const note of slide.notes) {
      const box = make("div", "speaker-note");
      box.append(note.cloneNode(true));
      item.append(box);
    }
    return item;
  }

  /** Mark the slide that is on. */
  function mark() {
    if (!opened || opened.closed) return;
    opened.document.querySelectorAll(".speaker-slides > li").forEach((item, place) => {
      if (place === show.place()) {
        item.setAttribute("aria-current", "step");
        item.scrollIntoView({ block: "center" });
      } else {
        item.removeAttribute("aria-current");
      }
    });
  }

  function tick() {
    if (!opened || opened.closed || !show.isOn()) return;
    const clock = new Date();
    const time = `${clock.getHours()}:${String(clock.getMinutes()).padStart(2, "0")}`;
    const minutes = Math.floor((Date.now() - show.began()) / 60000);
    const says = opened.document.querySelector(".speaker-clock");
    if (says) says.textContent = `${time}, ${minutes} min, ${show.place() + 1} / ${show.slides().length}`;
    setTimeout(tick, 1000);
  }

  function close() {
    if (isOpen()) opened?.close();
    opened = null;
  }

  return { open, mark, close };
}

/** Give an empty window the look of this page. @param {Document} page */
function dress(page) {
  const { lang, dataset } = document.documentElement;
  page.title = `Notes: ${document.title}`;
  page.documentElement.lang = lang;
  if (dataset.light) page.documentElement.dataset.light = dataset.light;
  page.head.replaceChildren();
  for (const sheet of document.querySelectorAll("head style, head link[rel=stylesheet]")) {
    const copy = /** @type {Element} */ (page.importNode(sheet, true));
    if (sheet instanceof HTMLLinkElement) copy.setAttribute("href", sheet.href);
    page.head.append(copy);
  }
  page.body.className = "speaker";
  page.body.replaceChildren();
}
