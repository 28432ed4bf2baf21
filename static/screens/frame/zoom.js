// @ts-check
/**
 * Looks closer at pictures: by two fingers, by keys and wheel, by buttons that call what `zoomable` returns. Several
 * pictures in one host move together, so that the same spot of each is compared.
 */

const MOST = 6;
const STEP = 1.5;
const PAN = 60;
/** As far as a finger goes sideways before it means another picture. */
const SWIPE = 48;

/**
 * @typedef {object} Zoom
 * @property {() => void} larger
 * @property {() => void} smaller
 * @property {() => void} stop
 */

/**
 * @param {HTMLElement} host  its `.viewer-picture` children show the pictures
 * @param {(by: 1 | -1) => void} turn  to the next picture or the one before
 * @returns {Zoom}
 */
export function zoomable(host, turn) {
  let [zoom, x, y] = [1, 0, 0];
  /** Where the fingers are. @type {Map<number, {x: number, y: number}>} */
  const fingers = new Map();
  let start = { x: 0, y: 0 };
  let several = false;

  const show = () => {
    const pane = host.querySelector('.viewer-picture') ?? host;
    const bound = (/** @type {number} */ value, /** @type {number} */ side) =>
      Math.max(-1, Math.min(1, value / ((zoom - 1) * side * 0.5 || 1))) * (zoom - 1) * side * 0.5;
    x = bound(x, pane.clientWidth);
    y = bound(y, pane.clientHeight);
    for (const [name, value] of [['zoom', zoom], ['x', `${x}px`], ['y', `${y}px`]]) host.style.setProperty(`--${name}`, String(value));
    host.toggleAttribute('data-close', zoom > 1);
  };
  /** @param {number} factor @param {{x: number, y: number}} [about]  from the middle of the picture */
  const by = (factor, about = { x: 0, y: 0 }) => {
    const next = Math.max(1, Math.min(MOST, zoom * factor));
    x = about.x - (about.x - x) * (next / zoom);
    y = about.y - (about.y - y) * (next / zoom);
    zoom = next;
    show();
  };
  /** @param {number} right @param {number} down */
  const move = (right, down) => {
    x += right;
    y += down;
    show();
  };
  /** @param {{clientX: number, clientY: number, target: EventTarget | null}} event */
  const fromMiddle = ({ clientX, clientY, target }) => {
    const pane = /** @type {Element} */ (target).closest?.('.viewer-picture') ?? host;
    const { left, top, width, height } = pane.getBoundingClientRect();
    return { x: clientX - left - width / 2, y: clientY - top - height / 2 };
  };
  const spread = () => {
    const [one, other] = [...fingers.values()];
    return Math.hypot(one.x - other.x, one.y - other.y) || 1;
  };

  /** @type {{[name: string]: (event: any) => void}} */
  const hears = {
    pointerdown(event) {
      if (!fingers.size) {
        start = { x: event.clientX, y: event.clientY };
        several = false;
      }
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      several ||= fingers.size > 1;
      host.setPointerCapture?.(event.pointerId);
    },
    pointermove(event) {
      const before = fingers.get(event.pointerId);
      if (!before) return;
      const apart = fingers.size === 2 ? spread() : 0;
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      if (apart) by(spread() / apart, fromMiddle({ ...middle(fingers), target: host.querySelector('.viewer-picture') }));
      else if (zoom > 1) move(event.clientX - before.x, event.clientY - before.y);
    },
    pointerup(event) {
      if (!fingers.delete(event.pointerId) || several || zoom > 1) return;
      const [right, down] = [event.clientX - start.x, event.clientY - start.y];
      if (Math.abs(right) > SWIPE && Math.abs(right) > 2 * Math.abs(down)) turn(right < 0 ? 1 : -1);
    },
    pointercancel: (event) => fingers.delete(event.pointerId),
    dblclick: (event) => by(zoom > 1 ? 1 / MOST : 2 * STEP, fromMiddle(event)),
    wheel(event) {
      event.preventDefault();
      by(event.deltaY < 0 ? 1.2 : 1 / 1.2, fromMiddle(event));
    },
    keydown(event) {
      const close = zoom > 1;
      /** @type {Record<string, () => void>} */
      const keys = {
        '+': () => by(STEP),
        '=': () => by(STEP),
        '-': () => by(1 / STEP),
        0: () => by(1 / MOST),
        ArrowRight: () => (close ? move(-PAN, 0) : turn(1)),
        ArrowLeft: () => (close ? move(PAN, 0) : turn(-1)),
        ...(close ? { ArrowDown: () => move(0, -PAN), ArrowUp: () => move(0, PAN) } : {}),
      };
      if (!keys[event.key] || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      keys[event.key]();
    },
  };
  for (const [name, hear] of Object.entries(hears)) host.addEventListener(name, hear, { passive: false });
  show();
  return {
    larger: () => by(STEP),
    smaller: () => by(1 / STEP),
    stop: () => {
      for (const [name, hear] of Object.entries(hears)) host.removeEventListener(name, hear);
    },
  };
}

/** @param {Map<number, {x: number, y: number}>} fingers */
function middle(fingers) {
  const [one, other] = [...fingers.values()];
  return { clientX: (one.x + other.x) / 2, clientY: (one.y + other.y) / 2 };
}
