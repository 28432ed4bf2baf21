// @ts-check
/**
 * Who makes and seals a record: the server, or, where there is none, this phone.
 */

import { html } from 'lit-html';

import { ApiError } from '../../sync/request.js';
import { HAS_SERVER } from '../../place.js';
import { NoRecord } from '../../record/no-record.js';
import { phoneKey } from '../../log/phone-key.js';
import { say } from '../../words/words.js';

/**
 * @typedef {{file: File, smaller: number, roomless: number, key?: import('../../log/phone-key.js').PhoneKey}} Sealed
 *
 * @typedef {object} Sealer
 * @property {() => string} busy     while it is being made
 * @property {() => string} sealed   when it is there
 * @property {() => unknown} about
 * @property {(services: import('../frame/context.js').Services, subject: {unit: string} | {job: string}, smaller: boolean) => Promise<Sealed>} seal
 *     smaller: pictures without room go in as smaller versions
 * @property {(error: unknown) => string | null} problem  why none was made; null for a fault
 */

/** @type {Sealer} */
const server = {
  busy: () => say('sealed-server-busy'),
  sealed: () => say('sealed-server-sealed'),
  about: () => html`<p class="lead">
      ${say('sealed-server-lead')}
    </p>
    <p>${say('sealed-server-seal')}</p>`,
  async seal({ sync }, subject, smaller) {
    await sync.now();
    return sync.api.record('unit' in subject ? subject.unit : subject.job, smaller);
  },
  problem(error) {
    if (!(error instanceof ApiError)) return null;
    return error.kind === 'unreachable'
      ? say('sealed-server-unreachable')
      : error.sentence;
  },
};

/** @type {Sealer} */
const phone = {
  busy: () => say('sealed-phone-busy'),
  sealed: () => say('sealed-phone-sealed'),
  about: () => html`<p class="lead">
      ${say('sealed-phone-lead')}
    </p>
    <p>
      ${say('sealed-phone-seal')}
    </p>`,
  async seal(services, subject, smaller) {
    const key = await phoneKey(services.store);
    // Hardly ever wanted, and never where there is a server.
    const { makeRecord } = await import('../../record/make-record.js');
    return { ...(await makeRecord(services, key, subject, smaller)), key };
  },
  problem: (error) => (error instanceof NoRecord ? error.sentence : null),
};

export const sealer = HAS_SERVER ? server : phone;
