// What tests try of the scanner, joined into one file as parts.js is.
export * from '../../static/scan/camera.js';
export * from '../../static/scan/decoding/code-reader.js';
export * from '../../static/scan/scanner.js';
export * from '../../static/words/words.js';
