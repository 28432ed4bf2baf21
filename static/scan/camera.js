// @ts-check
/**
 * Holds the one camera stream of the app: opens it, brings it back after the phone slept, lets it go.
 *
 * Phones hand back dead or black streams after the app was in the background, not always with an event
 * that says so; every sign of coming back is therefore checked, one after the other.
 */

import { say } from '../words/words.js';

/**
 * @typedef {object} CameraTrouble
 * @property {string} name      the browser's name of the error
 * @property {string} title
 * @property {string} sentence
 */

/** What is wrong, and what to do, by the name of the error. @type {Record<string, [string, string]>} */
const TROUBLES = {
  NotAllowedError: ['scan-camera-not-allowed', 'scan-camera-not-allowed-do'],
  NotFoundError: ['scan-camera-none', 'scan-camera-none-do'],
  NotReadableError: ['scan-camera-silent', 'scan-camera-silent-do'],
  OverconstrainedError: ['scan-camera-unfit', 'scan-camera-unfit-do'],
  SecurityError: ['scan-camera-insecure', 'scan-camera-insecure-do'],
  AbortError: ['scan-camera-stopped', 'scan-camera-stopped-do'],
  InvalidStateError: ['scan-camera-not-in-front', 'scan-camera-not-in-front-do'],
  TypeError: ['scan-camera-not-offered', 'scan-camera-not-offered-do'],
};

/**
 * Say what a camera error means and what to do.
 * @param {unknown} error
 * @returns {CameraTrouble}
 */
export function cameraTrouble(error) {
  const name = error instanceof Error || error instanceof DOMException ? error.name : 'Error';
  const [title, sentence] = TROUBLES[name] ?? ['scan-camera-unknown', 'scan-camera-unknown-do'];
  return { name, title: say(title), sentence: say(sentence) };
}

/** A camera stream shown in one video element. */
export class Camera {
  /**
   * @param {HTMLVideoElement} video
   * @param {object} options
   * @param {string} [options.deviceId]  the camera chosen last time on this phone
   * @param {(trouble: CameraTrouble | null) => void} options.onTrouble  null once the picture runs
   */
  constructor(video, { deviceId = '', onTrouble }) {
    this.deviceId = deviceId;
    this.#video = video;
    this.#onTrouble = onTrouble;
  }

  #video;
  #onTrouble;
  /** @type {MediaStream | null} */
  #stream = null;
  #wanted = false;
  /** @type {Promise<void>} */
  #queue = Promise.resolve();

  /** Start, and keep the stream alive until `stop`. */
  start() {
    this.#wanted = true;
    document.addEventListener('visibilitychange', this.#look);
    for (const name of ['pageshow', 'pagehide', 'focus']) addEventListener(name, this.#look);
    return this.#bringUp();
  }

  /** Let the camera go. */
  stop() {
    this.#wanted = false;
    document.removeEventListener('visibilitychange', this.#look);
    for (const name of ['pageshow', 'pagehide', 'focus']) removeEventListener(name, this.#look);
    this.#release();
  }

  /** Whether a picture is there to be read now. */
  get running() {
    const { readyState, videoWidth } = this.#video;
    return this.#isAlive() && readyState >= HTMLMediaElement.HAVE_CURRENT_DATA && videoWidth > 0;
  }

  /**
   * What this camera can do: torch, zoom; empty where it does not say.
   * @returns {{torch?: boolean, zoom?: {min: number, max: number, step: number}}}
   */
  get abilities() {
    return /** @type {any} */ (this.#track?.getCapabilities?.() ?? {});
  }

  /** How far it has zoomed in, where it says so. @returns {number | undefined} */
  get zoom() {
    return /** @type {any} */ (this.#track?.getSettings?.() ?? {}).zoom;
  }

  /**
   * Set the torch or the zoom; a camera that refuses stays as it is.
   * @param {{torch?: boolean, zoom?: number}} setting
   */
  async set(setting) {
    const advanced = /** @type {any} */ ([setting]);
    await this.#track?.applyConstraints({ advanced }).catch(() => undefined);
  }

  /**
   * The cameras of this phone; known by name only after the first picture.
   * @returns {Promise<MediaDeviceInfo[]>}
   */
  async choices() {
    const devices = (await navigator.mediaDevices?.enumerateDevices?.()) ?? [];
    return devices.filter(({ kind, deviceId }) => kind === 'videoinput' && deviceId);
  }

  /**
   * Change to another camera.
   * @param {string} deviceId
   */
  choose(deviceId) {
    this.deviceId = deviceId;
    this.#release();
    return this.#bringUp();
  }

  get #track() {
    return this.#stream?.getVideoTracks()[0];
  }

  #isAlive() {
    const track = this.#track;
    return track !== undefined && track.readyState === 'live' && !track.muted;
  }

  #look = (/** @type {Event} */ { type }) => {
    // A page that is left may still count as visible while it goes.
    if (document.visibilityState === 'hidden' || type === 'pagehide') this.#release();
    else this.#bringUp();
  };

  /** One attempt at a time: several signs of coming back arrive together. */
  #bringUp() {
    this.#queue = this.#queue.then(async () => {
      if (!this.#wanted || document.visibilityState === 'hidden' || this.#isAlive()) return;
      this.#release();
      try {
        await this.#open();
        if (this.#wanted) this.#onTrouble(null);
      } catch (error) {
        this.#release();
        if (this.#wanted) this.#onTrouble(cameraTrouble(error));
      }
    });
    return this.#queue;
  }

  async #open() {
    const stream = await this.#request();
    // The person may have moved on while the browser asked.
    if (!this.#wanted) {
      stopTracks(stream);
      return;
    }
    this.#stream = stream;
    this.#track?.addEventListener('ended', this.#look);
    this.#video.srcObject = stream;
    await this.#video.play();
  }

  async #request() {
    const size = { width: { ideal: 1920 }, height: { ideal: 1080 } };
    const { mediaDevices } = navigator;
    if (this.deviceId) {
      try {
        const deviceId = { exact: this.deviceId };
        return await mediaDevices.getUserMedia({ audio: false, video: { ...size, deviceId } });
      } catch (error) {
        // The remembered camera is gone; take any that looks away from the person.
        if (!(error instanceof Error && error.name === 'OverconstrainedError')) throw error;
        this.deviceId = '';
      }
    }
    const facingMode = { ideal: 'environment' };
    return mediaDevices.getUserMedia({ audio: false, video: { ...size, facingMode } });
  }

  #release() {
    if (this.#stream) {
      this.#track?.removeEventListener('ended', this.#look);
      stopTracks(this.#stream);
    }
    this.#stream = null;
    this.#video.srcObject = null;
  }
}

/** @param {MediaStream} stream */
function stopTracks(stream) {
  for (const track of stream.getTracks()) track.stop();
}
