/** A canvas that is as sharp as the screen and as wide as its place, and the few strokes that the pictures are made of. */

/** @typedef {CanvasRenderingContext2D} Pen */
/**
 * What is drawn on, in CSS pixels. `behind` wipes it and puts down what stands still, which is drawn again only under another key.
 *
 * @typedef {() => {pen: Pen, width: number, height: number, behind: (key: string, draw: (pen: Pen) => void) => void}} Sheet
 */

const LETTERS = 14; // pixels

/**
 * @param {HTMLCanvasElement} canvas
 * @param {() => void} changed when all has to be drawn again: it has another size, or letters have come
 * @returns {Sheet}
 */
export function sharp(canvas, changed) {
  const pens = [canvas, document.createElement("canvas")].map((each) => /** @type {Pen} */ (each.getContext("2d")));
  const [pen, still] = pens;
  let width = 0;
  let height = 0;
  let drawn = "";
  const measure = () => {
    width = canvas.clientWidth;
    height = canvas.clientHeight;
    drawn = "";
    const dots = Math.min(devicePixelRatio || 1, 2);
    const { fontFamily } = getComputedStyle(canvas);
    for (const each of pens) {
      each.canvas.width = Math.round(width * dots);
      each.canvas.height = Math.round(height * dots);
      each.scale(dots, dots);
      each.font = `${LETTERS}px ${fontFamily}`;
    }
  };
  const again = () => {
    width = 0;
    changed();
  };
  new ResizeObserver(() => canvas.clientWidth === width || again()).observe(canvas);
  document.fonts.addEventListener("loadingdone", again);
  const behind = (/** @type {string} */ key, /** @type {(pen: Pen) => void} */ draw) => {
    if (drawn !== key) {
      drawn = key;
      still.clearRect(0, 0, width, height);
      draw(still);
    }
    pen.clearRect(0, 0, width, height);
    if (width) pen.drawImage(still.canvas, 0, 0, width, height);
  };
  return () => {
    if (!width) measure();
    return { pen, width, height, behind };
  };
}

/**
 * @param {Pen} pen
 * @param {[number, number]} from
 * @param {[number, number]} to
 * @param {string} colour
 * @param {number} [thick]
 * @param {number[]} [dash]
 */
export function line(pen, from, to, colour, thick = 1, dash = []) {
  pen.strokeStyle = colour;
  pen.lineWidth = thick;
  pen.setLineDash(dash);
  pen.beginPath();
  pen.moveTo(...from);
  pen.lineTo(...to);
  pen.stroke();
}

/**
 * @param {Pen} pen
 * @param {string} text
 * @param {[number, number]} at
 * @param {string} colour
 * @param {CanvasTextAlign} [align]
 */
export function word(pen, text, at, colour, align = "left") {
  pen.fillStyle = colour;
  pen.textAlign = align;
  pen.fillText(text, ...at);
}

/**
 * A see-through patch.
 *
 * @param {Pen} pen
 * @param {[number, number, number, number]} place left, top, right, foot
 * @param {string} colour
 * @param {number} strength 0 to 1
 */
export function tint(pen, [left, top, right, foot], colour, strength) {
  pen.globalAlpha = strength;
  pen.fillStyle = colour;
  pen.fillRect(left, top, right - left, foot - top);
  pen.globalAlpha = 1;
}
