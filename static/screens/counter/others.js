// @ts-check
/**
 * The other counters of a chain: what they have decided, through this phone's server, which asks their register.
 *
 * Nothing here waits long: without an answer the counter decides on its own record, and says so.
 */

import { html, nothing } from 'lit-html';

import { mark } from '../../shapes/marks.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';
import { say } from '../../words/words.js';

/**
 * @typedef {{place: string, decision: string, settled: boolean, at: number}} Elsewhere
 * @typedef {{asked: boolean, found: Elsewhere[]}} Heard   what other counters have; `asked` is false where nobody could be asked
 * @typedef {{asked: boolean, waiting: number, contradictions: Array<{unit: string, title: string, sentence: string}>}} Standing
 */

const NOT_ASKED = /** @type {Heard} */ ({ asked: false, found: [] });
/** A little longer than the server waits for the register itself. */
const ANSWER_MS = 2500;

/** A screen that stands open asks again so much later: nobody has to touch it to learn of a contradiction. */
const AGAIN_MS = 15_000;

/** The load of the first screen that is asked for. @type {object | null} */
let askedFor = null;

/**
 * What other counters have of a unit; null where this yard shares no register.
 * @param {import('../frame/context.js').Services} services
 * @param {import('./asking.js').CounterCard} answer
 * @returns {Promise<Heard | null>}
 */
export async function heardOf({ device, sync }, { keys, part, read }) {
  if (!device.asksOthers) return null;
  if (!keys.length) return { asked: true, found: [] };
  return inTime(sync.api.post('/api/register/ask', { keys, part: read.part || part }));
}

/**
 * Begin to accept a unit: it is this counter's where nothing is found. Null where no other counter has a say.
 * @param {import('../frame/context.js').Services} services
 * @param {import('./asking.js').CounterCard} answer
 * @returns {Promise<Heard | null>}
 */
export async function claim({ device, sync }, { keys, part, read, unit }) {
  if (!device.asksOthers || !keys.length) return null;
  return inTime(sync.api.post('/api/register/claim', { keys, part: read.part || part, unit }));
}

/**
 * Give back what was begun and not recorded. What does not arrive stays begun: others hold the part until then.
 * @param {import('../frame/context.js').Services} services
 * @param {string} unit
 */
export async function release({ device, sync }, unit) {
  if (device.asksOthers) await inTime(sync.api.post('/api/register/release', { unit }));
}

/**
 * What contradicts this counter's decisions, on its first screen; asked for as long as that is shown.
 * @param {import('../frame/context.js').Context} ctx
 */
export function standingWithOthers(ctx) {
  const { services, data, form } = ctx;
  if (!services.device.asksOthers) return nothing;
  if (askedFor !== data) {
    askedFor = data;
    void askHowItStands(ctx);
  }
  /** @type {Standing | undefined} */
  const others = form.others;
  if (!others) return nothing;
  return html`${others.contradictions.map(
    (each) => html`<section class="panel panel-ask" role="alert">
      <p>${mark('fault', { word: each.title })}</p>
      <p>${sentence(each.sentence)}</p>
      <div class="ways-row"><a class="link-button" href=${linkTo(to.returns())}>${say('counter-day-file')}</a></div>
    </section>`,
  )}
  ${others.asked ? nothing : html`<p class="lead">${mark('untested', { word: say('counter-others-not-asked') })}</p>`}
  ${others.waiting ? html`<p class="list-note">${say('counter-others-waiting', { count: others.waiting })}</p>` : nothing}`;
}

/** @param {import('../frame/context.js').Context} ctx  of a drawing of the first screen */
async function askHowItStands(ctx) {
  const { services, data, form } = ctx;
  const none = { asked: false, waiting: 0, contradictions: form.others?.contradictions ?? [] };
  const standing = await inTime(services.sync.api.get('/api/register'), none);
  if (JSON.stringify(standing) !== JSON.stringify(form.others)) {
    form.others = standing;
    ctx.redraw();
  }
  const again = () => {
    const isShown = askedFor === data && document.querySelector('[data-takes-codes]');
    if (!isShown) return;
    if (document.hidden) setTimeout(again, AGAIN_MS);
    else void askHowItStands(ctx);
  };
  setTimeout(again, AGAIN_MS);
}

/**
 * @template T
 * @param {Promise<T>} answer
 * @param {any} [otherwise]  where none comes in time
 * @returns {Promise<T>}
 */
async function inTime(answer, otherwise = NOT_ASKED) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;
  const late = new Promise((done) => {
    timer = setTimeout(done, ANSWER_MS, otherwise);
  });
  try {
    return await Promise.race([answer, late]);
  } catch {
    return otherwise;
  } finally {
    clearTimeout(timer);
  }
}
