/** Takes a picture away as PNG: the drawing in the page in its light colours, with its caption, licence and settings inside. */

import { copyOf, part, partOf, parts } from "./dom.js";
import { withTexts } from "./png.js";

const WIDTH = 1600;
const AGAIN = 120; // milliseconds between two drawings
const LETTERS = new URL("type/letters.js", /** @type {HTMLScriptElement} */ (document.currentScript).src).href;

for (const button of parts(document, ".take-png")) {
  const figure = /** @type {HTMLElement} */ (button.closest("figure"));
  const file = partOf(figure, '.take a[href$=".svg"]', HTMLAnchorElement).getAttribute("href") ?? "";
  button.hidden = false;
  button.addEventListener("click", async () => {
    const png = await pngOf(standaloneSvg(partOf(figure, "svg", SVGSVGElement), await letters()));
    save(withTexts(png, labelOf(figure)), file.replace(/^.*\//, "").replace(/\.svg$/, ".png"));
  });
}

/** The page's letters as a style, brought by a script: a page from the disk may not read a font file. @returns {Promise<string>} */
async function letters() {
  if (!window.courseLetters) {
    await new Promise((resolve) => {
      const script = document.createElement("script");
      script.src = LETTERS;
      script.onload = script.onerror = resolve;
      document.head.append(script);
    });
  }
  return window.courseLetters ?? "";
}

/** The light colours by name: the first rule of the page's own style sheet names them. @returns {Record<string, string>} */
function lightColours() {
  const rule = document.styleSheets[0].cssRules[0].cssText;
  const named = [...rule.matchAll(/--([\w-]+):\s*([^;}]+)/g)].map(([, name, colour]) => [name, colour.trim()]);
  return { ...Object.fromEntries(named), slip: "#ffffff", paper: "#ffffff" };
}

/** @param {SVGSVGElement} svg @param {string} letters */
function standaloneSvg(svg, letters) {
  const colours = lightColours();
  const copy = /** @type {SVGSVGElement} */ (svg.cloneNode(true));
  const { width, height } = svg.viewBox.baseVal;
  for (const playing of copy.querySelectorAll(".heard-now, .heard-pitches")) playing.remove();
  copy.setAttribute("width", String(WIDTH));
  copy.setAttribute("height", String(Math.round((WIDTH * height) / width)));
  const style = document.createElementNS("http://www.w3.org/2000/svg", "style");
  style.textContent = `${letters}svg{color:${colours.ink};font-family:'Alegreya Sans',sans-serif}`;
  copy.prepend(style);
  return new XMLSerializer().serializeToString(copy).replace(/var\(--([\w-]+)\)/g, (_, name) => colours[name]);
}

/** What goes into the file with the picture. @param {HTMLElement} figure @returns {Record<string, string>} */
function labelOf(figure) {
  const said = (/** @type {string} */ where) => parts(figure, where).map((each) => each.innerText.trim()).join("; ");
  const caption = copyOf(part(figure, "figcaption"));
  for (const other of caption.querySelectorAll(".hold, .katex-html")) other.remove();
  return {
    Title: part(figure, ".take").dataset.title ?? "",
    Description: caption.textContent?.trim() ?? "",
    Author: "Crystal to Reaction",
    Copyright: said(".take-licence"),
    Source: said(".take-command"),
    Comment: `Settings: ${said(".take li code") || "nothing to set"}`,
  };
}

/** A browser may draw before it has read the letters: it draws again until twice running the same came out. @param {string} svg */
async function pngOf(svg) {
  const address = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  for (let last = "", tries = 1; ; tries++) {
    const canvas = await drawnOn(address);
    const now = canvas.toDataURL();
    if (tries >= 3 && (now === last || tries >= 12)) return new Uint8Array(await (await blobOf(canvas)).arrayBuffer());
    last = now;
    await new Promise((resolve) => setTimeout(resolve, AGAIN));
  }
}

/** @param {string} address */
async function drawnOn(address) {
  const image = new Image();
  image.src = address;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = WIDTH;
  canvas.height = image.height;
  const pen = /** @type {CanvasRenderingContext2D} */ (canvas.getContext("2d"));
  pen.fillStyle = "#ffffff";
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(image, 0, 0);
  return canvas;
}

/** @param {HTMLCanvasElement} canvas @returns {Promise<Blob>} */
const blobOf = (canvas) =>
  new Promise((resolve, reject) => canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("The browser made no PNG.")))));

/** @param {Blob} blob @param {string} name */
function save(blob, name) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
