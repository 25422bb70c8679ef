/** The whole dial: its scale, the stations where they stand, how strong each is in the aerial and at the grid, the pointer. */

import { line, word } from "./canvas.js";
import { inDecibels } from "./quantities.js";

/** @typedef {import("./canvas.js").Pen} Pen */
/** @typedef {import("./colours.js").Colours} Colours */
/** @typedef {import("./seen.js").Seen} Seen */

const ROW = 16; // pixels, of a row of names
const ROWS = 3;
const SCALE = 34; // pixels under the stations
const RANGE = 100; // decibel, from the foot of the masts
const LEAST = 0.03; // of the height, so that a mast can always be seen

/** @param {import("./canvas.js").Sheet} sheet @param {Seen} seen @param {Colours} colours */
export function drawDial(sheet, seen, colours) {
  const { pen, width, height, behind } = sheet();
  const { low, high, weakest } = seen.dial;
  const base = height - SCALE;
  const top = ROWS * ROW + 6;
  const across = (/** @type {number} */ hertz) => 8 + ((width - 16) * (hertz - low)) / (high - low);
  const up = (/** @type {number} */ volts) =>
    base - (base - top) * Math.min(Math.max((inDecibels(volts) - weakest) / RANGE, LEAST), 1);

  behind([seen.tuned, ...seen.stations].map(({ name }) => name) + colours.ink, (still) => {
    drawScale(still, seen.dial, across, base, width, colours);
    for (const { station, x, row, left, long } of placed(still, seen.stations, across, width)) {
      line(still, [x, base], [x, (row + 1) * ROW + 2], colours.edge);
      line(still, [x, base], [x, up(station.emf)], colours.soft, 2);
      still.fillStyle = colours.slip;
      still.fillRect(left - 2, row * ROW + 1, long + 4, ROW);
      word(still, station.name, [left, row * ROW + 14], station === seen.tuned ? colours.rust : colours.ink);
    }
  });
  if (seen.bursts) {
    const heat = up(Math.SQRT2 * seen.bursts.heat);
    line(pen, [0, heat], [width, heat], colours.soft, 1, [4, 4]);
    word(pen, "heat", [width - 4, heat - 4], colours.soft, "right");
  }
  for (const station of seen.stations) {
    const x = across(station.frequency);
    if (station.grid !== null) line(pen, [x, base], [x, up(station.grid)], station === seen.tuned ? colours.rust : colours.sea, 6);
  }
  line(pen, [across(seen.pointer), top - 4], [across(seen.pointer), height - 4], colours.rust, 2);
}

/**
 * @param {Pen} pen
 * @param {Seen["dial"]} dial
 * @param {(hertz: number) => number} across
 * @param {number} base
 * @param {number} width
 * @param {Colours} colours
 */
function drawScale(pen, { low, high, tick: apart }, across, base, width, colours) {
  const [long, short] = [new Path2D(), new Path2D()];
  const [unit, name] = low < 1e7 ? [1e3, "kHz"] : [1e6, "MHz"];
  for (let n = Math.ceil(low / apart); n * apart <= high; n++) {
    const x = across(n * apart);
    const tick = n % 5 ? short : long;
    tick.moveTo(x, base);
    tick.lineTo(x, base + (n % 10 === 0 ? 11 : n % 5 === 0 ? 7 : 4));
    if (n % 20 === 0 && x < width - 50) word(pen, String((n * apart) / unit), [Math.max(x, 12), base + 25], colours.ink, "center");
  }
  line(pen, [0, base], [width, base], colours.ink, 1.5);
  pen.lineWidth = 1;
  pen.stroke(long);
  pen.strokeStyle = colours.soft;
  pen.stroke(short);
  word(pen, name, [width - 4, base + 25], colours.ink, "right");
}

/**
 * Each station with its place, and its name in the first row where it covers no other.
 *
 * @param {Pen} pen
 * @param {Seen["stations"]} stations
 * @param {(hertz: number) => number} across
 * @param {number} width
 */
function placed(pen, stations, across, width) {
  const ends = new Array(ROWS).fill(-Infinity);
  return stations.map((station) => {
    const x = across(station.frequency);
    const long = pen.measureText(station.name).width;
    const left = Math.min(Math.max(x - long / 2, 2), width - long - 2);
    const row = Math.max(ends.findIndex((end) => end + 8 < left), 0);
    ends[row] = left + long;
    return { station, x, row, left, long };
  });
}
