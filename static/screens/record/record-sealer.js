// @ts-check
/**
 * Who makes and seals a record: the server, or, where there is none, this phone.
 */

import { html } from 'lit-html';

import { ApiError } from '../../sync/api.js';
import { HAS_SERVER } from '../../place.js';
import { NoRecord } from '../../record/no-record.js';
import { phoneKey } from '../../record/phone-key.js';

/**
 * @typedef {{file: File, key?: import('../../record/phone-key.js').PhoneKey}} Sealed
 *
 * @typedef {object} Sealer
 * @property {string} busy     while it is being made
 * @property {string} sealed   when it is there
 * @property {() => unknown} about
 * @property {(services: import('../frame/context.js').Services, subject: {unit: string} | {job: string}) => Promise<Sealed>} seal
 * @property {(error: unknown) => string | null} problem  why none was made; null for a fault
 */

/** @type {Sealer} */
const server = {
  busy: 'The server seals it',
  sealed: 'Sealed by the server',
  about: () => html`<p class="lead">
      For a parts counter that does not use this server. It holds whole jobs: the entries, the tests and the pictures.
      Of any other job nothing can be read in it.
    </p>
    <p>The server seals it, so that every later change shows. It can be opened with any program that unpacks zip files.</p>`,
  async seal({ sync }, subject) {
    await sync.now();
    return { file: await sync.api.record('unit' in subject ? subject.unit : subject.job) };
  },
  problem(error) {
    if (!(error instanceof ApiError)) return null;
    return error.kind === 'unreachable'
      ? 'Only the server can seal a record, and it cannot be reached now. Try again when it can.'
      : error.sentence;
  },
};

/** @type {Sealer} */
const phone = {
  busy: 'Making it',
  sealed: 'Sealed by this phone',
  about: () => html`<p class="lead">
      For a parts counter. It holds whole jobs: the entries, the tests and the pictures. Of any other job nothing can be
      read in it.
    </p>
    <p>
      This phone seals it with a key of its own, so that every later change shows. Whoever has this app can check it; it
      can also be opened with any program that unpacks zip files.
    </p>`,
  async seal(services, subject) {
    const key = await phoneKey(services.store);
    // Hardly ever wanted, and never where there is a server.
    const { makeRecord } = await import('../../record/make-record.js');
    return { file: await makeRecord(services, key, subject), key };
  },
  problem: (error) => (error instanceof NoRecord ? error.sentence : null),
};

export const sealer = HAS_SERVER ? server : phone;
