/** Moves the pictures of sounds: a line at the moment that is heard, and the pitches of that moment. All of it is in the page. */

import { partOf } from "./dom.js";

const still = matchMedia("(prefers-reduced-motion: reduce)");

for (const picture of document.querySelectorAll(".heard svg")) {
  const figure = picture.closest(".heard");
  if (figure && picture instanceof SVGSVGElement) follow(figure, picture);
}

/**
 * The picture's shades are its data: one column for each moment, one row for each pitch, from the highest down.
 *
 * @param {SVGSVGElement} picture
 * @returns {Promise<ImageData>}
 */
async function shadesOf(picture) {
  const image = new Image();
  image.src = partOf(picture, "image", SVGImageElement).getAttribute("href") ?? "";
  await new Promise((resolve) => image.addEventListener("load", resolve));
  const canvas = document.createElement("canvas");
  canvas.width = image.width;
  canvas.height = image.height;
  const pen = /** @type {CanvasRenderingContext2D} */ (canvas.getContext("2d", { willReadFrequently: true }));
  pen.drawImage(image, 0, 0);
  return pen.getImageData(0, 0, image.width, image.height);
}

/** Let a picture go with its sound. @param {Element} figure @param {SVGSVGElement} picture */
function follow(figure, picture) {
  const audio = partOf(figure, "audio", HTMLAudioElement);
  const now = partOf(picture, ".heard-now", SVGElement);
  const pitches = partOf(picture, ".heard-pitches", SVGElement);
  const held = partOf(figure, ".hold input", HTMLInputElement);
  const [left, right, top, foot, seconds] = ["left", "right", "top", "foot", "seconds"].map((name) => Number(picture.dataset[name]));
  /** @type {ImageData | null} */ let shades = null;
  let drawn = -1; // the column whose pitches are in the picture

  function show() {
    const share = Math.min(audio.currentTime / seconds, 1);
    now.removeAttribute("hidden");
    now.setAttribute("transform", `translate(${left + (right - left) * share} 0)`);
    if (!shades) return;
    const column = Math.min(Math.floor(share * shades.width), shades.width - 1);
    if (column === drawn) return;
    drawn = column;
    pitches.setAttribute("points", pointsOf(shades, column).join(" "));
  }

  /** The pitches of a moment, from the lowest up. @param {ImageData} shades @param {number} column */
  function pointsOf({ data, width, height }, column) {
    return Array.from({ length: height }, (_, row) => {
      const grey = data[4 * ((height - 1 - row) * width + column)];
      return `${(left + ((right - left) * row) / (height - 1)).toFixed(1)},${(foot - ((foot - top) * grey) / 255).toFixed(1)}`;
    });
  }

  function go() {
    if (audio.paused || audio.ended) return;
    if (held.checked === still.matches) show();
    requestAnimationFrame(go);
  }

  audio.addEventListener("play", async () => {
    go();
    if (shades) return;
    shades = await shadesOf(picture);
    show();
  });
  for (const event of ["pause", "seeked", "ended"]) audio.addEventListener(event, show);
}
