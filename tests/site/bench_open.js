// What the tests of the bench's sound are given in the page: its modules, without the page's own controls.
import * as physics from "../../course/bench/physics/bench.js";
import { createListener } from "../../course/bench/sound/listener.js";
import { createPlayer, setNode } from "../../course/bench/sound/player.js";

/** @type {any} */ (globalThis).Bench = { ...physics, createListener, createPlayer, setNode };
