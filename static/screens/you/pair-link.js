// @ts-check
/**
 * Taking in a pairing link where the phone cannot open it as an address: scanned by the app's own camera or pasted.
 */

import { html, nothing } from 'lit-html';

import { ROOT } from '../../place.js';
import { textField } from '../frame/field.js';
import { to } from '../frame/router.js';
import { scanHost } from '../scan/scan-host.js';
import { say } from '../../words/words.js';

/**
 * @param {import('../frame/context.js').Context} ctx
 * @returns {import('../frame/frame.js').Parts}
 */
export function enterLink(ctx) {
  const { form } = ctx;
  const take = (/** @type {string} */ text) => {
    const { token, fault } = readLink(text);
    form.fault = fault;
    if (token) Object.assign(form, { token, scans: false });
    ctx.redraw();
  };
  const scan = async () => {
    // A camera is more than some phones have memory for.
    await ctx.keep();
    Object.assign(form, { scans: true, fault: '' });
    ctx.redraw();
  };
  const paste = () => {
    form.scans = false;
    ctx.redraw();
  };
  const head = { title: say('phone-pair'), back: to.jobs() };
  if (form.scans) {
    return {
      ...head,
      key: 'camera',
      body: html`<h1>${say('you-scan-link')}</h1>
        ${form.fault ? html`<p class="field-fault" role="alert">${form.fault}</p>` : nothing}
        ${scanHost(ctx, { words: say('you-scan-aim'), onTexts: ([text]) => take(text) }, 'pairing')}`,
      main: null,
      second: { words: say('you-paste'), run: paste },
    };
  }
  return {
    ...head,
    body: html`
      <h1>${say('phone-pair')}</h1>
      <p class="lead">${say('you-link-where')}</p>
      ${textField(ctx, 'link', say('you-link'), {
        note: say('you-link-note'),
        fault: form.fault,
        most: 400,
      })}
    `,
    main: { words: say('you-scan-code'), run: scan },
    second: { words: say('you-use-link'), disabled: !form.link, run: () => take(form.link) },
  };
}

/**
 * The token in a pairing link of this app's own server, or what is wrong with the text.
 * @param {string} text
 * @returns {{token: string, fault: string}}
 */
function readLink(text) {
  const url = asAddress(text.trim());
  if (url && isTrustPage(url)) return { token: url.hash.slice(1), fault: '' };
  if (!url || !/^https?:$/.test(url.protocol) || !/\/pair$/.test(url.pathname)) {
    return { token: '', fault: say('you-no-link', { example: `${ROOT.host}${ROOT.pathname}pair#…` }) };
  }
  if (url.origin !== ROOT.origin || url.pathname !== `${ROOT.pathname}pair`) {
    return {
      token: '',
      fault: say('you-link-elsewhere', { host: url.host, own: ROOT.host }),
    };
  }
  const token = url.hash.slice(1);
  return { token, fault: token ? '' : say('you-link-cut') };
}

/**
 * Whether a link is that of the page on which phones get to trust a server in their network, by the name of this
 * app's server or by a bare address. It carries the same token, and the token opens no other server.
 * @param {URL} url
 */
function isTrustPage({ protocol, pathname, hostname, hash }) {
  const ofThisNetwork = hostname === ROOT.hostname || /^[\d.]+$|^\[/.test(hostname);
  return protocol === 'http:' && pathname === '/' && hash.length > 1 && ofThisNetwork;
}

/**
 * @param {string} text
 * @returns {URL | null}
 */
function asAddress(text) {
  try {
    return new URL(text);
  } catch {
    return null;
  }
}
