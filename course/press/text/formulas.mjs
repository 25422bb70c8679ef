// Sets formulas for `formulas.py`. One line in, {"tex", "display"}; one line out, {"html"} or {"fault"}.
import { createInterface } from "node:readline";
import katex from "katex";

/** A sign that KaTeX does not know is a fault; all else that it is strict about is allowed. @param {string} kind */
const strict = (kind) => (kind === "unknownSymbol" ? "error" : "ignore");

/** @param {{tex: string, display: boolean}} asked @returns {{html: string} | {fault: string}} */
function typeset({ tex, display }) {
  try {
    return { html: katex.renderToString(tex, { displayMode: display, throwOnError: true, strict }) };
  } catch (error) {
    return { fault: error instanceof Error ? error.message : String(error) };
  }
}

createInterface({ input: process.stdin }).on("line", (line) => {
  process.stdout.write(JSON.stringify(typeset(JSON.parse(line))) + "\n");
});
