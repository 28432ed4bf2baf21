// @ts-check
/**
 * The core's drafts with what a person entered filled into fields of theirs.
 */

/** @typedef {import('../../log/log.js').Draft} Draft */

/**
 * @param {Draft[]} drafts
 * @param {Record<string, unknown>} entered  only fields that a draft has already are filled
 * @returns {Draft[]}
 */
export function draftsWith(drafts, entered) {
  return drafts.map((draft) => {
    const data = { ...draft.data };
    for (const field of Object.keys(entered)) {
      if (field in data) data[field] = entered[field];
    }
    return { ...draft, data };
  });
}
