/** A worker has no import map, so it names the vendored file; its declarations are those of the package. */
export * from 'barcode-detector/ponyfill';
