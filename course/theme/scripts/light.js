/** The switch between light and dark pages. Until it is used, the page follows the reader's system. */

import { part } from "./dom.js";
import { remember } from "./memory.js";

export function switchLight() {
  const button = part(document, "#light");
  const night = matchMedia("(prefers-color-scheme: dark)");
  const page = document.documentElement.dataset;
  const isDark = () => (page.light ? page.light === "dark" : night.matches);
  const name = () => {
    part(button, ".next").textContent = isDark() ? "light" : "dark";
  };

  name();
  night.addEventListener("change", name);
  button.addEventListener("click", () => {
    page.light = isDark() ? "light" : "dark";
    remember("light", page.light);
    name();
  });
}
