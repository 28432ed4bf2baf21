// @ts-check
/**
 * Which language the app speaks on this phone. What is recorded is the same in each, so a yard may mix them.
 */

import { html, nothing } from 'lit-html';
import { live } from 'lit-html/directives/live.js';

import { LOG_LOCK, withLock } from '../../phone/locks.js';
import { chooseLanguage, chosenLanguage, fetchLanguage, languages, say, wantedLanguage } from '../../words/words.js';

/** Why a language could not be had, by the visit of the screen. @type {WeakMap<object, string>} */
const lacking = new WeakMap();

/** @param {import('../frame/context.js').Context} ctx */
export function languageChoice(ctx) {
  const choices = [{ id: '', name: say('you-language-phone') }, ...languages()];
  // It is kept in this page alone, and the page would go.
  const lacks = lacking.get(ctx.data);
  const unsaved = ctx.services.log.unsaved.value !== null;
  return html`<fieldset class="asked" ?disabled=${unsaved}>
    <legend class="asked-words">${say('you-language-heading')}</legend>
    <div class="choices choices-two">
      ${choices.map(
        ({ id, name }) => html`<label class="choice">
          <input type="radio" name="language" .checked=${live(chosenLanguage() === id)} @change=${() => change(ctx, id)} />
          <span class="choice-word" lang=${id || nothing}>${name}</span>
        </label>`,
      )}
    </div>
    ${lacks ? html`<p class="field-fault" role="alert">${lacks}</p>` : nothing}
  </fieldset>`;
}

/**
 * The page is loaded anew: while the log is locked no tab of this app writes a fact.
 * @param {import('../frame/context.js').Context} ctx
 * @param {string} chosen  empty to follow the phone
 */
async function change(ctx, chosen) {
  const next = wantedLanguage(chosen);
  if (!(await fetchLanguage(next))) {
    const name = languages().find(({ id }) => id === next)?.name ?? next;
    // A server has no words of the build before any more.
    const why = ctx.services.update.ready.value ? say('you-language-after') : say('you-language-lacks', { language: name });
    lacking.set(ctx.data, why);
    ctx.redraw();
    return;
  }
  await withLock(LOG_LOCK, async () => {
    await ctx.services.drafts.flush();
    chooseLanguage(chosen);
    location.reload();
  });
}
