// What the browser's audio thread and the bundler provide and TypeScript's own lists leave out.
declare const THREADS_TEXT: string;
declare const sampleRate: number;
declare function registerProcessor(name: string, processor: new (options: any) => AudioWorkletProcessor): void;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare const process: { argv: string[] };
