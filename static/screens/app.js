// @ts-check
/**
 * The screens of the app.
 */

import { html, render } from 'lit-html';

/**
 * @typedef {object} AppParts   everything below the screens
 * @property {HTMLElement} root
 * @property {import('../core-client.js').Core} core
 * @property {import('../log.js').EventLog} log
 * @property {import('../sync.js').Sync} sync
 * @property {import('../photos.js').Photos} photos
 * @property {import('../device.js').Device} device
 * @property {import('../update.js').Update} update
 * @property {import('../store.js').Store} store
 */

/**
 * Draw the app into `root` and keep it in step.
 * @param {AppParts} parts
 */
export function startApp({ root, sync }) {
  sync.status.subscribe(({ state }) => render(html`<main><h1>Swaptrail</h1><p>${state}</p></main>`, root));
}
