// @ts-check
/**
 * Putting the app on the home screen, where the phone keeps its data longer and starts it in one tap.
 */

/** What some browsers hand over for this. @type {{prompt: () => Promise<unknown>} | null} */
let offer = null;

/** Keep the browser's offer for the moment somebody asks for it. @param {() => void} onOffer */
export function watchInstall(onOffer) {
  addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault();
    offer = /** @type {any} */ (event);
    onOffer();
  });
  addEventListener('appinstalled', () => {
    offer = null;
    onOffer();
  });
}

export function canInstall() {
  return offer !== null;
}

export async function install() {
  const accepted = offer;
  offer = null;
  await accepted?.prompt();
}
