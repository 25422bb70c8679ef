/** The stage on which a page's slides are shown to a room, turned by keys, a clicker, buttons or a swipe. */

import { button, make, part } from "./dom.js";
import { PIECES } from "./slides.js";
import { createSpeaker } from "./speaker.js";

/** @typedef {import("./slides.js").Slide} Slide */

const SWIPE = 60; // pixels
const SHUT = "The browser kept the window shut: allow pop-up windows for this page.";

/**
 * @param {Slide[]} slides
 * @param {string} title of the page
 */
export function createStage(slides, title) {
  /** @type {HTMLElement | null} */ let stage = null;
  /** @type {{piece: HTMLElement, home: Comment} | null} */ let borrowed = null; // what is shown, and where it belongs
  /** @type {Element | null} */ let focused = null; // before it began
  let at = 0;
  let began = 0;
  let ours = false; // the full screen, if it was asked for here
  const isOn = () => stage !== null;
  const speaker = createSpeaker({ slides: () => slides, place: () => at, began: () => began, isOn, go, forward, key }, title);

  /** Begin with one slide. @param {number} place */
  function open(place) {
    focused = document.activeElement;
    began = Date.now();
    stage = frame();
    for (const child of document.body.children) if (child instanceof HTMLElement) child.inert = true;
    document.body.append(stage);
    document.documentElement.classList.add("staged");
    go(place);
    stage.focus();
  }

  /** The empty stage. */
  function frame() {
    const made = make("div", "stage");
    made.setAttribute("role", "dialog");
    made.setAttribute("aria-modal", "true");
    made.setAttribute("aria-label", "Presentation");
    made.tabIndex = -1;
    const sheet = make("div", "stage-slide");
    sheet.setAttribute("aria-live", "polite");
    const bar = make("div", "stage-bar");
    bar.append(
      button("stage-back", "Back", () => go(at - 1)),
      make("span", "stage-count"),
      button("stage-next", "Next", forward),
      make("span", "stage-word"),
      button("stage-notes", "Notes", openNotes),
      button("stage-full", "Full screen", fullScreen),
      button("stage-close", "Close", close),
    );
    made.append(sheet, bar);
    onSwipe(made, (back) => (back ? go(at - 1) : forward()));
    return made;
  }

  function close() {
    if (!stage) return;
    putBack();
    stage.remove();
    stage = null;
    for (const child of document.body.children) if (child instanceof HTMLElement) child.inert = false;
    document.documentElement.classList.remove("staged");
    speaker.close();
    leaveFullScreen();
    if (focused instanceof HTMLElement) focused.focus();
  }

  function leaveFullScreen() {
    if (!document.fullscreenElement) return;
    ours = false;
    document.exitFullscreen();
  }

  /** Into full screen or out of it; where the browser refuses, the stage fills the window all the same. */
  function fullScreen() {
    if (document.fullscreenElement) leaveFullScreen();
    else document.documentElement.requestFullscreen?.().then(() => (ours = true), () => {});
  }

  function openNotes() {
    if (!stage) return;
    stage.focus();
    part(stage, ".stage-word").textContent = speaker.open() ? "" : SHUT;
  }

  /** A picture is shown itself, not a copy, so that sounds, motion and knobs go on working; here it goes home again. */
  function putBack() {
    if (!borrowed) return;
    for (const audio of borrowed.piece.querySelectorAll("audio")) audio.pause();
    borrowed.home.replaceWith(borrowed.piece);
    borrowed = null;
  }

  /** @param {HTMLElement} piece */
  function borrow(piece) {
    borrowed = { piece, home: document.createComment("shown on the stage") };
    piece.replaceWith(borrowed.home);
    return piece;
  }

  /** Show a slide, if there is one at that place. @param {number} place */
  function go(place) {
    if (!stage || place < 0 || place >= slides.length) return;
    putBack();
    at = place;
    const slide = slides[at];
    const sheet = part(stage, ".stage-slide");
    sheet.className = `stage-slide${slide.warns ? " stage-warns" : ""}${slide.show ? " stage-drawn" : ""}`;
    sheet.replaceChildren();
    if (slide.kicker) sheet.append(make("p", "stage-kicker", slide.kicker));
    sheet.append(make("h2", "stage-title", slide.title));
    if (slide.say) sheet.append(slide.say.cloneNode(true));
    if (slide.show || slide.spare) {
      const room = make("div", "stage-show");
      if (slide.show) room.append(borrow(slide.show));
      else if (slide.spare) room.append(slide.spare.cloneNode(true));
      sheet.append(room);
    }
    part(stage, ".stage-count").textContent = `${at + 1} / ${slides.length}`;
    enable(".stage-back", at > 0);
    enable(".stage-next", at < slides.length - 1 || slide.answer !== null);
    if (!stage.contains(document.activeElement)) stage.focus();
    speaker.mark();
  }

  /** @param {string} which @param {boolean} can */
  function enable(which, can) {
    if (stage) part(stage, which).toggleAttribute("disabled", !can);
  }

  /** On to the answer of a question, then to the next slide. */
  function forward() {
    if (!stage) return;
    const sheet = part(stage, ".stage-slide");
    const { answer } = slides[at];
    if (answer && !sheet.querySelector(".stage-answer")) {
      sheet.append(answer.cloneNode(true));
      enable(".stage-next", at < slides.length - 1);
    } else {
      go(at + 1);
    }
  }

  /** What each key does; the target may stand in the speaker's window. @param {KeyboardEvent} event */
  function key(event) {
    if (!stage || event.ctrlKey || event.altKey || event.metaKey) return;
    const on = event.target && "closest" in event.target ? /** @type {Element} */ (event.target) : document.body;
    const pressed = event.key;
    const audio = stage.querySelector("audio");
    if (on.closest("input:not([type=checkbox]), select, textarea") && pressed !== "Escape" && !/^Page/.test(pressed)) return;
    if (on.closest("button, audio, input, summary, a") && (pressed === " " || pressed === "Enter")) return;
    if (/^(ArrowRight|ArrowDown|PageDown|Enter| )$/.test(pressed)) forward();
    else if (/^(ArrowLeft|ArrowUp|PageUp|Backspace)$/.test(pressed)) go(at - 1);
    else if (pressed === "Home") go(0);
    else if (pressed === "End") go(slides.length - 1);
    else if (pressed === "Escape") close();
    else if (pressed === "b" || pressed === ".") stage.classList.toggle("stage-dark");
    else if (pressed === "p" && audio) audio.paused ? audio.play() : audio.pause();
    else if (pressed !== "F5") return;
    event.preventDefault();
    event.stopPropagation();
  }

  document.addEventListener("keydown", key, true);
  document.addEventListener("fullscreenchange", () => {
    if (document.fullscreenElement || !ours) return;
    ours = false;
    close();
  });
  return { open, fullScreen };
}

/** Call a function when somebody swipes across an element, but not across its knobs. @param {HTMLElement} element @param {(back: boolean) => void} turn */
function onSwipe(element, turn) {
  /** @type {PointerEvent | null} */ let start = null;
  element.addEventListener("pointerdown", (event) => {
    const worked = /** @type {Element} */ (event.target).closest(`audio, button, input, ${PIECES}`);
    start = worked ? null : event;
  });
  element.addEventListener("pointerup", (event) => {
    const across = start ? event.clientX - start.clientX : 0;
    start = null;
    if (Math.abs(across) > SWIPE) turn(across > 0);
  });
}
