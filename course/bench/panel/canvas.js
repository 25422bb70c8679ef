/** A canvas that is as sharp as the screen and as wide as its place. */

/**
 * @param {HTMLCanvasElement} canvas
 * @param {() => void} resized
 * @returns {() => {pen: CanvasRenderingContext2D, width: number, height: number}} clears it and hands out the pen, in CSS pixels
 */
export function sharp(canvas, resized) {
  const pen = canvas.getContext('2d');
  let width = 0, height = 0, dots = 1;
  const measure = () => {
    width = canvas.clientWidth;
    height = canvas.clientHeight;
    dots = Math.min(devicePixelRatio || 1, 2);
    canvas.width = Math.round(width * dots);
    canvas.height = Math.round(height * dots);
  };
  new ResizeObserver(() => { measure(); resized(); }).observe(canvas);
  measure();
  return () => {
    pen.setTransform(dots, 0, 0, dots, 0, 0);
    pen.clearRect(0, 0, width, height);
    pen.font = `14px ${getComputedStyle(canvas).fontFamily}`;
    return { pen, width, height };
  };
}

/** @param {CanvasRenderingContext2D} pen */
export function line(pen, x1, y1, x2, y2, colour, thick = 1, dash = []) {
  pen.strokeStyle = colour;
  pen.lineWidth = thick;
  pen.setLineDash(dash);
  pen.beginPath();
  pen.moveTo(x1, y1);
  pen.lineTo(x2, y2);
  pen.stroke();
  pen.setLineDash([]);
}

/** @param {CanvasRenderingContext2D} pen */
export function word(pen, text, x, y, colour, align = 'left') {
  pen.fillStyle = colour;
  pen.textAlign = align;
  pen.fillText(text, x, y);
}
