// @ts-check
/**
 * What one key press of a hand scanner says. Such a scanner types; how it types the separators of a maker's
 * symbol is a setting of its own: as Ctrl and a key, as Alt and digits, as the bare character or as an arrow key.
 */

/** Without and with Shift, by `code`: what a scanner set to a US keyboard means, whatever the layout here makes of it. */
const US = /** @type {Record<string, string>} */ ({
  Minus: '-_', Equal: '=+', BracketLeft: '[{', BracketRight: ']}', Backslash: '\\|', Semicolon: ';:', Quote: `'"`,
  Backquote: '`~', Comma: ',<', Period: '.>', Slash: '/?', Space: '  ',
}); // prettier-ignore
const US_DIGITS = ')!@#$%^&*(';

/** What some scanners send in place of Ctrl+\ ] ^ _ and Ctrl+D when they are told to map to function keys; from memory. */
const MAPPED = /** @type {Record<string, string>} */ ({
  ArrowRight: '\x1c', ArrowLeft: '\x1d', ArrowUp: '\x1e', ArrowDown: '\x1f', F4: '\x04',
}); // prettier-ignore

/** End of transmission, the ends of a line, and the four separators. */
const CONTROLS = '\x04\n\r\x1c\x1d\x1e\x1f';

/**
 * The character that a key stands for on a US keyboard; '' where it has none.
 * @param {{code: string, shiftKey: boolean}} event
 */
export function onUsKeyboard({ code, shiftKey }) {
  const letter = /^Key([A-Z])$/.exec(code)?.[1];
  if (letter) return shiftKey ? letter : letter.toLowerCase();
  const digit = /^Digit(\d)$/.exec(code)?.[1];
  if (digit) return shiftKey ? US_DIGITS[Number(digit)] : digit;
  return US[code]?.[shiftKey ? 1 : 0] ?? /^Numpad(\d)$/.exec(code)?.[1] ?? '';
}

/**
 * The control character that a key press sends in the midst of a code; '' where it sends none.
 * @param {KeyboardEvent} event
 */
export function controlOf(event) {
  if (event.ctrlKey && !event.altKey) {
    // The key as this layout has it, then as a US keyboard has it: ] on its own key is no key elsewhere.
    for (const key of [event.key, onUsKeyboard(event)]) {
      const sent = key.length === 1 ? String.fromCharCode(key.toUpperCase().charCodeAt(0) - 64) : '';
      if (sent && CONTROLS.includes(sent)) return sent;
    }
    return '';
  }
  if (event.key.length === 1 && CONTROLS.includes(event.key)) return event.key;
  return MAPPED[event.key] ?? '';
}

/** The digit of the block that Alt codes are typed on; the key's name is no help with NumLock off. @param {KeyboardEvent} event */
export const altDigit = ({ altKey, code }) => (altKey && /^Numpad(\d)$/.exec(code)?.[1]) || '';
