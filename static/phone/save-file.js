// @ts-check
/**
 * Hands a file on: through the phone's share sheet, or into its downloads.
 */

const KEPT_MS = 60_000;

/**
 * Whether this phone can share such a file.
 * @param {File} file
 */
export function canShare(file) {
  return navigator.canShare?.({ files: [file] }) ?? false;
}

/**
 * Let the phone hand a file on to another app.
 * @param {File} file
 * @returns {Promise<boolean>}  whether the phone handed it on
 */
export async function shareFile(file) {
  try {
    await navigator.share({ files: [file] });
    return true;
  } catch (error) {
    // Whoever closes the share sheet has changed his mind.
    if (!(error instanceof DOMException && error.name === 'AbortError')) throw error;
    return false;
  }
}

/** Download a file; the browser says where to. @param {File} file */
export function saveFile(file) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), KEPT_MS);
}
