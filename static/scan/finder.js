// @ts-check
/**
 * The camera picture as a part of a screen: frame, torch, zoom, choice of camera, a file instead, and a
 * plain sentence for each thing that can go wrong. Scanning and photographing share it.
 */

import { html, nothing, render } from 'lit-html';
import { live } from 'lit-html/directives/live.js';

import { Camera } from './camera.js';
import { say } from '../words/words.js';

/**
 * @typedef {object} FinderOptions
 * @property {string} words                     one line over the picture
 * @property {boolean} framed                   whether to draw the frame a code is held into
 * @property {string} fileWords                 words on the button that takes a file instead
 * @property {(file: Blob) => void} onFile
 * @property {{words: string, call: () => void}} [other]  a way round the camera, always one tap away
 * @property {(trouble: import('./camera.js').CameraTrouble | null) => void} [onProblem]
 * @property {string} [camera]                  device id of the camera chosen last time
 * @property {(deviceId: string) => void} [onCamera]
 */

/** A finder drawn into a host element. */
export class Finder {
  /**
   * @param {HTMLElement} host
   * @param {FinderOptions} options
   */
  constructor(host, options) {
    this.#host = host;
    this.#options = options;
    this.video = document.createElement('video');
    // iOS plays in the page, and without a tap, only with all three.
    this.video.playsInline = true;
    this.video.muted = true;
    this.video.autoplay = true;
    this.camera = new Camera(this.video, {
      deviceId: options.camera,
      onTrouble: (trouble) => this.#hear(trouble),
    });
  }

  #host;
  #options;
  /** @type {import('./camera.js').CameraTrouble | null} */
  #trouble = null;
  /** @type {MediaDeviceInfo[]} */
  #cameras = [];
  #torch = false;
  #note = '';
  #closed = false;

  /** Draw and start the camera. */
  open() {
    this.#draw();
    // On a phone that lies on its side it begins below the words.
    this.video.parentElement?.scrollIntoView({ block: 'nearest' });
    return this.camera.start();
  }

  /** Let the camera go and leave the host empty. */
  close() {
    this.#closed = true;
    this.camera.stop();
    render(nothing, this.#host);
  }

  /** Say another line over the picture: what is to be held before it has changed. @param {string} words */
  guide(words) {
    if (words === this.#options.words) return;
    this.#options = { ...this.#options, words };
    this.#draw();
  }

  /**
   * Say one line under the picture, such as what a picked file held.
   * @param {string} sentence
   */
  note(sentence) {
    this.#note = sentence;
    this.#draw();
  }

  /**
   * Take what the camera sees now, all of it.
   * @returns {Promise<Blob>} rejects when no picture is there
   */
  async takePhoto() {
    const { videoWidth: width, videoHeight: height } = this.video;
    if (!this.camera.running) throw new Error('the camera shows no picture yet');
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    canvas.getContext('2d')?.drawImage(this.video, 0, 0);
    const blob = await new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.92));
    canvas.width = 0;
    canvas.height = 0;
    if (!blob) throw new Error('the picture could not be kept');
    return blob;
  }

  /** Whether there is no picture, and why was said. */
  isDark() {
    return this.#trouble !== null;
  }

  /** @param {import('./camera.js').CameraTrouble | null} trouble */
  async #hear(trouble) {
    this.#trouble = trouble;
    this.#torch = false;
    this.#options.onProblem?.(trouble);
    // What was said of a picture that was not there yet.
    if (!trouble) this.#note = '';
    this.#draw();
    if (trouble) return;
    this.#cameras = await this.camera.choices();
    this.#draw();
  }

  #draw() {
    if (this.#closed) return;
    const { words, framed, other, fileWords } = this.#options;
    render(
      html`
        <div class="finder" data-state=${this.#trouble ? 'trouble' : 'running'}>
          ${this.video}
          ${framed ? html`<div class="finder-frame" aria-hidden="true"></div>` : nothing}
          <p class="finder-words">${words}</p>
        </div>
        ${this.#trouble ? this.#troublePanel(this.#trouble) : nothing}
        <p class="finder-note" role="status">${this.#note}</p>
        <div class="finder-tools">
          ${other
            ? html`<button class="small-button" type="button" @click=${other.call}>
                ${other.words}
              </button>`
            : nothing}
          ${this.#torchButton()} ${this.#cameraButton()} ${this.#zoomSlider()}
          <label class="link-button finder-file">
            ${/* Only JPEG, so that an iPhone converts its HEIC pictures by itself. */ fileWords}
            <input class="aloud" type="file" accept="image/jpeg" @change=${this.#pick} />
          </label>
        </div>
      `,
      this.#host,
    );
  }

  /** @param {import('./camera.js').CameraTrouble} trouble */
  #troublePanel({ title, sentence }) {
    return html`
      <div class="panel panel-ask" role="alert">
        <h2>${title}</h2>
        <p>${sentence}</p>
        ${this.#options.onProblem
          ? nothing
          : html`<button class="small-button" type="button" @click=${() => this.camera.start()}>${say('scan-start')}</button>`}
      </div>
    `;
  }

  #torchButton() {
    if (this.#trouble || !this.camera.abilities.torch) return nothing;
    return html`
      <button class="small-button" type="button" aria-pressed=${this.#torch} @click=${this.#switchTorch}>
        ${this.#torch ? say('scan-light-off') : say('scan-light-on')}
      </button>
    `;
  }

  #cameraButton() {
    if (this.#trouble || this.#cameras.length < 2) return nothing;
    return html`
      <button class="small-button" type="button" @click=${this.#nextCamera}>${say('scan-other-camera')}</button>
    `;
  }

  #zoomSlider() {
    const { zoom } = this.#trouble ? {} : this.camera.abilities;
    if (!zoom || zoom.max <= zoom.min) return nothing;
    return html`
      <label class="finder-zoom">
        ${say('scan-closer')}
        <input
          type="range"
          min=${zoom.min}
          max=${zoom.max}
          step=${zoom.step || 0.1}
          .value=${live(String(this.camera.zoom ?? zoom.min))}
          @input=${this.#setZoom}
        />
      </label>
    `;
  }

  #switchTorch = async () => {
    this.#torch = !this.#torch;
    await this.camera.set({ torch: this.#torch });
    this.#draw();
  };

  #nextCamera = async () => {
    const ids = this.#cameras.map(({ deviceId }) => deviceId);
    const now = this.camera.deviceId || this.#currentId();
    const next = ids[(ids.indexOf(now) + 1) % ids.length];
    await this.camera.choose(next);
    this.#options.onCamera?.(next);
  };

  #currentId() {
    const stream = /** @type {MediaStream | null} */ (this.video.srcObject);
    return stream?.getVideoTracks()[0]?.getSettings().deviceId ?? '';
  }

  #setZoom = (/** @type {InputEvent} */ event) => {
    const { valueAsNumber } = /** @type {HTMLInputElement} */ (event.target);
    this.camera.set({ zoom: valueAsNumber });
  };

  #pick = (/** @type {Event} */ event) => {
    const input = /** @type {HTMLInputElement} */ (event.target);
    const file = input.files?.[0];
    // Emptied, so that the same file can be picked again.
    input.value = '';
    if (file) this.#options.onFile(file);
  };
}
