/** A canvas that is as sharp as the screen and as wide as its place, and the few strokes that the pictures are made of. */

/** @typedef {CanvasRenderingContext2D} Pen */
/** @typedef {() => {pen: Pen, width: number, height: number}} Sheet clears the canvas and hands out the pen, in CSS pixels */

const LETTERS = 14; // pixels

/**
 * @param {HTMLCanvasElement} canvas
 * @param {() => void} resized
 * @returns {Sheet}
 */
export function sharp(canvas, resized) {
  const pen = /** @type {Pen} */ (canvas.getContext("2d"));
  const family = getComputedStyle(canvas).fontFamily;
  let width = 0;
  let height = 0;
  let dots = 1;
  const measure = () => {
    width = canvas.clientWidth;
    height = canvas.clientHeight;
    dots = Math.min(devicePixelRatio || 1, 2);
    canvas.width = Math.round(width * dots);
    canvas.height = Math.round(height * dots);
    pen.scale(dots, dots);
    pen.font = `${LETTERS}px ${family}`;
  };
  new ResizeObserver(() => {
    measure();
    resized();
  }).observe(canvas);
  measure();
  return () => {
    pen.clearRect(0, 0, width, height);
    return { pen, width, height };
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
