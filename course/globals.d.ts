// What the browser's audio thread, the bundler and Node.js provide and TypeScript's own lists leave out.
declare const THREADS_TEXT: string;
declare const EDITION: string; // these two stand before theme/scripts/worker.js
declare const FILES: string[];
declare const READER: { prefixes: [string, number][]; alike: [string, string][]; ratios: [string, number][] }; // course/answers/reader.py
declare const PAGES: Record<string, number>; // of each page of a unit, how many numbers it asks for
declare const sampleRate: number;
declare function registerProcessor(name: string, processor: new (options: any) => AudioWorkletProcessor): void;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
interface Window {
  courseLetters?: string; // type/letters.js
}
declare const process: { stdin: unknown; stdout: { write(text: string): void } };
declare module "node:fs" {
  export function readFileSync(file: number, encoding: "utf8"): string;
}
declare module "node:readline" {
  export function createInterface(from: { input: unknown }): { on(event: "line", does: (line: string) => void): void };
}
