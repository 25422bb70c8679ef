/**
 * Joins the bench's modules into one classic script, which works from a USB stick where modules do not: node join.js ENTRY TARGET
 */
import { build } from "esbuild";

const [entry, target] = process.argv.slice(2);
const form = /** @type {const} */ ({ bundle: true, minify: true, format: "iife", target: "es2020", charset: "utf8" });
const here = new URL(".", import.meta.url).pathname;

const worklet = await build({ ...form, entryPoints: [`${here}sound/worklet.js`], write: false });
await build({
  ...form,
  entryPoints: [entry],
  outfile: target,
  define: { WORKLET_TEXT: JSON.stringify(worklet.outputFiles[0].text) },
});
