// @ts-check
/**
 * Puts the app together: storage, core, log, sync and updates, then the screens.
 */

import { html, render } from 'lit-html';

import { NoServer } from './alone/no-server.js';
import { Saved } from './alone/saved.js';
import { lastViews, plainLink, root, starting, store } from './begin.js';
import { openDevice } from './log/device.js';
import { openLog } from './log/log.js';
import { Photos } from './photos/photos.js';
import { SmallPictures } from './photos/small-pictures.js';
import { HAS_SERVER } from './place.js';
import { startApp } from './screens/app.js';
import { readLateSteps, readRarePages } from './screens/frame/read-late.js';
import { openStore } from './log/store.js';
import { Sync } from './sync/sync.js';
import { Update } from './phone/update.js';
import { say } from './words/words.js';

/** What the app needs of a browser, and the message that says what it does without it. */
const NEEDS = [
  {
    missing: () => !window.isSecureContext,
    sentence: 'troubles-not-secure',
  },
  {
    missing: () => typeof indexedDB === 'undefined' || !crypto.subtle || typeof BroadcastChannel === 'undefined',
    sentence: 'troubles-too-old',
  },
];

/** Begin, once the words can be said. */
export async function begin() {
  const lack = NEEDS.find((need) => need.missing());
  if (lack) {
    showProblem(say('troubles-no-record'), say(lack.sentence));
    return;
  }
  const update = new Update();
  try {
    await startParts(update);
  } catch (error) {
    showProblem(say('troubles-no-start-heading'), say('troubles-no-start', { error: String(error) }));
  } finally {
    // Only now: on a weak line, keeping the app for later must not hold up its first screen.
    update.start();
  }
}

/**
 * Start everything; settles once there is a screen.
 * @param {Update} update
 */
async function startParts(update) {
  await openStore(store);
  const [device, core] = await Promise.all([openDevice(store), starting]);
  const log = await openLog({ store, core, device });
  const saved = HAS_SERVER ? null : new Saved(store);
  const sync = HAS_SERVER
    ? new Sync({
        store,
        log,
        device,
        build: () => update.build,
        onServerBuild: (serverBuild) => update.checkFor(serverBuild),
      })
    : new NoServer({ update });
  const small = new SmallPictures(store, sync.api);
  const photos = new Photos(store, sync.api, small);
  keepDataOnceThereIsSome(device, saved, sync);
  await saved?.start(log);
  await sync.recall();
  const drawn = startApp({ root, core, log, sync, saved, photos, device, update, store, lastViews });
  fetchSmallAfterEachExchange(small, sync);
  sync.start();
  await drawn;
  // Whoever opens one finds it there; a failure shows then.
  Promise.all([readLateSteps(), readRarePages(), core.readRest()]).catch(() => undefined);
}

/**
 * Ask the browser to keep our data, once there is something to keep or the app was put on the home screen.
 * @param {import('./log/device.js').Device} device
 * @param {Saved | null} saved
 * @param {{status: Sync['status']}} sync
 */
function keepDataOnceThereIsSome(device, saved, sync) {
  let asked = false;
  const ask = (/** @type {boolean} */ something) => {
    if (asked || !something) return;
    asked = true;
    device.askToKeepData();
  };
  saved?.standing.subscribe(({ held }) => ask(held.entries > 0));
  sync.status.subscribe(({ unsentEvents }) => ask(unsentEvents > 0));
  addEventListener('appinstalled', () => device.askToKeepData());
}

/**
 * Fetch small versions of pictures that others took, whenever entries have come.
 * @param {SmallPictures} small
 * @param {{status: Sync['status']}} sync
 */
function fetchSmallAfterEachExchange(small, sync) {
  let last = sync.status.value.lastSyncAt;
  sync.status.subscribe(({ lastSyncAt }) => {
    if (lastSyncAt === last) return;
    last = lastSyncAt;
    small.fetchMissing();
  });
}

/**
 * @param {string} title
 * @param {string} sentence
 */
function showProblem(title, sentence) {
  lastViews.end();
  root.replaceChildren();
  render(html`<main class="panel panel-stop" role="alert"><h1>${title}</h1><p>${sentence}</p>${plainLink()}</main>`, root);
}
