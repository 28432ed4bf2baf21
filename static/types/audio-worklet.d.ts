// What a script beside the sound finds there; TypeScript's lists of the browser's names leave it out.

declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}

declare const sampleRate: number;

declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;
