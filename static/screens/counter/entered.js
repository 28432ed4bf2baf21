// @ts-check
/**
 * What a clerk entered of a unit and did not record: the reason for another decision, a serial number half typed.
 *
 * It stays with that unit while another one is at hand, and is there again when it comes back, until it is decided.
 */

/**
 * @typedef {object} Otherwise   another decision than the proposed one, as far as it is entered
 * @property {string} decision   '' as long as none is chosen
 * @property {string} reason
 * @property {boolean} [asked]   the clerk went on without one of the two
 * @property {boolean} isOpen    the screen shows it in the place of the proposal
 */

/** @typedef {Record<string, any>} Form */

/** The field of the form for a serial number that is typed. @param {string} unit */
export const serialKey = (unit) => `serial-${unit}`;

/**
 * What was entered for another decision on a unit; null where nothing was.
 * @param {Form} form
 * @param {string} unit
 * @returns {Otherwise | null}
 */
export const otherwiseOn = (form, unit) => form.entered?.[unit] ?? null;

/**
 * @param {Form} form
 * @param {string} unit
 * @param {Partial<Otherwise>} more
 */
export function enterOtherwise(form, unit, more) {
  const before = otherwiseOn(form, unit) ?? { decision: '', reason: '', isOpen: true };
  form.entered = { ...form.entered, [unit]: { ...before, ...more } };
}

/**
 * Show the proposal again; the reason stays.
 * @param {Form} form
 * @param {string} unit
 * @param {Partial<Otherwise>} [more]
 */
export function closeOtherwise(form, unit, more = {}) {
  if (otherwiseOn(form, unit)) enterOtherwise(form, unit, { ...more, asked: false, isOpen: false });
}

/**
 * Whether something waits that a person entered of a unit.
 * @param {Form} form
 * @param {string} unit
 */
export function isEntered(form, unit) {
  const { decision = '', reason = '' } = otherwiseOn(form, unit) ?? {};
  return Boolean(decision || reason.trim() || form[serialKey(unit)]?.trim());
}

/**
 * It is on record now.
 * @param {Form} form
 * @param {string} unit
 */
export function forgetEntered(form, unit) {
  if (form.entered) Reflect.deleteProperty(form.entered, unit);
  Reflect.deleteProperty(form, serialKey(unit));
}
