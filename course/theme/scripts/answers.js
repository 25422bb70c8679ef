/** Answers in numbers: each field is told at once whether its number is right. What is wanted is in the page; nothing is sent. */

import { part, partOf, parts } from "./dom.js";
import { followReading, isKept, keep } from "./standing.js";
import { verdictOf } from "./verdict.js";

/** @typedef {{input: HTMLInputElement, said: HTMLOutputElement, name: string}} Field `name`: under which a right answer is kept */

const MARKS = { right: "✓ ", off: "✗ ", unread: "" };

/** Gives an element an id; returns it. @param {HTMLElement} element @param {string} id */
const named = (element, id) => (element.id = id);

followReading();
parts(document, ".typed").forEach(setUp);

/** @param {HTMLElement} question @param {number} number of the question in its page */
function setUp(question, number) {
  const { relative, absolute, asks } = question.dataset;
  const how = named(part(question, ".typed-how"), `typed-${number}-how`);
  const slips = parts(question, ".typed-slips li");
  const forms = /** @type {HTMLFormElement[]} */ (parts(question, "form"));

  /** @param {Field} field */
  function check({ input, said, name }) {
    if (!input.value.trim()) return;
    const { unit = "", wanted = "" } = input.dataset;
    const its = (input.dataset.slips ?? "").split("|");
    const verdict = verdictOf(input.value, { unit, wanted, relative: Number(relative), absolute: Number(absolute), slips: its });
    said.className = verdict.kind;
    said.textContent = MARKS[verdict.kind] + verdict.says;
    if (verdict.slip >= 0) said.append(" ", ...slips[verdict.slip].cloneNode(true).childNodes);
    if (verdict.kind === "right") keep("right", name);
  }

  forms.forEach((form, place) => {
    const given = named(part(form, ".typed-given"), `typed-${number}-${place}`);
    const fields = parts(form, ".typed-part").map((line, at) => fieldOf(line, `${given}-${at}`, given, how, `${asks}/${place + 1}/${at + 1}`));
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      fields.forEach(check);
    });
    part(form, ".typed-next").addEventListener("click", () => {
      const next = forms[(place + 1) % forms.length];
      form.hidden = true;
      next.hidden = false;
      part(next, "input").focus();
    });
  });
}

/**
 * A field that tells a listener what the eye sees: what is given, what is asked and in what unit, how near, and the verdict.
 *
 * @param {HTMLElement} line
 * @param {string} id
 * @param {string} given id of what is given
 * @param {string} how id of how near it has to come
 * @param {string} name
 * @returns {Field}
 */
function fieldOf(line, id, given, how, name) {
  const label = partOf(line, "label", HTMLLabelElement);
  const input = partOf(line, "input", HTMLInputElement);
  const said = partOf(line, "output", HTMLOutputElement);
  label.htmlFor = named(input, id);
  input.setAttribute("aria-labelledby", `${given} ${named(label, `${id}-asked`)}`);
  input.setAttribute("aria-describedby", `${how} ${named(said, `${id}-said`)}`);
  Object.assign(input, { autocomplete: "off", autocapitalize: "off", spellcheck: false });
  if (isKept("right", name)) said.textContent = "✓ Answered right before.";
  return { input, said, name };
}
