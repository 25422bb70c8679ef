/** One bench: a state, the knobs that change it, and the views that show it. */

import { startingState } from '../physics/bench.js';
import { sharp } from './canvas.js';
import { drawCloseUp } from './closeup.js';
import { palette, whenLightChanges } from './colours.js';
import { comparing } from './comparing.js';
import { drawDial } from './dial.js';
import { gauges } from './gauges.js';
import { goals } from './goals.js';
import { knobs } from './knobs.js';
import { heardOf, measured } from './measured.js';
import { numbers } from './numbers.js';
import { pictureSays } from './picture.js';
import { seen as seenOf } from './seen.js';
import { settingOf, stateOf } from './setting.js';
import { sharing } from './sharing.js';
import { sounding } from './sounding.js';

const REST = 140; // milliseconds after the last turn, before what is slow to work out is worked out
const MOVING = 500; // milliseconds between two such while a knob is being turned

/** @param {HTMLElement} root @param {object} figures */
export function benchIn(root, figures) {
  const whole = root.classList.contains('whole');
  let state = stateOf(figures, root.dataset.setting)?.state ?? startingState(figures, figures.order[0]);
  let colours = palette(), seen, heard, frame = 0, rest = 0, lastHeard = 0, turned = false;

  root.querySelector('.turning-on').hidden = false;
  const dialSheet = sharp(root.querySelector('.dial-view'), () => soon());
  const closeSheet = sharp(root.querySelector('.close-view'), () => soon());
  const setKnobs = knobs(root, figures, (turn, knob) => change(turn(state), knob));
  const setGauges = gauges(root, figures);
  const pass = sounding(root, figures, () => state, () => {});
  const says = pictureSays(root);
  const extras = whole ? wholeBench() : null;

  function wholeBench() {
    return {
      numbers: numbers(root, figures),
      goals: goals(root),
      comparing: comparing(root, () => { hear(); return reading(); }, kept => change(kept), () => soon()),
      sharing: sharing(root),
    };
  }

  function reading() {
    const title = root.querySelector('.which :checked + span').textContent;
    return { state, seen, heard, measured: measured(state, seen, heard), title };
  }

  /** A new state: the knobs and the sound at once, the picture in the next frame, the rest when there is time. */
  function change(next, knob) {
    const another = next.set !== state.set;
    state = next;
    turned = true;
    if (knob) root.dataset.lit = knob;
    setKnobs(state);
    if (another) showSet();
    pass(state);
    soon();
  }

  function soon() {
    frame ||= requestAnimationFrame(draw);
  }

  function draw() {
    frame = 0;
    seen = seenOf(figures, state, extras?.comparing.curves() ?? []);
    drawDial(dialSheet, seen, colours);
    drawCloseUp(closeSheet, seen, colours);
    if (heard) setGauges(seen, heard);
    clearTimeout(rest);
    rest = setTimeout(settle, performance.now() - lastHeard > MOVING ? 0 : REST);
  }

  function hear() {
    heard = heardOf(figures, state, seen);
    lastHeard = performance.now();
  }

  /** What takes its time: the ear, the neighbour, the goals, the words. */
  function settle() {
    hear();
    setGauges(seen, heard);
    says(seen, heard);
    if (!extras) return;
    const now = reading();
    extras.numbers(state, seen);
    extras.goals(now.measured);
    extras.comparing.show(now);
    if (turned) extras.sharing(settingOf(figures, state));
  }

  function showSet() {
    for (const radio of root.querySelectorAll('.which input')) radio.checked = radio.value === state.set;
    for (const circuit of root.querySelectorAll('.circuit')) circuit.hidden = circuit.dataset.set !== state.set;
    root.querySelector('[data-choice=night]').hidden = !figures.stations.some(station => station.night);
    root.querySelector('[data-choice=fierce]').hidden = figures.sets[state.set].feeds.length < 2;
  }

  for (const radio of root.querySelectorAll('.which input')) {
    if (!figures.order.includes(radio.value)) radio.parentElement.remove();
    radio.addEventListener('change', () => change(carriedOver(figures, state, radio.value)));
  }
  const fierce = root.querySelector('[data-choice=fierce] input'), night = root.querySelector('[data-choice=night] input');
  fierce.addEventListener('change', () => change({ ...state, feed: fierce.checked ? 'fierce' : 'gentle' }));
  night.addEventListener('change', () => change({ ...state, night: night.checked }));
  whenLightChanges(() => { colours = palette(); soon(); });

  /** Go where an address points: one in the page's own address bar, or a link within the page. */
  function follow() {
    const asked = stateOf(figures, decodeURIComponent(location.hash.slice(1)));
    if (!asked) return;
    const fault = root.querySelector('.turning-fault');
    fault.hidden = !asked.faults.length;
    fault.textContent = asked.faults.join(' ');
    change({ ...asked.state, volume: state.volume, magnify: state.magnify });
    root.scrollIntoView();
  }
  if (whole) {
    addEventListener('hashchange', follow);
    follow();
  }
  setKnobs(state);
  showSet();
  soon();
}

/** Another set with the knobs where they were, as far as it has them. */
function carriedOver(figures, state, set) {
  const fresh = startingState(figures, set), knobs = figures.sets[set].knobs;
  const kept = Object.fromEntries(['coupling', 'tuning'].filter(name => knobs[name]).map(name => [name, clamp(state[name], knobs[name])]));
  return { ...fresh, ...kept, night: state.night };
}

const clamp = (value, { low, high }) => Math.min(Math.max(value, low), high);
