/**
 * Joins modules into classic scripts, which work from a USB stick where modules do not. On its input, as JSON:
 * `scripts`, of each target the entry module; `texts`, of each global constant the entry of a script whose text it is;
 * `values`, of each other global constant what it is.
 */
import { readFileSync } from "node:fs";

import { build } from "esbuild";

const form = /** @type {const} */ ({ bundle: true, minify: true, format: "iife", target: "es2020", charset: "utf8" });

/** @type {{scripts: Record<string, string>, texts: Record<string, string>, values: Record<string, unknown>}} */
const { scripts, texts, values } = JSON.parse(readFileSync(0, "utf8"));

/** @type {Record<string, string>} */ const define = {};
for (const [name, value] of Object.entries(values)) define[name] = JSON.stringify(value);
for (const [name, entry] of Object.entries(texts)) {
  const { outputFiles } = await build({ ...form, entryPoints: [entry], write: false });
  define[name] = JSON.stringify(outputFiles[0].text);
}
await Promise.all(Object.entries(scripts).map(([outfile, entry]) => build({ ...form, entryPoints: [entry], outfile, define })));
