// @ts-check
/**
 * The parts counter: what waits, and one scan after the other, each with its proposal and one tap.
 *
 * The camera stays on from the first label to the last; a tap on the decision makes it ready for the next.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { textField } from '../frame/field.js';
import { checkRow } from '../frame/file-link.js';
import { helpRow } from '../frame/help-link.js';
import { phoneNotices } from '../phone/phone-notices.js';
import { linkTo, to } from '../frame/router.js';
import { nearLabels } from '../scan/near-labels.js';
import { nothingRead, proposal } from './asking.js';
import { standingWithOthers } from './others.js';
import { otherwiseCard, proposalCard } from './card.js';
import { dayCounts, localDay } from './day.js';
import { decisionButtons, decisionKeys } from './decision-keys.js';
import { serialKey } from './entered.js';
import { handScanner } from './hand-scanner.js';
import { live } from './live.js';
import { queue } from './queue.js';
import { counterSettings, settingsCard } from './settings.js';
import { severalParts } from './several.js';
import { slipsAside } from './slips.js';
import { isWide, station } from './station.js';
import { decided, told, which } from './told.js';
import { workOn } from './work.js';
import { say } from '../../words/words.js';

export const counterPage = {
  /**
   * @param {import('../frame/context.js').Services} services
   * @param {Record<string, string>} params  `code` of a label that the phone's own camera opened, or `unit`
   */
  async load(services, { code: text = '', how = 'scanned', unit = '' }) {
    const { start, end } = localDay();
    const [waiting, today, settings] = await Promise.all([
      services.core.call('waiting'),
      services.core.call('decided', { start, end }),
      counterSettings(services),
    ]);
    return { waiting, today, settings, actor: services.device.actor, ...(await given(services, text, how, unit)) };
  },

  formKey: () => 'counter',

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    if (!ctx.data.actor) return askName(ctx);
    const work = workOn(ctx);
    void work.hand.hear();
    decisionKeys(ctx, (decision) => press(work, decision));
    const parts = partsOf(work);
    const body = isWide(ctx) ? station(work, parts.body) : parts.body;
    return { ...parts, body: html`${body}${handScanner(ctx, work.comingIn.keyed)}` };
  },
};

/** @param {import('./work.js').Work} work */
function partsOf(work) {
  const { ctx } = work;
  if (work.hand.current) return decideParts(work, work.hand.current);
  if (ctx.form.several) return { ...head(ctx), ...severalParts(work) };
  if (ctx.form.mode === 'camera') return { ...head(ctx), ...live(work, nothing), main: null, second: typeButton(work) };
  if (ctx.form.mode === 'type') return typeParts(work);
  return homeParts(work);
}

/**
 * @param {import('../frame/context.js').Services} services
 * @param {string} text
 * @param {string} how
 * @param {string} unit
 */
async function given(services, text, how, unit) {
  if (!text && !unit) return {};
  const asked = { text, unit, how: text ? how : '', read: nothingRead() };
  const answer = await proposal(services, asked);
  return answer.outcome === 'unit' ? { given: { ...asked, answer } } : { told: answer };
}

/** @param {import('../frame/context.js').Context} ctx */
function head({ data, params }) {
  const title = data.today.total ? say('counter-title-today', { count: data.today.total }) : say('counter-title');
  return { title, back: params.code || params.unit ? to.jobs() : '' };
}

/** @param {import('./work.js').Work} work */
function typeButton(work) {
  return { words: say('counter-type'), run: work.type };
}

/**
 * @param {import('./work.js').Work} work
 * @param {import('./asking.js').Current} current
 */
function decideParts(work, { answer }) {
  const { ctx, otherwise } = work.hand;
  if (otherwise) {
    const ready = otherwise.decision && otherwise.reason.trim();
    const word = answer.decisions.find((each) => each.decision === otherwise.decision)?.word;
    const decide = () => {
      if (ready) return work.deciding.decide(otherwise.decision, otherwise.reason.trim());
      return work.hand.enterOtherwise({ asked: true });
    };
    return {
      ...head(ctx),
      key: 'otherwise',
      body: otherwiseCard(work, answer, otherwise),
      main: { words: word ? say('counter-decide-on', { decision: word, code: answer.shown }) : say('counter-decide'), run: decide },
      second: { words: say('counter-as-proposed'), run: work.hand.asProposed },
    };
  }
  const below = html`${isWide(ctx) ? decisionButtons(answer, (decision) => press(work, decision)) : nothing}
    ${proposalCard(work, answer)} ${serialField(work, answer.unit)}
    <div class="ways-row">
      ${answer.waiting
        ? nothing
        : html`<button class="link-button" type="button" @click=${work.deciding.receive}>${say('counter-receive')}</button>`}
      <button class="link-button" type="button" @click=${work.hand.leave}>
        ${answer.waiting ? say('counter-later') : say('counter-leave')}
      </button>
      ${answer.code.includes('@') && answer.against.includes('label')
        ? html`<a class="link-button" href=${linkTo(to.checkRecord())}>${say('frame-check-record')}</a>`
        : nothing}
      ${answer.record_file
        ? html`<button class="link-button" type="button" @click=${work.saveRecord}>${say('counter-record-file')}</button>`
        : nothing}
      ${answer.job
        ? html`<a class="link-button" href=${linkTo(to.unit(answer.unit))}>${say('counter-whole-record')}</a>`
        : nothing}
    </div>`;
  return {
    ...head(ctx),
    ...live(work, below),
    main: { words: say('counter-decide-on', { decision: answer.word, code: answer.shown }), run: () => work.deciding.decide(answer.proposed) },
    second: { words: say('counter-otherwise'), run: () => work.hand.enterOtherwise({}) },
  };
}

/**
 * The serial number as printed on the part, where no symbol can be read.
 * @param {import('./work.js').Work} work
 * @param {string} unit
 */
function serialField(work, unit) {
  const { ctx } = work;
  const key = serialKey(unit);
  const enter = () => {
    const serial = (ctx.form[key] ?? '').trim();
    return serial ? work.comingIn.serial(serial) : undefined;
  };
  return html`<details class="more" ?open=${key in ctx.form}>
    <summary>${say('counter-serial')}</summary>
    <div @keydown=${onEnter(enter)}>${textField(ctx, key, say('counter-serial-field'), { most: 80, capitals: true })}</div>
    <button class="small-button" type="button" @click=${enter}>${say('counter-serial-enter')}</button>
  </details>`;
}

/**
 * A decision by its key, or its button on a wide screen: as proposed at once, otherwise with its reason.
 * @param {import('./work.js').Work} work
 * @param {string} decision
 */
function press(work, decision) {
  const { current, ctx, otherwise } = work.hand;
  if (!current || ctx.busy) return;
  if (decision === current.answer.proposed) void work.deciding.decide(decision);
  else if (otherwise?.decision === decision && otherwise.reason.trim()) void work.deciding.decide(decision, otherwise.reason.trim());
  else {
    work.hand.enterOtherwise({ decision, asked: otherwise?.decision === decision });
    /** @type {HTMLElement | null} */
    const first = document.querySelector('input[name=reason]');
    first?.focus();
  }
}

/** @param {() => unknown} run */
const onEnter = (run) => (/** @type {KeyboardEvent} */ event) => event.key === 'Enter' && run();

/** @param {import('./work.js').Work} work */
function typeParts(work) {
  const { ctx } = work;
  const look = () => {
    const typed = (ctx.form.typed ?? '').trim();
    if (typed) return work.comingIn.take([typed], 'typed');
    ctx.form.told = { title: say('scan-nothing-typed'), sentence: say('scan-nothing-typed-do') };
    return ctx.redraw();
  };
  return {
    ...head(ctx),
    key: 'type',
    body: html`<h1>${say('scan-type')}</h1>
      <div @keydown=${onEnter(look)}>
        ${textField(ctx, 'typed', say('scan-code'), { note: say('scan-code-note'), capitals: true })}
      </div>
      ${nearLabels(ctx, ctx.form.typed ?? '', (text) => work.comingIn.take([text], 'typed'))} ${told(ctx.form.told, work)}
      <div class="ways-row"><button class="link-button" type="button" @click=${work.close}>${say('frame-back')}</button></div>`,
    main: { words: say('counter-look-up'), run: look },
    second: { words: say('scan-use-camera'), run: work.open },
  };
}

/** @param {import('./work.js').Work} work */
function homeParts(work) {
  const { ctx } = work;
  const { waiting, today, told: said } = ctx.data;
  return {
    ...head(ctx),
    key: 'home',
    body: html`
      ${phoneNotices(ctx)} ${told(ctx.form.told ?? said, work)} ${which(work)} ${decided(work)}
      ${standingWithOthers(ctx)} ${slipsAside(ctx)}
      ${isWide(ctx)
        ? html`<h1>${say('counter-scan-lead')}</h1>`
        : html`${queue(work, waiting)}
            <h2 class="list-head">${say('counter-today')}</h2>
            ${dayCounts(today)}`}
      <ul class="list">
        <li><a class="list-row" href=${linkTo(to.returns())}>${icon('list')}<span class="list-main">${say('counter-day-file')}</span><span class="list-end">${icon('forward')}</span></a></li>
        <li><a class="list-row" href=${linkTo(to.search())}>${icon('ask')}<span class="list-main">${say('counter-search-records')}</span><span class="list-end">${icon('forward')}</span></a></li>
        ${checkRow()} ${helpRow()}
      </ul>
      ${settingsCard(ctx)}
    `,
    main: { words: say('counter-scan-returns'), run: work.open },
    second: typeButton(work),
  };
}

/** @param {import('../frame/context.js').Context} ctx */
function askName(ctx) {
  const name = (ctx.form.name ?? '').trim();
  return {
    title: say('counter-title'),
    body: html`<h1>${say('counter-who')}</h1>
      ${textField(ctx, 'name', say('counter-your-name'), { note: say('counter-your-name-note'), most: 80, autocomplete: 'name' })}`,
    main: {
      words: say('counter-sign'),
      disabled: !name,
      run: async () => {
        await ctx.services.device.setActor(name);
        await ctx.reload();
      },
    },
  };
}
