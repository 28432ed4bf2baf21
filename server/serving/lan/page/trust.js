// @ts-check
/**
 * Tells whether this phone trusts the server: a picture is asked of the app's HTTPS address, and comes only
 * where the certificate is trusted. Then it leads on to pairing. The token stands behind # in both addresses,
 * so that it is in no request.
 */

const WAIT_MS = 8000;

const { app = '', page = '' } = document.body.dataset;
const standing = /** @type {HTMLElement} */ (document.getElementById('standing'));
const words = /** @type {HTMLElement} */ (document.getElementById('words'));
const check = /** @type {HTMLButtonElement} */ (document.getElementById('check'));
const on = /** @type {HTMLAnchorElement} */ (document.getElementById('on'));

// The page has them in the language of the phone.
const SAID = {
  ask: words.dataset.ask ?? '',
  yes: words.dataset.yes ?? '',
  untrusted: words.dataset.untrusted ?? '',
  lost: words.dataset.lost ?? '',
};

let asked = false;
let looking = false;

check.hidden = false;
check.addEventListener('click', look);
// Whoever comes back from the settings wants to know.
document.addEventListener('visibilitychange', () => {
  if (asked && on.hidden && document.visibilityState === 'visible') look();
});
for (const link of document.querySelectorAll('a.get')) {
  link.addEventListener('click', () => {
    asked = true;
  });
}

async function look() {
  if (looking) return;
  looking = true;
  asked = true;
  say('ask', SAID.ask);
  if (await comes(`${app}/trusted.svg`)) {
    say('yes', SAID.yes);
    const { hash } = location;
    on.href = hash.length > 1 ? `${app}/pair${hash}` : `${app}/`;
    on.textContent = hash.length > 1 ? 'Go on: pair this phone' : 'Go on to the app';
    on.hidden = false;
    check.hidden = true;
    on.focus();
  } else {
    const found = await comes(`${page}/pictures/key.svg`);
    say('no', found ? SAID.untrusted : SAID.lost);
  }
  looking = false;
}

/**
 * @param {'ask' | 'yes' | 'no'} state
 * @param {string} sentence
 */
function say(state, sentence) {
  standing.dataset.standing = state;
  words.textContent = sentence;
}

/**
 * Whether a picture comes, asked for anew.
 * @param {string} url
 * @returns {Promise<boolean>}
 */
function comes(url) {
  return new Promise((settle) => {
    const picture = new Image();
    const end = (/** @type {boolean} */ came) => {
      clearTimeout(timer);
      settle(came);
    };
    const timer = setTimeout(() => end(false), WAIT_MS);
    picture.addEventListener('load', () => end(true));
    picture.addEventListener('error', () => end(false));
    picture.src = `${url}?${Date.now()}`;
  });
}
