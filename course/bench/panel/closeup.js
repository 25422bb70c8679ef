/** What the set lets in, close up: the response about the place it rings at, its -3 dB band, the stations that lie there. */

import { line, tint, word } from "./canvas.js";
import { inDecibels, kilohertz, minus } from "./quantities.js";

/** @typedef {import("./canvas.js").Pen} Pen */
/** @typedef {import("./colours.js").Colours} Colours */
/** @typedef {import("./seen.js").Seen} Seen */
/** @typedef {import("./seen.js").Curve} Curve */
/** @typedef {{across: (hertz: number) => number, up: (gain: number) => number, left: number, right: number, base: number}} Frame */

const RANGE = 100; // decibel
const MARGIN = { left: 34, right: 6, top: 20, foot: 40 }; // pixels
const SIDEBAND = 4.5e3; // hertz: as far as a station's programme reaches
const TICKS = [-0.75, -0.375, 0.375, 0.75]; // of the span

/** @param {import("./canvas.js").Sheet} sheet @param {Seen} seen @param {Colours} colours */
export function drawCloseUp(sheet, seen, colours) {
  const { pen, width, height, behind } = sheet();
  const middle = seen.ring.frequency;
  const { span, gain: lowest } = seen.dial;
  const { left, top } = MARGIN;
  const right = width - MARGIN.right;
  const base = height - MARGIN.foot;
  const across = (/** @type {number} */ hertz) => left + ((right - left) * (hertz - middle + span)) / (2 * span);
  const up = (/** @type {number} */ gain) =>
    base - ((base - top) * Math.min(Math.max(gain - lowest, 0), RANGE)) / RANGE;
  const frame = { across, up, left, right, base };

  behind(lowest + colours.ink, (still) => {
    for (let gain = lowest + 20; gain <= lowest + RANGE; gain += 20) {
      line(still, [left, up(gain)], [right, up(gain)], colours.faint);
      word(still, minus(gain), [left - 5, up(gain) + 5], colours.soft, "right");
    }
    word(still, "dB", [2, 13], colours.soft);
    line(still, [across(middle), base], [across(middle), base + 6], colours.ink, 2);
    for (const part of TICKS) line(still, [across(middle + part * span), base], [across(middle + part * span), base + 4], colours.ink);
  });
  word(pen, `rings at ${kilohertz(middle)}`, [right, 13], colours.soft, "right");
  for (const station of seen.stations) drawStation(pen, station, seen, frame, colours);
  for (const { curve, colour, dash } of seen.kept) if (curve) drawCurve(pen, curve, frame, colours[colour], dash);
  if (seen.curve && seen.band) {
    drawBand(pen, seen.band, frame, colours);
    drawCurve(pen, seen.curve, frame, colours.sea, [], 0.12);
  } else {
    line(pen, [across(middle), base], [across(middle), top], colours.rust, 3, [6, 4]);
    word(pen, "it oscillates", [across(middle), 13], colours.rust, "center");
  }
  line(pen, [left, base], [right, base], colours.ink, 1.5);
}

/**
 * @param {Pen} pen
 * @param {Curve} curve
 * @param {Frame} frame
 * @param {string} colour
 * @param {number[]} dash
 * @param {number} [filled] how strongly what lies under it is tinted
 */
function drawCurve(pen, { frequency, gain }, { across, up, left, right, base }, colour, dash, filled = 0) {
  const path = new Path2D();
  frequency.forEach((hertz, n) => path.lineTo(across(hertz), up(gain[n])));
  pen.save();
  pen.beginPath();
  pen.rect(left, 0, right - left, base);
  pen.clip();
  if (filled) {
    const under = new Path2D(path);
    under.lineTo(right, base);
    under.lineTo(left, base);
    pen.globalAlpha = filled;
    pen.fillStyle = colour;
    pen.fill(under);
    pen.globalAlpha = 1;
  }
  pen.strokeStyle = colour;
  pen.lineWidth = 2.2;
  pen.setLineDash(dash);
  pen.stroke(path);
  pen.restore();
}

/**
 * The -3 dB band, shaded, with its width over it.
 *
 * @param {Pen} pen
 * @param {NonNullable<Seen["band"]>} band
 * @param {Frame} frame
 * @param {Colours} colours
 */
function drawBand(pen, band, { across, up, left, right, base }, colours) {
  const from = Math.max(across(band.low), left);
  const to = Math.min(Math.max(across(band.high), from + 2), right);
  const top = up(inDecibels(band.gain));
  tint(pen, [from, top, to, base], colours.brass, 0.3);
  const width = kilohertz(band.width, band.width < 1e4 ? 2 : 1);
  word(pen, `${width} at −3 dB`, [(from + to) / 2, Math.max(top - 6, 28)], colours.brass, "center");
}

/**
 * A station that lies here: its carrier, the reach of its sidebands, its name under the line.
 *
 * @param {Pen} pen
 * @param {Seen["tuned"]} station
 * @param {Seen} seen
 * @param {Frame} frame
 * @param {Colours} colours
 */
function drawStation(pen, station, seen, { across, left, right, base }, colours) {
  const x = across(station.frequency);
  const [from, to] = [-SIDEBAND, SIDEBAND].map((offset) => Math.min(Math.max(across(station.frequency + offset), left), right));
  const colour = station === seen.tuned ? colours.rust : colours.soft;
  tint(pen, [from, MARGIN.top, to, base], colour, 0.13);
  if (x < left || x > right) return;
  line(pen, [x, base], [x, MARGIN.top], colour, 1.5, [2, 3]);
  const half = pen.measureText(station.name).width / 2;
  const row = seen.stations.indexOf(station) % 2;
  word(pen, station.name, [Math.min(Math.max(x, left + half), right - half), base + 19 + 16 * row], colour, "center");
}
