/** What runs beside the page, in one text for both: in the audio thread the set that plays, in a worker the listener. */

import { listen } from "../physics/bench.js";
import { margin } from "../physics/margin.js";
import { registerSet } from "./worklet.js";

if (typeof registerProcessor === "function") registerSet();
else {
  /** @type {import("../physics/bench.js").Figures} */ let figures;
  self.onmessage = ({ data }) => {
    if (data.figures) figures = data.figures;
    else self.postMessage(answer(data));
  };

  const answer = (/** @type {{state: import("../physics/bench.js").State}} */ { state }) => {
    try {
      return { heard: { ...listen(figures, state), margin: margin(figures, state) } };
    } catch (error) {
      return { fault: /** @type {Error} */ (error).message };
    }
  };
}
