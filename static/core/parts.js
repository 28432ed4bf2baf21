// @ts-check
/**
 * What the worker runs the core from: MicroPython, the core's files, and those of them that only some answers need.
 */

import { APP } from '../place.js';
import { Broken } from './worker-line.js';

const WASM_URL = new URL('vendor/micropython/micropython.wasm', APP);
const FILES_URL = new URL('core.json', APP);
const BYTES_URL = new URL('core.bin', APP);
/** Of what only some answers need. */
const REST_URL = new URL('core-late.bin', APP);

/**
 * Of each file of the core its text or, compiled, how long it is: its bytes follow on those of the file before it.
 * @typedef {Record<string, string | number>} CoreFiles
 */
/** @typedef {{files: CoreFiles, bytes: ArrayBuffer}} SomeFiles */

/**
 * By which core's files this app concludes, as records carry it.
 * @returns {Promise<string>}
 */
export async function coreDigest() {
  return (await (await fetch(FILES_URL)).json()).digest;
}

/** From the offline cache or the server; each is read once, or again after a failure. */
export class CoreParts {
  /** By which files the core concludes; empty while they are not known. */
  digest = '';
  /** Of the files that come after the others, how long they are. @type {CoreFiles} */
  #late = {};
  /** @type {({wasm: ArrayBuffer} & SomeFiles) | null} */
  #first = null;
  /** @type {Promise<SomeFiles> | null} */
  #rest = null;

  /** What the worker starts from. */
  async first() {
    this.#first ??= await this.#load();
    return this.#first;
  }

  async #load() {
    const [wasm, files] = await Promise.all([fetched(WASM_URL), fetched(FILES_URL)]);
    const core = await files.json();
    this.digest = core.digest ?? '';
    this.#late = core.late ?? {};
    return { ...(await withBytes(core.files, BYTES_URL)), wasm: await wasm.arrayBuffer() };
  }

  /** The files that only some answers need. */
  rest() {
    this.#rest ??= withBytes(this.#late, REST_URL).catch((error) => {
      this.#rest = null;
      throw error;
    });
    return this.#rest;
  }
}

/**
 * @param {CoreFiles} files
 * @param {URL} address  of the bytes of those that are compiled
 * @returns {Promise<SomeFiles>}
 */
async function withBytes(files, address) {
  const isCompiled = Object.values(files).some((file) => typeof file !== 'string');
  return { files, bytes: isCompiled ? await (await fetched(address)).arrayBuffer() : new ArrayBuffer(0) };
}

/** @param {URL} address */
async function fetched(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Broken('troubles-answered', { address: response.url, status: String(response.status) });
  return response;
}
