// @ts-check
/** No record could be made; `sentence` says why. */
export class NoRecord extends Error {
  /** @param {string} sentence */
  constructor(sentence) {
    super(sentence);
    this.name = 'NoRecord';
    this.sentence = sentence;
  }
}
