// @ts-check
/**
 * Pages through entries in both directions: sends what the server lacks, stores what the phone lacks, and starts
 * over where the two turn out to know different pasts.
 */

import { isInstalled } from '../log/device.js';
import { startNewDevice } from '../log/fork.js';
import { hasLostKey, proofsOf } from '../log/proofs.js';
import { makingRoom } from '../log/space.js';
import { forgetNumbers, isSound, serverWentBack, storeReply } from './received.js';
import { ApiError } from './request.js';
import { say } from '../words/words.js';

const BATCH_EVENTS = 200;
const BATCH_CHARACTERS = 1_000_000;
const MOST_STARTS = 3;
/** While years of work come in, the list grows; but each time all that is there may be folded. */
const FOLD_EVERY_MS = 3000;
/** So much longer than folding takes is waited until the next time. */
const REST = 4;

/** The entries of one phone and its server. */
export class EventExchange {
  /**
   * @param {object} parts
   * @param {import('../log/store.js').Store} parts.store
   * @param {import('../log/log.js').EventLog} parts.log
   * @param {import('../log/device.js').Device} parts.device
   * @param {import('./api.js').ServerApi} parts.api
   * @param {() => string} parts.build  this page's build id, empty while it is not known
   */
  constructor({ store, log, device, api, build }) {
    this.#store = store;
    this.#log = log;
    this.#device = device;
    this.#api = api;
    this.#build = build;
  }

  #store;
  #log;
  #device;
  #api;
  #build;
  /** Entries that came in and are not folded, and rows about phones that the core has not heard. */
  #received = 0;
  #nextFoldAt = 0;

  /**
   * Page until neither side has more.
   * @param {() => Promise<unknown>} onPage  hears of each page that is stored
   * @returns {Promise<import('./received.js').Reply>} the last one: it tells which photos the server lacks
   */
  async run(onPage) {
    this.#received = 0;
    this.#nextFoldAt = Date.now() + FOLD_EVERY_MS;
    try {
      return await this.#pages(onPage);
    } finally {
      await this.#fold();
    }
  }

  /**
   * @param {() => Promise<unknown>} onPage
   * @returns {Promise<import('./received.js').Reply>}
   */
  async #pages(onPage) {
    let sentUpTo = 0;
    let startedOver = 0;
    if (await hasLostKey(this.#store, this.#device.id)) await startNewDevice(this.#store, this.#device, { as: 'renewed' });
    for (;;) {
      const batch = await this.#batch(sentUpTo);
      if (!sentUpTo) await this.#layBy(batch);
      const reply = await this.#post(batch);
      const startOver = reply === 'not ours' ? 'forked' : await this.#take(reply);
      if (startOver) {
        startedOver += 1;
        if (startedOver > MOST_STARTS) {
          throw new ApiError('untrusted', say('troubles-no-agreement'));
        }
        await this.#startOver(startOver);
        sentUpTo = 0;
      } else if (reply !== 'not ours') {
        // What is said of phones may speak of entries that are here already.
        this.#received += reply.events.length + (reply.phones?.length ?? 0);
        if (Date.now() > this.#nextFoldAt) await this.#fold();
        await onPage();
        sentUpTo = batch[batch.length - 1]?.unsent ?? sentUpTo;
        if (!reply.more && !(await this.#batch(sentUpTo)).length) return reply;
      }
    }
  }

  /** @param {'went back' | 'forked'} why */
  async #startOver(why) {
    if (why === 'forked') await startNewDevice(this.#store, this.#device);
    else await forgetNumbers(this.#store);
    await this.#log.catchUp();
  }

  async #fold() {
    if (!this.#received) return;
    this.#received = 0;
    const begun = Date.now();
    await this.#log.catchUp();
    this.#nextFoldAt = Date.now() + Math.max(FOLD_EVERY_MS, REST * (Date.now() - begun));
  }

  /**
   * What one batch does not hold of other phones' chains goes ahead as proof alone: their signatures cover chains that
   * are whole. Then all is sent in its order.
   * @param {import('../log/store.js').StoredEvent[]} batch  the first one
   */
  async #layBy(batch) {
    for (let first = true; batch.length; first = false) {
      const next = await this.#batch(batch[batch.length - 1].unsent ?? 0);
      if (first && !next.length) return;
      const brought = batch.filter(({ own }) => !own);
      if (brought.length) await this.#post(brought, true);
      batch = next;
    }
  }

  /**
   * @param {import('../log/store.js').StoredEvent[]} batch
   * @param {boolean} [onlyProve]  nothing of it goes into the log yet
   * @returns {Promise<import('./received.js').Reply | 'not ours'>}  the latter: another phone uses our id
   */
  async #post(batch, onlyProve = false) {
    const { id } = this.#device;
    const proofs = await proofsOf(this.#store, id, batch);
    const certified = proofs.certificates?.map(({ device }) => device) ?? [];
    const cursor = (await this.#store.getMeta('cursor')) ?? 0;
    const epoch = (await this.#store.getMeta('installation')) ?? '';
    const { upto = 0 } = (await this.#store.getMeta('phones')) ?? {};
    const labelsOut = (await this.#store.getMeta('labels_out')) ?? [];
    const labelsUpTo = (await this.#store.getMeta('labels_out_upto')) ?? 0;
    const people = await this.#device.people();
    const last = await this.#store.withDb((db) => db.getFromIndex('events', 'n', cursor));
    try {
      const reply = await this.#api.post('/api/sync', {
        app: this.#build(),
        v: 1,
        device: id,
        cursor,
        // A server whose log is another one sees it by this, also where that log is the longer one.
        seen: {
          epoch,
          hash: last?.hash ?? '',
          received_at: last?.received_at ?? null,
          signature: (await this.#store.getMeta('place_signature')) ?? '',
        },
        ...(onlyProve ? { only_prove: true } : {}),
        ...proofs,
        phones: upto,
        labels_out: labelsOut.length,
        labels_out_upto: labelsUpTo,
        people,
        storage: { promised: this.#device.kept.value ?? null, installed: isInstalled() },
        // What another phone could not send itself claims no identity for this one, nor does what an earlier key signed.
        events: batch.map(({ event, hash, own, device }) => ({
          event,
          hash,
          ...(own && (device === id || !certified.includes(device)) ? {} : { relayed: true }),
        })),
      });
      if (await isSound(reply)) return reply;
    } catch (error) {
      const taken = error instanceof ApiError && error.status === 403 && error.field === 'device';
      if (taken) return 'not ours';
      throw error;
    }
    throw new ApiError('untrusted', say('troubles-damaged-answer'));
  }

  /**
   * Store a reply, unless it shows that phone and server have to start over.
   * @param {import('./received.js').Reply} reply
   * @returns {Promise<'' | 'went back' | 'forked'>}
   */
  async #take(reply) {
    if (await serverWentBack(this.#store, reply)) return 'went back';
    const { forked } = await makingRoom(this.#store, () => storeReply(this.#store, reply));
    return forked ? 'forked' : '';
  }

  /**
   * The unsent events after a place, as many as one request may carry.
   * @param {number} after
   * @returns {Promise<import('../log/store.js').StoredEvent[]>}
   */
  async #batch(after) {
    for (;;) {
      const range = IDBKeyRange.lowerBound(after, true);
      const entries = await this.#store.withDb((db) => db.getAllFromIndex('events', 'unsent', range, BATCH_EVENTS));
      // The server has these and keeps them apart, until a person decides.
      const waiting = entries.filter(({ refused }) => refused?.code !== 'unproven');
      if (waiting.length || entries.length < BATCH_EVENTS) return fitting(waiting);
      after = entries[entries.length - 1].unsent;
    }
  }
}

/**
 * As many as one request may carry.
 * @param {import('../log/store.js').StoredEvent[]} entries
 */
function fitting(entries) {
  let characters = 0;
  const over = entries.findIndex((entry) => {
    characters += JSON.stringify(entry.event).length + 100;
    return characters > BATCH_CHARACTERS;
  });
  return over < 0 ? entries : entries.slice(0, Math.max(1, over));
}
