/** Asks what is heard, in a worker, so that the page goes on moving meanwhile. */

import { threadsAddress } from "./text.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */
/** @typedef {ReturnType<typeof import("../physics/bench.js").listen> & {margin: import("../physics/margin.js").Margin | null}} Heard */

/** @param {Figures} figures */
export function createListener(figures) {
  const worker = new Worker(threadsAddress());
  worker.postMessage({ figures });
  /** @type {{state: State, resolve: (heard: Heard | null) => void, reject: (error: Error) => void}[]} */ let asking = [];
  let busy = false;

  function next() {
    const newest = asking[asking.length - 1];
    if (busy || !newest) return;
    for (const { resolve } of asking.slice(0, -1)) resolve(null);
    asking = [newest];
    busy = true;
    worker.postMessage({ state: newest.state });
  }

  worker.onmessage = ({ data }) => {
    const [answered, ...later] = asking;
    asking = later;
    busy = false;
    if (data.fault) answered.reject(new RangeError(data.fault));
    else answered.resolve(data.heard);
    next();
  };

  return {
    /** What is heard with the knobs so; null if a newer question came before this one was begun. @param {State} state @returns {Promise<Heard | null>} */
    ask: (state) =>
      new Promise((resolve, reject) => {
        asking.push({ state, resolve, reject });
        next();
      }),
    close: () => worker.terminate(),
  };
}
