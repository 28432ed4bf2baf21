// @ts-check
/**
 * The way out of any screen of a job: to repair, pause, hand over or end it instead.
 */

import { html, nothing } from 'lit-html';

import { icon } from '../../shapes/icons.js';
import { say } from '../../words/words.js';
import { linkTo, to } from '../frame/router.js';

/**
 * Below a screen that stands alone, such as a stop or a camera; nothing once the job is closed.
 * @param {import('../../core/views.js').JobView} view
 */
export function waysLink({ id, ways }) {
  if (!ways) return nothing;
  return html`<nav class="ways" aria-label=${say('job-links')}>
    <a class="link-button" href=${linkTo(to.jobPart(id, 'ways'))}>${icon('more')} ${say('ways-link')}</a>
  </nav>`;
}
