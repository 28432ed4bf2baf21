// @ts-check
/**
 * Putting the app on the home screen, where the phone keeps its data longer and starts it in one tap: what
 * the browser hands over for it, which family of phones this is, and when it is offered.
 */

import { isInstalled } from '../../log/device.js';
import { installPrompt } from '../../phone/install-prompt.js';

/** As many entries or pictures waiting, with no promise from the browser to keep them, are much to lose. */
const MUCH = 20;
/** About a job more: what was put off is offered again. */
const MORE = 40;
/** Safari throws away what a page kept when it was not opened for 7 days (webkit.org/blog/10218). */
const PUT_OFF_MS = 7 * 24 * 3600 * 1000;
const SETTING = 'install_put_off';

/**
 * @typedef {object} PutOff   that the person said 'not now'
 * @property {number} at
 * @property {number} unsent
 * @property {'offer' | 'strong'} level
 * @property {boolean} [installed]  it was put there, so the page in the browser offers it no more
 */

/** Undefined until it is known; null for never. @type {PutOff | null | undefined} */
let putOff;

/**
 * Follow what the browser hands over, and read what was put off.
 * @param {import('../../log/device.js').Device} device
 * @param {() => void} onChange
 */
export async function watchInstall(device, onChange) {
  addEventListener('appinstalled', async () => {
    await keepPutOff(device, { at: Date.now(), unsent: 0, level: 'strong', installed: true });
    installPrompt.set(null);
  });
  putOff ??= (await device.setting(SETTING)) ?? null;
  installPrompt.subscribe(onChange);
}

/** Whether one button does it here. */
export function canInstall() {
  return installPrompt.value !== null;
}

/**
 * Let the browser ask; its 'no' is the person's 'not now'.
 * @param {import('../frame/context.js').Services} services
 */
export async function install(services) {
  const accepted = installPrompt.value;
  installPrompt.set(null);
  const answer = await accepted?.prompt();
  if (answer?.outcome === 'dismissed') {
    await putInstallOff(services);
    installPrompt.set(null);
  }
}

/**
 * The family of phones this one belongs to, as its browser says it.
 * @param {{userAgent: string, maxTouchPoints: number}} [browser]
 * @returns {'iphone' | 'android' | 'other'}
 */
export function phoneFamily({ userAgent, maxTouchPoints } = navigator) {
  if (/android/i.test(userAgent)) return 'android';
  // An iPad says that it is a Macintosh; those have no touch screen.
  const isPad = /macintosh/i.test(userAgent) && maxTouchPoints > 1;
  return isPad || /iphone|ipad|ipod/i.test(userAgent) ? 'iphone' : 'other';
}

/**
 * Whether the home screen is offered now, and how urgently: never before there is a job to lose.
 * @param {import('../frame/context.js').Services} services
 * @param {number} jobs  on this phone
 * @returns {'none' | 'offer' | 'strong'}
 */
export function installOffer({ device, sync }, jobs) {
  if (!jobs || isInstalled() || putOff === undefined) return 'none';
  const { unsent, level } = atStake(device, sync);
  if (!putOff) return level;
  if (putOff.installed) return 'none';
  const graver = level === 'strong' && putOff.level === 'offer';
  const again = graver || unsent >= putOff.unsent + MORE || Date.now() - putOff.at >= PUT_OFF_MS;
  return again ? level : 'none';
}

/**
 * Not now: offered again once more is at stake, or after a week.
 * @param {import('../frame/context.js').Services} services
 */
export async function putInstallOff({ device, sync }) {
  await keepPutOff(device, { at: Date.now(), ...atStake(device, sync) });
}

/**
 * @param {import('../../log/device.js').Device} device
 * @param {PutOff} value
 */
async function keepPutOff(device, value) {
  // Only an offer: on a full phone it may be forgotten. It goes once that is written: the page may be closed then.
  await device.saveSetting(SETTING, value).catch(() => undefined);
  putOff = value;
}

/**
 * @param {import('../../log/device.js').Device} device
 * @param {import('../../sync/sync.js').Syncing} sync
 * @returns {{unsent: number, level: 'offer' | 'strong'}}
 */
function atStake({ kept }, { status }) {
  const unsent = status.value.unsentEvents + status.value.unsentPhotos;
  // Undefined: the browser was not asked yet.
  return { unsent, level: kept.value === false && unsent >= MUCH ? 'strong' : 'offer' };
}
