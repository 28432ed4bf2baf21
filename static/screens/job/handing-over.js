// @ts-check
/**
 * A job handed over: who works on is asked and put on record; then how their phone comes to it.
 */

import { html, nothing } from 'lit-html';

import { HAS_SERVER, ROOT } from '../../place.js';
import { labelQr } from '../../shapes/label-qr.js';
import { say } from '../../words/words.js';
import { ask } from '../frame/ask.js';
import { textField } from '../frame/field.js';
import { oneOf } from '../frame/one-of.js';
import { linkTo, to } from '../frame/router.js';
import { sentence } from '../frame/sentence.js';

/** @typedef {import('../../core/views.js').JobView} JobView */
/** @typedef {import('../../core/views.js').WaysView} WaysView */
/** @typedef {import('../frame/context.js').Context} Context */

/** More names are no quicker to tap than one is to type. */
const MOST_PEOPLE = 8;
/** Chosen where nobody of those on record works on. */
const OTHER = '';

/**
 * @param {Context} ctx
 * @param {WaysView['hand']} hand
 * @param {import('../frame/frame.js').Button} back
 */
export function handing(ctx, hand, back) {
  const { form } = ctx;
  const others = ask(ctx, 'people', {})?.value ?? [];
  const people = [...new Set([...hand.people, ...others])].filter((name) => name !== ctx.services.device.actor).slice(0, MOST_PEOPLE);
  const named = people.includes(form.person);
  const typed = (form.name ?? '').trim();
  const fault = form.asked && !named && !typed ? say('ways-hand-name-wanted') : '';
  const pick = (/** @type {string} */ id) => {
    form.person = id;
    form.asked = false;
    ctx.redraw();
  };
  const save = () => {
    const person = named ? form.person : typed;
    if (!person) {
      form.asked = true;
      return ctx.redraw();
    }
    const note = (form.note ?? '').trim();
    return ctx.act([{ ...hand.event, data: { ...hand.event.data, to: person, note } }], {
      after: () => {
        ctx.forget();
        ctx.go(to.way(ctx.data.id, 'handed'), { replace: true });
      },
    });
  };
  return {
    body: html`<h1>${say('ways-hand')}</h1>
      <p class="lead">${sentence(hand.text)}</p>
      ${people.length
        ? oneOf({
            name: 'person',
            label: say('ways-hand-people'),
            options: [...people.map((name) => ({ id: name, words: name })), { id: OTHER, words: say('ways-hand-other') }],
            chosen: form.person,
            pick,
          })
        : nothing}
      ${named ? nothing : textField(ctx, 'name', say('ways-hand-name'), { most: 80, fault })}
      ${textField(ctx, 'note', say('ways-note'), { lines: 2, most: 500 })}`,
    main: { words: say('ways-hand-save'), run: save },
    second: back,
  };
}

/**
 * What the other phone needs: nothing but its next exchange; a look at this screen; or a file.
 * @param {Context} ctx
 * @param {JobView} view
 */
export function handedOver(ctx, view) {
  const person = view.handed?.to ?? '';
  return {
    body: html`<h1>${say('ways-handed', { to: person })}</h1>
      ${HAS_SERVER
        ? html`<p class="lead">${say('ways-handed-sent')}</p>
            <p>${say('ways-handed-scan', { to: person })}</p>
            <div class="handed-qr">${labelQr(ROOT.href + to.job(view.id), say('ways-handed-qr'))}</div>
            <a class="link-button" href=${linkTo(to.you())}>${say('ways-handed-no-phone')}</a>`
        : html`<p class="lead">${say('ways-handed-file-note')}</p>
            <a class="link-button" href=${linkTo(to.file())}>${say('ways-handed-file')}</a>`}`,
    main: { words: say('frame-show-jobs'), run: () => ctx.go(to.jobs()) },
    second: { words: say('job-go-on'), run: () => ctx.go(to.job(view.id)) },
  };
}
