// @ts-check
/**
 * A record from elsewhere: verified by the server, or on this phone where there is none, then folded by
 * itself in a core of its own, so that nothing of it ever gets into this phone's log or state.
 */

import { CannotTell } from '../log/phone-key.js';
import { ApiError } from '../sync/request.js';
import { Core } from '../core/client.js';
import { HAS_SERVER } from '../place.js';
import { pictureKind, pictureSize } from '../photos/picture-file.js';
import { say } from '../words/words.js';

const MOST_BYTES = 48 * 1024 * 1024; // what the server takes
const MOST_PIXELS = 16_777_216; // of a photo that a server takes; whoever seals a record may put anything in its place

/** A file that cannot be shown as a record; `title` and `sentence` are for the person. */
export class RecordProblem extends Error {
  /**
   * @param {'altered' | 'cut' | 'none' | 'later'} kind  `later`: the same file may do when tried again
   * @param {string} title
   * @param {string} sentence
   */
  constructor(kind, title, sentence) {
    super(sentence);
    this.name = 'RecordProblem';
    this.kind = kind;
    this.title = title;
    this.sentence = sentence;
  }
}

/**
 * @typedef {{name: string, how: string, by: string, at: number}} Confirmed   whose a seal is, and who found out how
 *
 * @typedef {object} ForeignRecord
 * @property {any} answer   what the server found: who made it, when, of what
 * @property {any} view     what the core makes of it: `unit`, `jobs`, `compared`; of a sensor also what it is evidence of, `weighed`
 * @property {File} file
 * @property {{url: (sha256: string) => Promise<string | null>, absent: string, note: (sha256: string) => string}} photos
 * @property {() => void} close
 */

/**
 * Verify and fold a file; throws RecordProblem.
 * @param {import('../screens/frame/context.js').Services} services
 * @param {File} file
 * @returns {Promise<ForeignRecord>}
 */
export async function openForeignRecord({ sync, store, device }, file) {
  if (file.size > MOST_BYTES) {
    throw new RecordProblem('none', say('troubles-record-none'), say('troubles-record-larger', { file: file.name }));
  }
  const core = await Core.start();
  try {
    if (!core.available) throw new RecordProblem('later', say('troubles-record-not-here'), core.trouble.value.sentence);
    const answer = intact(HAS_SERVER ? await askedServer(sync.api, file) : await checkedHere({ core, store }, file));
    const drawn = await drawable(file, answer.photos);
    return { answer, view: await folded(core, answer, device.returnDays, drawn), file, ...picturesOf(file, answer, drawn) };
  } finally {
    core.stop();
  }
}

/**
 * Keep whose the seal of a record is, once a person has compared its fingerprint: where the records are checked.
 * @param {import('../screens/frame/context.js').Services} services
 * @param {ForeignRecord} record
 * @param {{name: string, how: string}} given
 */
export async function confirmMaker({ sync, store, device }, { answer: { maker } }, { name, how }) {
  const { fingerprint } = maker;
  maker.confirmed = HAS_SERVER
    ? await sync.api.post('/api/records/makers', { fingerprint, name, how })
    : await (await import('./check-here.js')).confirmHere(store, fingerprint, { name, how, by: device.actor });
}

/**
 * What the core makes of a record that is as it was sealed.
 * @param {Core} core
 * @param {any} answer
 * @param {number} days  of the return window here
 * @param {Set<string>} drawn  the pictures in it that can be seen
 */
async function folded(core, answer, days, drawn) {
  try {
    const events = answer.events.map((/** @type {object} */ event) => ({ event }));
    await core.call('reset', { events, phones: answer.phones ?? [] });
    const { unit, jobs, told, elsewhere, same_core } = answer;
    const view = await core.call('record', { unit, jobs, told, elsewhere, same_core });
    if (!unit) return view;
    const asked = { unit, now: Date.now(), window_days: days, agrees: view.compared.same, pictures: [...drawn] };
    return { ...view, weighed: await core.call('record_weighed', asked) };
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    throw new RecordProblem('none', say('troubles-record-not-shown'), say('troubles-record-unread', { why: said }));
  }
}

/**
 * @param {import('../sync/api.js').ServerApi} api
 * @param {File} file
 */
async function askedServer(api, file) {
  try {
    await api.session();
    return await api.checkRecord(file);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (error.kind === 'unreachable') {
      throw new RecordProblem(
        'later',
        say('troubles-record-server'),
        say('troubles-record-server-do'),
      );
    }
    throw new RecordProblem('later', say('troubles-record-unchecked'), error.sentence);
  }
}

/**
 * @param {{core: Core, store: import('../log/store.js').Store}} services
 * @param {File} file
 */
async function checkedHere(services, file) {
  const { checkHere } = await import('./check-here.js');
  try {
    return await checkHere(services, file);
  } catch (error) {
    if (!(error instanceof CannotTell)) {
      const said = error instanceof Error ? error.message : String(error);
      throw new RecordProblem('later', say('troubles-record-unchecked'), say('troubles-record-again', { why: said }));
    }
    throw new RecordProblem(
      'later',
      say('troubles-record-no-key'),
      say('troubles-record-no-key-do'),
    );
  }
}

/**
 * The answer for a record as it was sealed; throws RecordProblem for any other.
 * @param {any} answer
 */
function intact(answer) {
  if (answer.outcome === 'altered') {
    throw new RecordProblem('altered', say('troubles-record-altered'), answer.sentence);
  }
  if (answer.outcome === 'cut') throw new RecordProblem('cut', say('troubles-record-cut'), answer.sentence);
  if (answer.outcome !== 'intact') throw new RecordProblem('none', say('troubles-record-none'), answer.sentence);
  return answer;
}

/**
 * Which photos are pictures that a yard keeps. A browser draws by what is in a file, whatever its name says,
 * and to draw one of a few kilobytes and a thousand million pixels can end the page.
 * @param {File} file
 * @param {Record<string, [number, number]>} places  digest -> offset and length
 * @returns {Promise<Set<string>>}
 */
async function drawable(file, places) {
  const found = new Set();
  for (const [digest, [offset, length]] of Object.entries(places)) {
    const bytes = new Uint8Array(await file.slice(offset, offset + length).arrayBuffer());
    const size = pictureKind(bytes) === 'jpeg' ? pictureSize(bytes, 'jpeg') : null;
    if (size && size.width * size.height <= MOST_PIXELS) found.add(digest);
  }
  return found;
}

/**
 * The photos, cut out of the file itself.
 * @param {File} file
 * @param {{photos: Record<string, [number, number]>, smaller: string[], maker: {kind: string}}} answer
 *     photos: digest -> offset and length
 * @param {Set<string>} drawn  those that are shown
 */
function picturesOf(file, { photos: places, smaller, maker }, drawn) {
  /** @type {Map<string, string>} */
  const urls = new Map();
  return {
    photos: {
      absent: say('troubles-record-no-picture'),
      note: (/** @type {string} */ sha256) => {
        if (places[sha256] && !drawn.has(sha256)) return say('sealed-view-no-photo');
        return smaller.includes(sha256) ? say('sealed-view-smaller-one', { maker: maker.kind }) : '';
      },
      url: async (/** @type {string} */ sha256) => {
        if (!urls.has(sha256) && drawn.has(sha256)) {
          const [offset, length] = places[sha256];
          urls.set(sha256, URL.createObjectURL(file.slice(offset, offset + length, 'image/jpeg')));
        }
        return urls.get(sha256) ?? null;
      },
    },
    close: () => {
      for (const url of urls.values()) URL.revokeObjectURL(url);
      urls.clear();
    },
  };
}
