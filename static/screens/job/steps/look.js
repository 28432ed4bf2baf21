// @ts-check
/**
 * The first look: lamps and what can be seen from outside, on one screen. All as it should be is one tap;
 * whatever is not is tapped where it is.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../../shapes/icons.js';
import { say } from '../../../words/words.js';
import { textField } from '../../frame/field.js';

/** @typedef {import('../../../core/views.js').LookStep} LookStep */
/** @typedef {import('../../../core/views.js').Option} Option */

/** @param {import('./step-context.js').StepContext<LookStep>} ctx @returns {import('../job.js').StepParts} */
export function lookStep(ctx) {
  const { form, step, act } = ctx;
  const { lamps, looked, positions, found } = step.expects;
  /** @type {Record<string, string[]>} */
  const seen = (form.seen ??= {});
  /** @type {Record<string, string>} */
  const shown = (form.lamps ??= {});
  const something =
    Object.values(seen).some((each) => each.length) || lamps.some(({ when, choices }) => (shown[when] ?? choices[0].id) !== choices[0].id);
  return {
    body: html`<ul class="list look-list">
        ${lamps.map((lamp) =>
          row(ctx, {
            id: `lamp ${lamp.when}`,
            title: lamp.heading,
            note: lamp.choices.find(({ id }) => id === (shown[lamp.when] ?? lamp.choices[0].id))?.words ?? '',
            marked: Boolean(shown[lamp.when] && shown[lamp.when] !== lamp.choices[0].id),
            why: lamp.text,
            options: lamp.choices,
            chosen: [shown[lamp.when] ?? lamp.choices[0].id],
            one: true,
            pick: (id) => {
              shown[lamp.when] = id;
              form.open = '';
            },
          }),
        )}
        ${looked
          ? nothing
          : positions.map(({ id, name }) => {
              const mine = seen[id] ?? [];
              const words = found.filter((kind) => mine.includes(kind.id)).map((kind) => kind.words);
              return row(ctx, {
                id,
                title: name,
                note: words.join(', ') || say('steps-look-fine'),
                marked: words.length > 0,
                why: '',
                options: found,
                chosen: mine,
                one: false,
                pick: (kind) => {
                  seen[id] = mine.includes(kind) ? mine.filter((each) => each !== kind) : [...mine, kind];
                },
              });
            })}
      </ul>
      ${something ? textField(ctx, 'note', say('steps-look-note'), { lines: 2, most: 500 }) : nothing}`,
    main: something ? { words: say('steps-look-record'), run: () => act(facts(step, seen, shown, form.note)) } : undefined,
  };
}

/**
 * One line that says what is assumed to be so, and opens to what else it may be.
 * @param {import('./step-context.js').StepContext<LookStep>} ctx
 * @param {{id: string, title: string, note: string, marked: boolean, why: string, options: Option[], chosen: string[], one: boolean,
 *   pick: (id: string) => void}} line
 */
function row({ form, redraw }, { id, title, note, marked, why, options, chosen, one, pick }) {
  const isOpen = form.open === id;
  return html`<li>
    <button
      class="list-row"
      type="button"
      aria-expanded=${isOpen}
      @click=${(/** @type {{currentTarget: HTMLElement}} */ { currentTarget }) => {
        form.open = isOpen ? '' : id;
        redraw();
        // What it opens to stands below it: on a small screen that is below the edge.
        currentTarget.closest('li')?.scrollIntoView({ block: 'nearest' });
      }}
    >
      <span class="list-main">
        <span class="list-title">${title}</span>
        <span class=${marked ? 'list-note list-note-seen' : 'list-note'}>${note}</span>
      </span>
      <span class="list-end">${icon(isOpen ? 'cross' : 'plus')}</span>
    </button>
    ${isOpen
      ? html`${why ? html`<p class="soft">${why}</p>` : nothing}
          <div class="choices look-choices ${one ? '' : 'choices-two'}" role="group" aria-label=${say('steps-look-group', { position: title })}>
            ${options.map(
              (option) => html`<label class="choice">
                <input
                  type=${one ? 'radio' : 'checkbox'}
                  name=${`look ${id}`}
                  .checked=${chosen.includes(option.id)}
                  @change=${() => {
                    pick(option.id);
                    redraw();
                  }}
                />
                <span class="choice-word">${option.words}</span>
              </label>`,
            )}
          </div>`
      : nothing}
  </li>`;
}

/**
 * What was seen, as facts; whatever nobody touched is as it should be.
 * @param {LookStep} step
 * @param {Record<string, string[]>} seen
 * @param {Record<string, string>} shown
 * @param {string} [note]
 */
function facts({ expects: { lamps, looked, positions } }, seen, shown, note = '') {
  const drafts = lamps.map(({ when, choices }) => ({
    kind: 'lamp_checked',
    data: /** @type {Record<string, unknown>} */ ({ when, result: shown[when] ?? choices[0].id, note: '' }),
  }));
  if (looked) return drafts;
  const found = positions.flatMap(({ id }) => (seen[id]?.length ? seen[id] : ['nothing']).map((each) => ({ position: id, found: each })));
  return [...drafts, { kind: 'looked', data: { positions: found, note: note.trim() } }];
}
