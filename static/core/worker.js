// @ts-check
/**
 * The phone's host of the core: MicroPython in a worker, so that a slow or hung core never stops the screen.
 *
 * It fetches nothing. A worker's own fetches can fail offline before the service worker sees them, so
 * the page hands over the wasm bytes and the core's files. Only strings cross into Python and back:
 * integers would be cut to 32 bits there.
 */

import { loadMicroPython } from '../vendor/micropython/micropython.mjs';

/** Start size of Python's heap; it grows by itself. */
const HEAP_BYTES = 8 * 1024 * 1024;
/**
 * Python looks for what nobody needs any more once a question has taken so much. By itself it does so after each
 * one that took 16 kB: with years of jobs in its memory, looking through them took longer than most answers.
 */
const LOOK_AFTER_BYTES = 4 * 1024 * 1024;

/** @type {((text: string) => string) | null} */
let callCore = null;

/**
 * MicroPython asks for its wasm through `fetch` and knows no other way in, so this worker's fetch
 * answers from the bytes in hand and refuses everything else.
 * @param {ArrayBuffer} wasm
 */
function serveOnlyTheWasm(wasm) {
  let served = false;
  globalThis.fetch = async (resource) => {
    if (served) throw new Error(`the core's worker fetches nothing, not ${resource}`);
    served = true;
    return new Response(wasm, { headers: { 'Content-Type': 'application/wasm' } });
  };
}

/** Folders of the core's files that are there. */
const folders = new Set();
/** @type {import('../vendor/micropython/micropython.mjs').MicroPython['FS'] | null} */
let fileSystem = null;

/**
 * Write files of the core into MicroPython's file system, folders first.
 * @param {import('./parts.js').SomeFiles} some
 */
function writeFiles({ files, bytes }) {
  if (!fileSystem) throw new Error('the core has not been started');
  let at = 0;
  for (const [path, file] of Object.entries(files)) {
    const parts = path.split('/').slice(0, -1);
    for (let depth = 1; depth <= parts.length; depth += 1) {
      const folder = `/${parts.slice(0, depth).join('/')}`;
      if (!folders.has(folder)) fileSystem.mkdir(folder);
      folders.add(folder);
    }
    if (typeof file === 'string') fileSystem.writeFile(`/${path}`, file);
    else {
      fileSystem.writeFile(`/${path}`, new Uint8Array(bytes, at, file));
      at += file;
    }
  }
}

/** @param {{wasm: ArrayBuffer} & import('./parts.js').SomeFiles} parts */
async function start({ wasm, ...some }) {
  serveOnlyTheWasm(wasm);
  const python = await loadMicroPython({ heapsize: HEAP_BYTES });
  fileSystem = python.FS;
  writeFiles(some);
  python.runPython(`import gc
gc.threshold(${LOOK_AFTER_BYTES})
from server.core.host import Host
_call = Host().call`);
  callCore = python.globals.get('_call');
}

/**
 * Messages: {id, start: {wasm, files, bytes}}, {id, more: {files, bytes}} or {id, text, next?: {id, text}}. Answers: {id,
 * text} or {id, fault}. What comes `next` is answered too, after the first answer is on its way.
 * @param {MessageEvent} message
 */
async function answer({ data }) {
  const { id } = data;
  try {
    if (data.start || data.more) {
      if (data.start) await start(data.start);
      else writeFiles(data.more);
      postMessage({ id, text: '' });
      return;
    }
    if (!callCore) throw new Error('the core has not been started');
    postMessage({ id, text: callCore(data.text) });
  } catch (error) {
    postMessage({ id, fault: error instanceof Error ? error.message : String(error) });
  }
  if (data.next) await answer(/** @type {MessageEvent} */ ({ data: data.next }));
}

addEventListener('message', answer);
