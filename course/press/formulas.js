// One line in, {"tex", "display"}; one line out, {"html"} or {"fault"}.
const katex = require("katex");
const strict = (kind) => (kind === "unknownSymbol" ? "error" : "ignore");
const lines = require("node:readline").createInterface({ input: process.stdin });

lines.on("line", (line) => {
  const { tex, display } = JSON.parse(line);
  let answer;
  try {
    answer = { html: katex.renderToString(tex, { displayMode: display, throwOnError: true, strict }) };
  } catch (error) {
    answer = { fault: error.message };
  }
  process.stdout.write(JSON.stringify(answer) + "\n");
});
