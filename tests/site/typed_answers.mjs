// Reads quantities and judges typed answers with the pages' own modules: JSON in, {reader, read, judge}; JSON out, the same lists answered.
import { readFileSync } from "node:fs";

const { reader, read, judge } = JSON.parse(readFileSync(0, "utf8"));
Object.assign(globalThis, { READER: reader });
const { quantityIn } = await import("../../course/theme/scripts/reading.js");
const { verdictOf } = await import("../../course/theme/scripts/verdict.js");

process.stdout.write(
  JSON.stringify({
    read: read.map((/** @type {[string, string]} */ [text, unit]) => quantityIn(text, unit)),
    judge: judge.map((/** @type {[string, import("../../course/theme/scripts/verdict.js").Asked]} */ [text, asked]) => verdictOf(text, asked)),
  }),
);
