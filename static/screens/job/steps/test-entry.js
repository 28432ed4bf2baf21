// @ts-check
/**
 * What the self-test said. Where the situation suggests answers, each is one tap: the fault went along,
 * stayed, is gone. Else, and behind 'something else', the board: which positions show a fault, or that none
 * does, and what else the screen tells. A clean test is said, never left blank.
 */

import { html, nothing } from 'lit-html';

import { board } from '../../../shapes/board.js';
import { say } from '../../../words/words.js';
import { capture, photoTaken } from '../../scan/capture.js';
import { openSeries } from '../../scan/shutter.js';
import { typedField } from '../../frame/field.js';
import { helpLink } from '../../frame/help-link.js';
import { readRarePages } from '../../frame/read-late.js';
import { to } from '../../frame/router.js';
import { sentenceCase } from '../../frame/sentence-case.js';
import { afterProvoking, provokedField } from './provoked.js';
import { answers } from './test-answers.js';

/** @typedef {import('../../../core/views.js').TestStep} TestStep */

/** What codes are entered with, once somebody has opened it. @type {typeof import('../../rare-pages.js') | null} */
let codes = null;

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
      main: screen.shutter(say('steps-test-take')),
      second: { words: say('steps-test-back'), run: screen.close },
    };
  }
  if (ctx.step.choices.length && !form.whole) return answers(ctx);
  const { photo } = screen;
  const record = async (/** @type {boolean} */ heard) => {
    if (Object.keys(form.codes).length && !(await readCodes(ctx))) return;
    form.heard = heard;
    if (heard) openSeries(`photo ${ctx.job}`);
    const test = afterProvoking(ctx, testRun(ctx));
    const drafts = photo ? [test, photoTaken(photo, { shows: 'screen' })] : [test];
    await act(drafts, { photo: photo ?? undefined });
  };
  const said = form.none || named(ctx, 'fault').length > 0 || form.unplugged.length > 0;
  return {
    body: html`${provokedField(ctx)} ${readings(ctx)} ${said ? summary(ctx) : nothing} ${more(ctx, screen)}
    ${said ? nothing : helpLink(to.stepHelp(ctx.job, 'self-test'), say('steps-test-help', { sort: ctx.view.sort }))}`,
    main: said
      ? { words: say('steps-test-record', { proof: ctx.step.expects.asks.heard }), run: () => record(true) }
      : { words: say('steps-test-first'), disabled: true, run: () => {} },
    second: { words: say('steps-test-not-heard-button', { proof: ctx.step.expects.asks.not_heard }), run: () => record(false) },
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
  form.none = false;
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
    ${board(
      { ...view.board, positions },
      {
        quiet: 'units',
        onPick: (id) => {
          const reading = /** @type {'clean' | 'fault' | 'silent'} */ (form.readings[id]);
          form.readings[id] = (isEmpty(step, id) ? NEXT_EMPTY : NEXT)[reading];
          form.none = false;
          redraw();
        },
      },
    )}
    ${named(ctx, 'fault').length
      ? nothing
      : html`<div class="checks">
          ${check(say('steps-test-none'), Boolean(form.none), (on) => {
            form.none = on;
            redraw();
          })}
        </div>`}
  </section>`;
}

/** @param {import('./step-context.js').StepContext<TestStep>} ctx @param {import('../../scan/capture.js').Capture} screen */
function more(ctx, screen) {
  const { form, step, redraw } = ctx;
  const open = Boolean(form.note || form.cameAndWent || screen.photo || form.unplugged.length || Object.keys(form.codes).length);
  return html`<details class="more" ?open=${open}>
      <summary>${say('steps-test-more')}</summary>
      <div class="screen-stack">
        <p class="soft">${say('steps-test-which-how')}</p>
        <div class="checks">
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
        ${step.expects.codes ? codesPart(ctx) : nothing}
        ${screen.photo
          ? html`${screen.body}<button class="small-button" type="button" @click=${screen.again}>${say('steps-test-again')}</button>`
          : html`<button class="small-button wide-button" type="button" @click=${screen.open}>${say('steps-test-photograph')}</button>`}
        ${typedField(
          say('steps-test-note'),
          form.note ?? '',
          (note) => {
            form.note = note;
            redraw();
          },
          { lines: 2 },
        )}
      </div>
    </details>`;
}

/**
 * Read what codes are entered with; tells whether it is there.
 * @param {import('./step-context.js').StepContext<TestStep>} ctx
 */
async function readCodes(ctx) {
  try {
    codes ??= await readRarePages();
    ctx.form.codesFault = '';
  } catch {
    ctx.form.codesFault = say('frame-screen-missing');
  }
  ctx.redraw();
  return codes !== null;
}

/** The codes, one optional part of the form. @param {import('./step-context.js').StepContext<TestStep>} ctx */
function codesPart(ctx) {
  const { form } = ctx;
  const opened = (/** @type {{target: HTMLDetailsElement}} */ { target }) => {
    if (target.open && !codes) readCodes(ctx);
  };
  return html`<details class="more" ?open=${Object.keys(form.codes).length} @toggle=${opened}>
    <summary>${say('steps-codes-enter')}</summary>
    <div class="screen-stack">
      ${codes ? codes.codeFields(ctx, named(ctx, 'fault')) : html`<p class="field-fault" role="status">${form.codesFault ?? ''}</p>`}
    </div>
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
  const said = say('steps-test-found', found);
  return html`<section class="panel panel-act" role="status">
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
      ...(form.heard && codes ? codes.codesOf(ctx, ids('fault')) : { codes: [] }),
      came_and_went: Boolean(form.cameAndWent),
      note: (form.note ?? '').trim(),
      knows: ctx.view.knows,
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
