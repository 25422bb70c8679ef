/** The whole dial: its scale, the stations where they stand, how strong each is in the aerial and at the grid, the pointer. */

import { line, word } from './canvas.js';
import { inDecibels } from './words.js';

const ROW = 16, SCALE = 30, FOOT = 4;
const WEAKEST = 40, STRONGEST = 140; // decibel over 1 microvolt

/**
 * @param {ReturnType<import('./canvas.js').sharp>} sheet
 * @param {import('./seen.js').Seen} seen
 * @param {Record<string, string>} colours
 */
export function drawDial(sheet, seen, colours) {
  const { pen, width, height } = sheet();
  const { low, high } = seen.dial;
  const across = hertz => 8 + (width - 16) * (hertz - low) / (high - low);
  const base = height - SCALE - FOOT, top = 3 * ROW + 6;
  const up = volts => base - (base - top) * Math.min(Math.max((inDecibels(volts) + 120 - WEAKEST) / (STRONGEST - WEAKEST), 0.03), 1);

  scale(pen, across, low, high, base, width, colours);
  for (const { station, x, row, left } of placed(pen, seen.stations, across, width)) {
    const loud = station.name === seen.tuned.name;
    line(pen, x, base, x, (row + 1) * ROW + 2, colours.edge);
    line(pen, x, base, x, up(station.emf), colours.soft, 2);
    if (station.grid !== null) line(pen, x, base, x, up(station.grid), loud ? colours.rust : colours.sea, 6);
    pen.fillStyle = colours.slip;
    pen.fillRect(left - 2, row * ROW + 1, pen.measureText(station.name).width + 4, ROW);
    word(pen, station.name, left, row * ROW + 14, loud ? colours.rust : colours.ink);
  }
  const at = across(seen.pointer);
  line(pen, at, top - 4, at, height - FOOT, colours.rust, 2);
}

function scale(pen, across, low, high, base, width, colours) {
  line(pen, 0, base, width, base, colours.ink, 1.5);
  for (let kilo = Math.ceil(low / 1e4) * 10; kilo * 1e3 <= high; kilo += 10) {
    const x = across(kilo * 1e3);
    line(pen, x, base, x, base + (kilo % 100 ? (kilo % 50 ? 4 : 7) : 11), kilo % 50 ? colours.soft : colours.ink);
    if (kilo % 200 === 0 && x < width - 50) word(pen, String(kilo), x, base + 25, colours.ink, 'center');
  }
  word(pen, 'kHz', width - 4, base + 25, colours.ink, 'right');
}

/** Each station with its place, and its name in the first row where it covers no other. */
function placed(pen, stations, across, width) {
  const ends = [-9, -9, -9];
  return stations.map(station => {
    const x = across(station.frequency), long = pen.measureText(station.name).width;
    const left = Math.min(Math.max(x - long / 2, 2), width - long - 2);
    const row = Math.max(ends.findIndex(end => end + 8 < left), 0);
    ends[row] = left + long;
    return { station, x, row, left };
  });
}
