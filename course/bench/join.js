/**
 * Joins the bench's modules into one classic script, which works from a USB stick where modules do not: node join.js ENTRY TARGET
 */
import { build } from "esbuild";

const [entry, target] = process.argv.slice(2);
const form = /** @type {const} */ ({ bundle: true, minify: true, format: "iife", target: "es2020", charset: "utf8" });
const here = new URL(".", import.meta.url).pathname;

const threads = await build({ ...form, entryPoints: [`${here}sound/threads.js`], write: false });
await build({
  ...form,
  entryPoints: [entry],
  outfile: target,
  define: { THREADS_TEXT: JSON.stringify(threads.outputFiles[0].text) },
});
