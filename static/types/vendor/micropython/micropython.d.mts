/** What the app uses of MicroPython for WebAssembly: its package brings no declarations. */

export interface MicroPython {
  /** The interpreter's own files, in memory. */
  FS: { mkdir(path: string): void; writeFile(path: string, content: string | Uint8Array): void };
  /** The names of `__main__`. */
  globals: { get(name: string): (text: string) => string };
  runPython(code: string): unknown;
}

export function loadMicroPython(options: { heapsize: number }): Promise<MicroPython>;
