// @ts-check
/**
 * What an entry says of each position, entered anew: what it is called, what was seen there.
 */

/** @typedef {import('../../core/views.js').EntryField} EntryField */

/** How the fields begin. */
const CALLED = 'called.';
const SEEN = 'seen.';

/** @param {string} name */
export const isOfPosition = (name) => name.startsWith(CALLED) || name.startsWith(SEEN);

/**
 * @param {EntryField[]} fields  those that are of a position
 * @param {(field: EntryField) => any} valueOf
 * @param {Record<string, any>} data
 */
export function placeAtPositions(fields, valueOf, data) {
  const changed = fields.some((field) => JSON.stringify(valueOf(field)) !== JSON.stringify(field.value));
  if (!changed) return;
  const seen = fields.filter(({ name }) => name.startsWith(SEEN));
  if (seen.length) {
    data.positions = seen.flatMap((field) => {
      const found = valueOf(field);
      return (found.length ? found : ['nothing']).map((/** @type {string} */ each) => ({ position: field.name.slice(SEEN.length), found: each }));
    });
    return;
  }
  const called = new Map(fields.map((field) => [field.name.slice(CALLED.length), valueOf(field)]));
  data.positions = data.positions.map((/** @type {{id: string, name: string}} */ each) => ({ ...each, name: called.get(each.id) ?? each.name }));
}

/** Of these lists of one entry a position is in one at most. */
const APART = ['faulted', 'silent', 'ticks'];

/**
 * Take a position out of the other list that it may be in.
 * @param {EntryField[]} fields
 * @param {Record<string, any>} values  as entered until now, by field
 * @param {string} name  of the field that it was put into
 */
export function keepApart(fields, values, name) {
  if (!APART.includes(name)) return;
  for (const other of fields.filter((each) => APART.includes(each.name) && each.name !== name)) {
    values[other.name] = (values[other.name] ?? other.value).filter((/** @type {string} */ each) => !values[name].includes(each));
  }
}

/**
 * What a walk did not find right, it found right before, or not; the rest it found right.
 * @param {{kind: string, data: Record<string, any>}} entry  as it is on record
 * @param {Record<string, any>} data
 */
export function placeWalk({ kind, data: before }, data) {
  if (kind !== 'walk_checked' || data.missed === before.missed) return;
  data.positions = [...before.positions, ...before.missed].filter((each) => !data.missed.includes(each));
}
