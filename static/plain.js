// @ts-check
/**
 * The plain page: where the app does not start, it saves what this phone recorded as files, which any Swaptrail
 * takes in. It imports nothing and asks no core, so that no fault of theirs is a fault here; what it needs of
 * log/unsent-file.js (the form of the file), log/canonical.js and log/store.js it does in its own few lines.
 */

'use strict';

{
  /** What one file is of: its heading, its button. @typedef {'unsent' | 'all'} Which */
  /** @typedef {{entries: any[], photos: IDBValidKey[], device: string}} Content */

  /** @type {Record<string, Record<string, string>>} */
  const words = JSON.parse(document.documentElement.dataset.words ?? '{}');
  const root = location.pathname.replace(/[^/]*$/, '');
  /** As place.js has it. @param {string} name */
  const ownName = (name) => (root === '/' ? name : `${root} ${name}`);
  const language = [chosen(), ...navigator.languages].map((tag) => tag.split('-')[0].toLowerCase()).find((each) => each in words) ?? 'en';
  const say = (/** @type {string} */ id) => words[language]?.[id] ?? id;
  const standing = /** @type {HTMLElement} */ (document.getElementById('standing'));
  const files = /** @type {HTMLElement} */ (document.getElementById('files'));

  document.documentElement.lang = language;
  for (const place of document.querySelectorAll('[data-says]')) {
    if (place instanceof HTMLElement) place.textContent = say(place.dataset.says ?? '');
  }
  look().catch((error) => {
    standing.textContent = `${say('plain-no-storage')} (${error})`;
  });

  /** Say what is here, and offer to save it. */
  async function look() {
    const db = await opened();
    if (!db) {
      standing.textContent = say('plain-nothing');
      return;
    }
    const [unsent, all] = [await contentOf(db, 'unsent'), await contentOf(db, 'all')];
    standing.textContent = all.entries.length ? '' : say('plain-nothing');
    offer(db, 'unsent', unsent);
    offer(db, 'all', all);
  }

  /** @param {IDBDatabase} db @param {Which} which @param {Content} content */
  function offer(db, which, content) {
    const button = made('button', { type: 'button', className: 'small-button wide-button', textContent: say(`plain-save-${which}`) });
    const told = made('p', { role: 'status' });
    const section = made('section', { id: which, className: 'panel screen-stack' });
    section.append(
      made('h2', { textContent: say(`plain-${which}`) }),
      made('p', { textContent: `${say('plain-entries')}: ${content.entries.length} · ${say('plain-pictures')}: ${content.photos.length}` }),
      button,
      told,
    );
    button.disabled = !content.entries.length && !content.photos.length;
    button.onclick = async () => {
      button.disabled = true;
      try {
        // Read again: another tab may have recorded since.
        hand(await fileOf(db, which, await contentOf(db, which), told), told);
      } catch (error) {
        told.textContent = `${say('plain-not-made')} (${error})`;
      }
      button.disabled = false;
    };
    files.append(section);
  }

  /**
   * Put a file among the downloads, and offer to pass it on where a phone does.
   * @param {{file: File, damaged: boolean}} made
   * @param {HTMLElement} told
   */
  function hand({ file, damaged }, told) {
    const link = made('a', { href: URL.createObjectURL(file), download: file.name, className: 'link-button', textContent: file.name });
    told.replaceChildren(say('plain-made'), ' ', damaged ? `${say('plain-damaged')} ` : '', link);
    link.click();
    if (!navigator.canShare?.({ files: [file] })) return;
    const pass = made('button', { type: 'button', className: 'small-button', textContent: say('plain-pass-on') });
    pass.onclick = () => navigator.share({ files: [file] }).catch(() => undefined);
    told.append(' ', pass);
  }

  /**
   * @param {IDBDatabase} db
   * @param {Which} which
   * @param {Content} content
   * @param {HTMLElement} told  hears how far it is
   */
  async function fileOf(db, which, { entries, photos, device }, told) {
    /** @type {Blob[]} */
    const pictures = [];
    let damaged = false;
    for (const [at, sha256] of photos.entries()) {
      told.textContent = `${say('plain-pictures')}: ${at + 1} / ${photos.length}`;
      // One that the browser does not give back costs none of the others.
      const bytes = await got(db.transaction('photo_bytes').objectStore('photo_bytes').get(sha256)).catch(() => null);
      // With one that has changed in it, no reader would take the file.
      if (bytes && (await digest(bytes)) === sha256) pictures.push(new Blob([canonical({ bytes: base64(bytes), sha256 }), '\n']));
      else damaged = true;
    }
    const first = canonical({ app: 'swaptrail', device, entries: entries.length, made_at: Date.now(), photos: pictures.length, v: 2 });
    const lines = entries.map(({ event, hash }) => `${canonical({ event, hash })}\n`);
    const end = canonical({ end: await digest(new TextEncoder().encode(first)) });
    // By this phone's clock, as alone/history-file.js has it: 2026-11-28-1031.
    const now = new Date(Date.now() - new Date().getTimezoneOffset() * 60_000).toISOString();
    const name = `swaptrail-${which === 'unsent' ? `unsent-${device}` : now.slice(0, 16).replace('T', '-').replace(':', '')}.txt`;
    return { file: new File([`${first}\n`, ...lines, ...pictures, `${end}\n`], name, { type: 'text/plain' }), damaged };
  }

  /**
   * What a file is to hold, in this phone's order.
   * @param {IDBDatabase} db
   * @param {Which} which
   * @returns {Promise<Content>}
   */
  async function contentOf(db, which) {
    const tx = db.transaction(['meta', 'events', 'photos', 'photo_bytes']);
    const events = tx.objectStore('events');
    const [head, numbered, waiting, photos] = await Promise.all([
      got(tx.objectStore('meta').get('head')),
      which === 'all' ? got(events.index('n').getAll()) : [],
      got(events.index('unsent').getAll()),
      got(which === 'all' ? tx.objectStore('photo_bytes').getAllKeys() : tx.objectStore('photos').index('unsent').getAllKeys()),
    ]);
    return { entries: [...numbered, ...waiting], photos, device: head?.device ?? '' };
  }

  /** @returns {Promise<IDBDatabase | null>}  null where this phone holds nothing */
  function opened() {
    return new Promise((resolve, reject) => {
      const asked = indexedDB.open(ownName('swaptrail'));
      // There is none, and only the app makes one.
      asked.onupgradeneeded = () => asked.transaction?.abort();
      asked.onerror = () => (asked.error?.name === 'AbortError' ? resolve(null) : reject(asked.error));
      asked.onsuccess = () => {
        asked.result.onversionchange = () => asked.result.close();
        resolve(asked.result);
      };
    });
  }

  /** @param {IDBRequest} request @returns {Promise<any>} */
  function got(request) {
    return new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  }

  /** @param {any} value @returns {string} */
  function canonical(value) {
    if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
    if (value === null || typeof value !== 'object') return JSON.stringify(value);
    return `{${Object.keys(value).sort().map((key) => `${JSON.stringify(key)}:${canonical(value[key])}`).join(',')}}`;
  }

  /** @param {BufferSource} bytes */
  async function digest(bytes) {
    return Array.from(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)), (byte) => byte.toString(16).padStart(2, '0')).join('');
  }

  /** @param {ArrayBuffer} buffer */
  function base64(buffer) {
    const bytes = new Uint8Array(buffer);
    let text = '';
    for (let at = 0; at < bytes.length; at += 32768) text += String.fromCharCode(...bytes.subarray(at, at + 32768));
    return btoa(text);
  }

  /** As words/words.js keeps it. */
  function chosen() {
    try {
      return localStorage.getItem(ownName('swaptrail.language')) ?? '';
    } catch {
      return '';
    }
  }

  /**
   * @template {keyof HTMLElementTagNameMap} Tag
   * @param {Tag} tag
   * @param {Record<string, string>} given
   * @returns {HTMLElementTagNameMap[Tag]}
   */
  function made(tag, given) {
    return Object.assign(document.createElement(tag), given);
  }
}
