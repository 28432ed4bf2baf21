// @ts-check
/** Beside the sound, where nothing is missed: hands the page the levels of the microphone, some at a time. */

import { Levels } from './levels.js';

const AT_ONCE = 50;

class Ticks extends AudioWorkletProcessor {
  #levels = new Levels(sampleRate);
  /** @type {number[]} */
  #waiting = [];

  /** @param {Float32Array[][]} inputs */
  process([input]) {
    if (input[0]) this.#waiting.push(...this.#levels.of(input[0]));
    if (this.#waiting.length >= AT_ONCE) {
      this.port.postMessage(this.#waiting);
      this.#waiting = [];
    }
    return true;
  }
}

registerProcessor('ticks', Ticks);
