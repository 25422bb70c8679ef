/** What the set lets in, close up: the response about the place it rings at, its -3 dB band, the stations that lie there. */

import { line, word } from './canvas.js';
import { inDecibels, kilohertz } from './words.js';

export const SPAN = 24e3; // hertz to either side
const LOWEST = -20, HIGHEST = 80; // decibel, volts at the grid for each volt in the aerial
const LEFT = 34, RIGHT = 6, TOP = 20, FOOT = 40, SIDEBAND = 4.5e3;

/**
 * @param {ReturnType<import('./canvas.js').sharp>} sheet
 * @param {import('./seen.js').Seen} seen
 * @param {Record<string, string>} colours
 */
export function drawCloseUp(sheet, seen, colours) {
  const { pen, width, height } = sheet();
  const base = height - FOOT, middle = seen.ring.frequency;
  const across = hertz => LEFT + (width - LEFT - RIGHT) * (hertz - middle + SPAN) / (2 * SPAN);
  const up = gain => base - (base - TOP) * (Math.min(Math.max(gain, LOWEST), HIGHEST) - LOWEST) / (HIGHEST - LOWEST);

  for (let gain = 0; gain <= HIGHEST; gain += 20) {
    line(pen, LEFT, up(gain), width - RIGHT, up(gain), colours.faint);
    word(pen, String(gain), LEFT - 5, up(gain) + 5, colours.soft, 'right');
  }
  word(pen, 'dB', 2, 13, colours.soft);
  word(pen, `rings at ${kilohertz(middle)}`, width - RIGHT, 13, colours.soft, 'right');
  channels(pen, seen, across, base, colours);
  for (const kept of seen.kept) {
    if (kept.curve) curve(pen, kept.curve, across, up, colours[kept.colour], kept.dash);
  }
  if (seen.curve) {
    band(pen, seen, across, up, base, colours);
    under(pen, seen.curve, across, up, base, colours.sea);
    curve(pen, seen.curve, across, up, colours.sea, []);
  } else {
    line(pen, across(middle), base, across(middle), TOP, colours.rust, 3, [6, 4]);
    word(pen, 'it oscillates', across(middle), 13, colours.rust, 'center');
  }
  line(pen, LEFT, base, width - RIGHT, base, colours.ink, 1.5);
  foot(pen, middle, across, base, colours);
}

function curve(pen, { frequency, gain }, across, up, colour, dash) {
  pen.save();
  pen.beginPath();
  pen.rect(LEFT, 0, pen.canvas.width, pen.canvas.height);
  pen.clip();
  pen.strokeStyle = colour;
  pen.lineWidth = 2.2;
  pen.setLineDash(dash);
  pen.beginPath();
  for (let n = 0; n < frequency.length; n++) pen.lineTo(across(frequency[n]), up(gain[n]));
  pen.stroke();
  pen.restore();
}

/** What lies under the curve, tinted. */
function under(pen, { frequency, gain }, across, up, base, colour) {
  pen.fillStyle = colour;
  pen.globalAlpha = 0.12;
  pen.beginPath();
  pen.moveTo(across(frequency[0]), base);
  for (let n = 0; n < frequency.length; n++) pen.lineTo(across(frequency[n]), up(gain[n]));
  pen.lineTo(across(frequency[frequency.length - 1]), base);
  pen.fill();
  pen.globalAlpha = 1;
}

/** The -3 dB band, shaded, with its width over it. */
function band(pen, seen, across, up, base, colours) {
  const { low, high, width, gain } = seen.band;
  const left = across(low), right = across(high), top = up(inDecibels(gain));
  pen.fillStyle = colours.brass;
  pen.globalAlpha = 0.3;
  pen.fillRect(left, top, Math.max(right - left, 2), base - top);
  pen.globalAlpha = 1;
  word(pen, `${kilohertz(width, width < 1e4 ? 2 : 1)} at −3 dB`, (left + right) / 2, Math.max(top - 6, 13), colours.brass, 'center');
}

/** The stations that lie here: carrier, the reach of its sidebands, its name under the line. */
function channels(pen, seen, across, base, colours) {
  for (const station of seen.stations) {
    if (Math.abs(station.frequency - seen.ring.frequency) > SPAN + SIDEBAND) continue;
    const x = across(station.frequency), loud = station.name === seen.tuned.name;
    const left = Math.max(across(station.frequency - SIDEBAND), LEFT), right = across(station.frequency + SIDEBAND);
    pen.fillStyle = loud ? colours.rust : colours.soft;
    pen.globalAlpha = 0.13;
    pen.fillRect(left, TOP, Math.max(right - left, 0), base - TOP);
    pen.globalAlpha = 1;
    if (x < LEFT) continue;
    line(pen, x, base, x, TOP, loud ? colours.rust : colours.soft, 1.5, [2, 3]);
    const long = pen.measureText(station.name).width / 2;
    const centre = Math.min(Math.max(x, LEFT + long), across(seen.ring.frequency + SPAN) - long);
    const beneath = seen.stations.some(other => other.frequency < station.frequency && station.frequency - other.frequency < 2 * SPAN * 0.4);
    word(pen, station.name, centre, base + (beneath ? 35 : 19), loud ? colours.rust : colours.ink, 'center');
  }
}

function foot(pen, middle, across, base, colours) {
  line(pen, across(middle), base, across(middle), base + 5, colours.ink, 2);
  for (const offset of [-18e3, -9e3, 9e3, 18e3]) {
    const x = across(middle + offset);
    line(pen, x, base, x, base + 5, colours.ink);
  }
}
