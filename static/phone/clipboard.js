// @ts-check
/**
 * Hands words to the phone's clipboard.
 */

/**
 * Copy a text; call it on a tap.
 * @param {string} text
 * @returns {Promise<boolean>} false where the browser does not let a page do it
 */
export async function copied(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
