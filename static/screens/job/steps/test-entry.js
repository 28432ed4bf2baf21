// @ts-check
/**
 * What the self-test said: was its sounder heard, which positions show a fault, and what else the
 * screen tells. Nothing is on record before the sentence at the end has been read and tapped.
 */

import { html, nothing } from 'lit-html';

import { board } from '../../../shapes/board.js';
import { say } from '../../../words/words.js';
import { capture, photoTaken } from '../../scan/capture.js';
import { helpLink } from '../../frame/help-link.js';
import { to } from '../../frame/router.js';
import { sentenceCase } from '../../frame/sentence-case.js';
import { codeFields, codesOf } from './test-codes.js';

/** @typedef {import('../../../core/views.js').TestStep} TestStep */

/** A tap on a position goes on to the next of these. */
const NEXT = { clean: 'fault', fault: 'silent', silent: 'clean' };
/** Nothing is expected where nothing sits, so the first tap is the fault there too. */
const NEXT_EMPTY = { silent: 'fault', fault: 'clean', clean: 'silent' };
const MARKS = { clean: 'clean', fault: 'fault', silent: 'untested' };
const WORDS = { clean: 'steps-test-clean', fault: 'steps-test-fault', silent: 'steps-test-silent' };

/** @param {import('./step-context.js').StepContext<TestStep>} ctx @returns {import('../job.js').StepParts} */
export function testEntryStep(ctx) {
  const { form, act } = ctx;
  begin(ctx);
  const screen = capture(ctx, { words: say('steps-test-guide'), alt: say('steps-test-screen') });
  if (screen.state === 'open') {
    return {
      bare: true,
      body: html`<h1>${say('steps-test-photograph')}</h1>${screen.body}`,
      main: { words: say('steps-test-take'), run: screen.take },
      second: { words: say('steps-test-back'), run: screen.close },
    };
  }
  const { photo } = screen;
  const drafts = photo ? [testRun(ctx), photoTaken(photo, { shows: 'screen' })] : [testRun(ctx)];
  return {
    body: html`${form.heard === undefined ? helpLink(to.stepHelp(ctx.job, 'self-test'), say('steps-test-help')) : nothing}
    ${soundQuestion(ctx)} ${form.heard ? readings(ctx) : nothing}
    ${form.heard === undefined ? nothing : html`${more(ctx, screen)} ${summary(ctx)}`}`,
    main: {
      words: form.heard === false ? say('steps-test-record-aside') : say('steps-test-record'),
      disabled: form.heard === undefined,
      run: () => act(drafts, { photo: photo ?? undefined }),
    },
    second: ctx.step.second?.events.length ? undefined : null,
  };
}

/** Fill what the form starts from. @param {import('./step-context.js').StepContext<TestStep>} ctx */
function begin({ form, step }) {
  if (form.readings) return;
  form.readings = Object.fromEntries(
    step.expects.positions.map((/** @type {{id: string}} */ { id }) => [id, isEmpty(step, id) ? 'silent' : 'clean']),
  );
  form.unplugged = step.expects.unplugged;
  // A plug that is off shows as a fault wherever the test is watching.
  for (const id of form.unplugged) form.readings[id] = 'fault';
  form.codes = {};
}

/** @param {import('./step-context.js').StepContext<TestStep>} ctx */
function soundQuestion({ form, step, redraw }) {
  const { question, yes, no } = step.expects.asks;
  const answer = (/** @type {boolean} */ heard, /** @type {string} */ words, /** @type {string} */ note) => html`<label
    class="choice"
  >
    <input
      type="radio"
      name="heard"
      .checked=${form.heard === heard}
      @change=${() => {
        form.heard = heard;
        redraw();
      }}
    />
    <span class="choice-word">${words}</span>
    <span class="choice-note">${note}</span>
  </label>`;
  return html`<fieldset class="asked">
    <legend class="asked-words">${question}</legend>
    <div class="choices choices-two">
      ${answer(true, say('steps-test-yes'), yes)} ${answer(false, say('steps-test-no'), no)}
    </div>
  </fieldset>`;
}

/** @param {import('./step-context.js').StepContext<TestStep>} ctx */
function readings(ctx) {
  const { form, step, view, redraw } = ctx;
  const positions = view.board.positions.map((position) => {
    const reading = /** @type {'clean' | 'fault' | 'silent'} */ (form.readings[position.id]);
    if (isEmpty(step, position.id)) {
      const word = reading === 'silent' ? say('steps-test-empty') : say('steps-test-empty-but', { reading: say(WORDS[reading]) });
      return { ...position, mark: reading === 'silent' ? 'empty' : MARKS[reading], word };
    }
    const said = say(WORDS[reading]);
    const word = form.unplugged.includes(position.id) ? say('steps-test-unplugged', { reading: said }) : said;
    return { ...position, photo: '', mark: MARKS[reading], word };
  });
  return html`<section class="asked">
    <h2 class="asked-words">${say('steps-test-which')}</h2>
    <p class="soft">${say('steps-test-which-how')}</p>
    ${board(
      { ...view.board, positions },
      {
        onPick: (id) => {
          const reading = /** @type {'clean' | 'fault' | 'silent'} */ (form.readings[id]);
          form.readings[id] = (isEmpty(step, id) ? NEXT_EMPTY : NEXT)[reading];
          redraw();
        },
      },
    )}
  </section>`;
}

/** @param {import('./step-context.js').StepContext<TestStep>} ctx @param {import('../../scan/capture.js').Capture} screen */
function more(ctx, screen) {
  const { form, redraw } = ctx;
  return html`<div class="checks">
      ${ctx.step.expects.unplugged.map((/** @type {string} */ id) =>
        check(say('steps-test-was-unplugged', { position: positionName(ctx, id) }), form.unplugged.includes(id), (on) => {
          form.unplugged = on ? [...form.unplugged, id] : form.unplugged.filter((/** @type {string} */ each) => each !== id);
          redraw();
        }),
      )}
      ${check(say('steps-test-came-and-went'), Boolean(form.cameAndWent), (on) => {
        form.cameAndWent = on;
        redraw();
      })}
    </div>
    ${form.heard ? codeFields(ctx, named(ctx, 'fault')) : nothing}
    ${screen.photo
      ? html`${screen.body}<button class="small-button" type="button" @click=${screen.again}>${say('steps-test-again')}</button>`
      : html`<button class="small-button wide-button" type="button" @click=${screen.open}>
          ${say('steps-test-photograph')}
        </button>`}
    <details class="more" ?open=${Boolean(form.note)}>
      <summary>${say('steps-test-add-note')}</summary>
      <label class="field">
        <span class="field-name">${say('steps-test-note')}</span>
        <textarea
          rows="2"
          maxlength="500"
          .value=${form.note ?? ''}
          @input=${(/** @type {{target: HTMLInputElement}} */ { target }) => {
            form.note = target.value;
            redraw();
          }}
        ></textarea>
      </label>
    </details>`;
}

/**
 * @param {string} words
 * @param {boolean} on
 * @param {(on: boolean) => void} set
 */
function check(words, on, set) {
  return html`<label class="check">
    <input type="checkbox" .checked=${on} @change=${() => set(!on)} />
    <span>${words}</span>
  </label>`;
}

/** The sentence that is about to be recorded. @param {import('./step-context.js').StepContext<TestStep>} ctx */
function summary(ctx) {
  const { form, step } = ctx;
  const faulted = named(ctx, 'fault').map(({ name }) => name);
  const silent = named(ctx, 'silent').filter(({ id }) => !isEmpty(step, id)).map(({ name }) => name);
  const { number, asks } = step.expects;
  const found = {
    number,
    heard: asks.heard,
    count: faulted.length,
    faulted: { figure: 'and', of: faulted },
    unreported: silent.length ? 'some' : 'none',
    silent: { figure: 'and', of: silent },
  };
  const said = form.heard ? say('steps-test-found', found) : say('steps-test-not-heard', { number, heard: asks.not_heard });
  return html`<section class="panel panel-act" role="status">
    <p class="panel-kicker">${say('steps-test-summary')}</p>
    <p>${form.cameAndWent ? `${said} ${say('steps-test-summary-went')}` : said}</p>
  </section>`;
}

/** @param {import('./step-context.js').StepContext<TestStep>} ctx */
function testRun(ctx) {
  const { form } = ctx;
  const ids = (/** @type {string} */ reading) => (form.heard ? named(ctx, reading).map(({ id }) => id) : []);
  return {
    kind: 'test_run',
    data: {
      heard: form.heard === true,
      faulted: ids('fault'),
      silent: ids('silent'),
      unplugged: [...form.unplugged, ...reportedThoughEmpty(ctx)],
      codes: form.heard ? codesOf(ctx, ids('fault')) : [],
      came_and_went: Boolean(form.cameAndWent),
      note: (form.note ?? '').trim(),
    },
  };
}

/**
 * The positions with a reading, in the order of the board.
 * @param {import('./step-context.js').StepContext<TestStep>} ctx
 * @param {string} reading
 * @returns {Array<{id: string, name: string}>}
 */
function named({ form, step }, reading) {
  return step.expects.positions.filter((/** @type {{id: string}} */ { id }) => form.readings[id] === reading);
}

/** @param {TestStep} step @param {string} id @returns {boolean} */
function isEmpty(step, id) {
  return step.expects.empty.includes(id);
}

/** Where nothing sits, the plug is off: what the test says of it is read so. @param {import('./step-context.js').StepContext<TestStep>} ctx @returns {string[]} */
function reportedThoughEmpty({ form, step }) {
  if (!form.heard) return [];
  return step.expects.empty.filter((/** @type {string} */ id) => form.readings[id] !== 'silent');
}

/** @param {import('./step-context.js').StepContext<TestStep>} ctx @param {string} id */
function positionName({ step }, id) {
  const found = step.expects.positions.find((/** @type {{id: string}} */ each) => each.id === id);
  return sentenceCase(found?.name ?? id);
}
