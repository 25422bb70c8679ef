/** Shows a page to a room: one heading, one sentence, one picture at a time, with the speaker's notes in a window of their own.
 *  Keys: arrows, Page Up and Page Down (what a clicker sends), space, Home, End; p plays, b darkens, Escape ends. */

import { button, part, parts, textOf } from "./dom.js";
import { PIECES, slideOf, slidesOf } from "./slides.js";
import { createStage } from "./stage.js";

const main = part(document, "#text");
const title = textOf(main.querySelector("h1"));
/** @type {import("./slides.js").Slide[]} */ const slides = [];
const stage = createStage(slides, title);

/** Begin at the slide of a picture, or at the first. @param {HTMLElement | null} [figure] */
function present(figure) {
  if (!slides.length) slides.push(...slidesOf(main, document.getElementById("notes")));
  let place = figure ? slides.findIndex((slide) => slide.show === figure) : 0;
  if (figure && place < 0) place = slides.push(slideOf(figure, title)) - 1;
  stage.open(place);
}

for (const figure of parts(main, `figure[id], ${PIECES}`)) {
  const large = button("large", "Show large", () => present(figure));
  figure.insertBefore(large, figure.querySelector(":scope > .take"));
}
for (const opens of parts(document, ".present")) {
  opens.addEventListener("click", () => {
    present();
    stage.fullScreen();
  });
}
const asked = /^#present(?:=([\w-]+))?$/.exec(location.hash);
if (asked) present(asked[1] ? document.getElementById(asked[1]) : null);
