// @ts-check
/**
 * A record from elsewhere: verified by the server, then folded by itself in a core of its own, so that
 * nothing of it ever gets into this phone's log or state.
 */

import { ApiError } from './api.js';
import { Core } from './core-client.js';

const MOST_BYTES = 48 * 1024 * 1024; // what the server takes

/** A file that cannot be shown as a record; `title` and `sentence` are for the person. */
export class RecordProblem extends Error {
  /**
   * @param {'altered' | 'none' | 'later'} kind  `later`: the same file may do when tried again
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
 * @typedef {object} ForeignRecord
 * @property {any} answer   what the server found: who made it, when, of what
 * @property {any} view     what the core makes of it: `unit`, `jobs`, `compared`
 * @property {{url: (sha256: string) => Promise<string | null>, absent: string}} photos
 * @property {() => void} close
 */

/**
 * Verify and fold a file; throws RecordProblem.
 * @param {import('./api.js').Api} api
 * @param {File} file
 * @returns {Promise<ForeignRecord>}
 */
export async function openForeignRecord(api, file) {
  if (file.size > MOST_BYTES) {
    throw new RecordProblem('none', 'No record', `${file.name} is larger than any record.`);
  }
  const answer = await verified(api, file);
  const core = await Core.start();
  try {
    if (!core.available) throw new RecordProblem('later', 'It cannot be shown here', core.trouble.value.sentence);
    await core.call('reset', { events: answer.events.map((/** @type {object} */ event) => ({ event })) });
    const { unit, jobs, told, elsewhere, same_core } = answer;
    const view = await core.call('record', { unit, jobs, told, elsewhere, same_core });
    return { answer, view, ...picturesOf(file, answer.photos) };
  } catch (error) {
    if (error instanceof RecordProblem) throw error;
    const said = error instanceof Error ? error.message : String(error);
    throw new RecordProblem('none', 'It cannot be shown', `It is as it was sealed, but this app cannot read it. ${said}`);
  } finally {
    core.stop();
  }
}

/**
 * @param {import('./api.js').Api} api
 * @param {File} file
 */
async function verified(api, file) {
  let answer;
  try {
    await api.session();
    answer = await api.checkRecord(file);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (error.kind === 'unreachable') {
      throw new RecordProblem(
        'later',
        'The server is needed for this',
        'Only the server can check a seal, and it cannot be reached now. Keep the file and try again.',
      );
    }
    throw new RecordProblem('later', 'It could not be checked', error.sentence);
  }
  if (answer.outcome === 'altered') {
    throw new RecordProblem('altered', 'This record was altered', answer.sentence);
  }
  if (answer.outcome !== 'intact') throw new RecordProblem('none', 'No record', answer.sentence);
  return answer;
}

/**
 * The photos, cut out of the file itself.
 * @param {File} file
 * @param {Record<string, [number, number]>} places  digest -> offset and length
 */
function picturesOf(file, places) {
  /** @type {Map<string, string>} */
  const urls = new Map();
  return {
    photos: {
      absent: 'This picture is not in the file',
      url: async (/** @type {string} */ sha256) => {
        if (!urls.has(sha256) && places[sha256]) {
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
