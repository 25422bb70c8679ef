/** What there is to show of a page: one heading, one sentence, one picture at a time. */

import { copyOf, make, part, parts, textOf } from "./dom.js";
import { firstSentence, lineOf } from "./sentence.js";

/**
 * @typedef {object} Slide
 * @property {string} kicker small line over the title
 * @property {string} title
 * @property {string} chapter kicker of further slides of the same section
 * @property {string} section title of those
 * @property {HTMLElement | null} say its sentence
 * @property {HTMLElement | null} show a part of the page, shown itself
 * @property {HTMLElement | null} spare a copy, shown if there is nothing else
 * @property {HTMLElement[]} notes for the speaker
 * @property {HTMLElement | null} answer kept back until asked for
 * @property {boolean} full takes no more
 * @property {boolean} warns
 * @property {boolean} open its sentence is a caption's: one of the text is better
 * @property {boolean} marked its sentence is the one that the author marked
 */

/** Shown whole though it is no figure: a bench, with its knobs. */
export const PIECES = "[data-present], .turning:not(.opening-bench)";
const WHOLE = `figure, .block, .exercise, .wide, ${PIECES}`; // what stands in one of these is shown with it
const SHOWN = `h2, h3, p, figure, .formula, .wide, .block, .exercise, ${PIECES}`;
const HEAD = ".unit-line, .question-line";

/** @param {Partial<Slide>} has @returns {Slide} */
const slide = (has) => ({
  kicker: "", title: "", chapter: has.kicker ?? "", section: has.title ?? "", say: null, show: null, spare: null, notes: [],
  answer: null, full: false, warns: false, open: false, marked: false, ...has,
});

/** A slide for a picture that none of the page's own shows. @param {HTMLElement} figure @param {string} title */
export const slideOf = (figure, title) => slide({ title, show: figure, say: firstSentence(figure.querySelector("figcaption") ?? figure) });

/** @param {HTMLElement} main the page's text @param {HTMLElement | null} notes for its sections @returns {Slide[]} */
export function slidesOf(main, notes) {
  const title = textOf(main.querySelector("h1"));
  const question = main.querySelector(".question-line");
  const slides = [slide({ kicker: textOf(main.querySelector(".unit-line")), title, say: question && lineOf(copyOf(question)), full: true })];
  const last = () => slides[slides.length - 1];
  let chapter = "";
  for (const each of parts(main, SHOWN)) {
    if (each.parentElement?.closest(WHOLE) || each.matches(HEAD)) continue;
    if (each.matches("h2, h3")) {
      const kicker = each.matches("h3") ? chapter : title;
      if (each.matches("h2")) chapter = each.textContent ?? "";
      slides.push(slide({ kicker, title: each.textContent ?? "", notes: notesTo(each, notes) }));
    } else if (each.matches(`figure, ${PIECES}`)) {
      const further = last().full || last().show !== null;
      if (further) slides.push(slide({ kicker: last().chapter, title: last().section }));
      takePicture(last(), each, further);
    } else if (each.matches(".danger, .caution, .question, .exercise")) {
      slides.push(slide({ ...blockOf(each), chapter: last().chapter, section: last().section, full: true }));
    } else if (each.matches(".instructor")) {
      last().notes.push(copyOf(each));
    } else if (each.matches(".formula, .wide")) {
      if (!last().full) last().spare ??= copyOf(each);
    } else if (each.matches("p") && textOf(each)) {
      takeSentence(last(), each);
    }
  }
  return slides;
}

/** The instructor's notes to a section, by the number in its heading. @param {HTMLElement} heading @param {HTMLElement | null} notes */
function notesTo(heading, notes) {
  const number = /^(\d+)\./.exec(textOf(heading));
  return number && notes ? parts(notes, `[data-section="${number[1]}"]`).map(copyOf) : [];
}

/** @param {Slide} slide @param {HTMLElement} picture @param {boolean} further not the first of its section */
function takePicture(slide, picture, further) {
  slide.show = picture;
  if (!slide.say && picture.matches("figure")) {
    slide.say = firstSentence(part(picture, "figcaption"));
    slide.open = !further;
  }
  if (picture.dataset.present) slide.title = picture.dataset.present;
}

/** The marked sentence of a section, else the first of its first paragraph. @param {Slide} slide @param {HTMLElement} paragraph */
function takeSentence(slide, paragraph) {
  if (slide.full) return;
  const marked = paragraph.querySelector(".say");
  if (marked && !slide.marked) {
    Object.assign(slide, { say: lineOf(copyOf(marked)), marked: true, open: false });
  } else if ((!slide.say || slide.open) && !paragraph.querySelector(".formula")) {
    Object.assign(slide, { say: firstSentence(paragraph), open: false });
  }
}

/** The slide of a caution, a question or an exercise. @param {HTMLElement} block @returns {Partial<Slide>} */
function blockOf(block) {
  if (block.matches(".exercise")) {
    const command = parts(block, "p code").find((code) => /^checker try/.test(code.textContent ?? ""));
    return { kicker: "Exercise", title: textOf(block.querySelector(".exercise-title")), spare: command ? copyOf(command) : null };
  }
  const kicker = textOf(block.querySelector(".block-word"));
  const title = textOf(block.querySelector(".block-title")).replace(kicker, "").trim();
  const text = make("div", "stage-answer");
  text.append(...Array.from(block.children).slice(1).map(copyOf));
  const about = { kicker, title, warns: block.matches(".danger, .caution") };
  if (block.matches(".question")) return { ...about, answer: text };
  const paragraph = block.querySelector("p:not(.block-title)");
  return paragraph ? { ...about, say: firstSentence(paragraph) } : { ...about, spare: text };
}
