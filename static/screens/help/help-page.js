// @ts-check
/**
 * A page of the help. Opened at a step of a job, its arrow leads back to that step.
 */

import { HELP_INDEX, helpElement, helpPage as read } from './help-pages.js';
import { nowherePage } from '../frame/fault.js';
import { to } from '../frame/router.js';
import { say } from '../../words/words.js';

export const helpPage = {
  /**
   * @param {import('../frame/context.js').Services} _services
   * @param {Record<string, string>} params
   */
  async load(_services, { page = HELP_INDEX }) {
    const found = await read(page);
    return found && { ...found, element: helpElement(found) };
  },

  /** @param {import('../frame/context.js').Context} ctx */
  draw(ctx) {
    if (!ctx.data) return nowherePage.draw(ctx);
    const { name, element } = ctx.data;
    return { title: say('frame-help'), back: leadsBack(name, ctx.params.job), body: element };
  },
};

/**
 * @param {string} name
 * @param {string} [job]
 */
function leadsBack(name, job) {
  if (job) return to.job(job);
  return name === HELP_INDEX ? to.jobs() : to.help();
}
