// @ts-check
/**
 * What can be seen from outside: nothing, in one tap; or per position whatever there is.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../../shapes/icons.js';
import { say } from '../../../words/words.js';
import { textField } from '../../frame/field.js';

/** @typedef {import('../../../core/views.js').LookStep} LookStep */

/** @param {import('./step-context.js').StepContext<LookStep>} ctx @returns {import('../job.js').StepParts} */
export function lookStep(ctx) {
  const { form, step, act } = ctx;
  /** @type {Record<string, string[]>} */
  const seen = (form.seen ??= {});
  const something = Object.values(seen).some((found) => found.length);
  return {
    body: html`<ul class="list look-list">
        ${step.expects.positions.map((position) => positionRow(ctx, position, seen))}
      </ul>
      ${something ? textField(ctx, 'note', say('steps-look-note'), { lines: 2, most: 500 }) : nothing}`,
    main: something ? { words: say('steps-look-record'), run: () => act([looked(step, seen, form.note)]) } : undefined,
  };
}

/**
 * @param {import('./step-context.js').StepContext<LookStep>} ctx
 * @param {{id: string, name: string}} position
 * @param {Record<string, string[]>} seen
 */
function positionRow(ctx, { id, name }, seen) {
  const { form, step, redraw } = ctx;
  const found = seen[id] ?? [];
  const isOpen = form.open === id;
  /** @type {Array<{id: string, words: string}>} */
  const kinds = step.expects.found;
  const words = kinds.filter((kind) => found.includes(kind.id)).map((kind) => kind.words);
  return html`<li>
    <button
      class="list-row"
      type="button"
      aria-expanded=${isOpen}
      @click=${() => {
        form.open = isOpen ? '' : id;
        redraw();
      }}
    >
      <span class="list-main">
        <span class="list-title">${name}</span>
        <span class=${words.length ? 'list-note list-note-seen' : 'list-note'}
          >${words.length ? words.join(', ') : say('steps-look-nothing')}</span
        >
      </span>
      <span class="list-end">${icon(isOpen ? 'cross' : 'plus')}</span>
    </button>
    ${isOpen
      ? html`<div class="choices choices-two look-choices" role="group" aria-label=${say('steps-look-group', { position: name })}>
          ${kinds.map(
            (kind) => html`<label class="choice">
              <input
                type="checkbox"
                .checked=${found.includes(kind.id)}
                @change=${() => {
                  seen[id] = found.includes(kind.id)
                    ? found.filter((each) => each !== kind.id)
                    : [...found, kind.id];
                  redraw();
                }}
              />
              <span class="choice-word">${kind.words}</span>
            </label>`,
          )}
        </div>`
      : nothing}
  </li>`;
}

/**
 * @param {LookStep} step
 * @param {Record<string, string[]>} seen
 * @param {string} [note]
 */
function looked(step, seen, note = '') {
  const positions = step.expects.positions.flatMap((/** @type {{id: string}} */ { id }) => {
    const found = seen[id]?.length ? seen[id] : ['nothing'];
    return found.map((each) => ({ position: id, found: each }));
  });
  return { kind: 'looked', data: { positions, note: note.trim() } };
}
