/** Parts of a page: they are there, or the page is not the one that its script was written for. */

/**
 * @template {Element} T
 * @param {ParentNode} root
 * @param {string} selector
 * @param {new () => T} kind
 * @returns {T}
 */
export function partOf(root, selector, kind) {
  const found = root.querySelector(selector);
  if (!(found instanceof kind)) throw new Error(`This page has no ${selector}.`);
  return found;
}

/** @param {ParentNode} root @param {string} selector */
export const part = (root, selector) => partOf(root, selector, HTMLElement);

/** All of a kind. @param {ParentNode} root @param {string} selector @returns {HTMLElement[]} */
export const parts = (root, selector) => [...root.querySelectorAll(selector)].map((found) => /** @type {HTMLElement} */ (found));

/** The words of an element, or none if there is no element. @param {Element | null} [element] */
export const textOf = (element) => element?.textContent?.trim() ?? "";

/**
 * A new element.
 *
 * @template {keyof HTMLElementTagNameMap} T
 * @param {T} tag
 * @param {string} [name] class
 * @param {string} [text]
 * @returns {HTMLElementTagNameMap[T]}
 */
export function make(tag, name = "", text = "") {
  const element = document.createElement(tag);
  if (name) element.className = name;
  if (text) element.textContent = text;
  return element;
}

/** A new button. @param {string} name class @param {string} text @param {() => void} does */
export function button(name, text, does) {
  const element = make("button", name, text);
  element.type = "button";
  element.addEventListener("click", does);
  return element;
}

/** A copy of an element without ids, which are the page's. @param {Element} element */
export function copyOf(element) {
  const copy = /** @type {HTMLElement} */ (element.cloneNode(true));
  for (const part of [copy, ...copy.querySelectorAll("[id]")]) part.removeAttribute("id");
  return copy;
}
