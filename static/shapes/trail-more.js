// @ts-check
/**
 * Says above a trail how many tests lie beyond its edges, and leads to them: that it goes on sideways is seen nowhere else.
 */
import { html, nothing, render } from "lit-html";
import { AsyncDirective, directive } from "lit-html/async-directive.js";

import { icon } from "./icons.js";
import { say } from "../words/words.js";

/** How much of what is seen stays in sight as it moves on: about the test at the edge. */
const KEPT = 0.3;

class MoreTests extends AsyncDirective {
  /** @type {HTMLElement | null} */
  #host = null;
  #watch = new ResizeObserver(() => this.#draw());
  #draw = () => this.#host && drawMore(this.#host);

  render() {
    return undefined;
  }

  /** @param {any} part */
  update({ element }) {
    if (this.#host) return;
    this.#host = element;
    // The trail stands beside it only after the template was drawn.
    queueMicrotask(() => this.isConnected && this.reconnected());
  }

  reconnected() {
    const box = trailOf(/** @type {HTMLElement} */ (this.#host));
    box.addEventListener("scroll", this.#draw);
    for (const seen of [box, ...box.children]) this.#watch.observe(seen);
  }

  disconnected() {
    this.#watch.disconnect();
    trailOf(/** @type {HTMLElement} */ (this.#host)).removeEventListener("scroll", this.#draw);
  }
}

const attach = directive(MoreTests);

/** Stands right before the box that scrolls. */
export function moreTests() {
  return html`<div class="trail-more" ${attach()}></div>`;
}

/** @param {HTMLElement} host */
function trailOf(host) {
  return /** @type {HTMLElement} */ (host.nextElementSibling);
}

/** @param {HTMLElement} host */
function drawMore(host) {
  const box = trailOf(host);
  const { left, right } = { left: edge(box), right: box.getBoundingClientRect().right };
  const tests = [...box.querySelectorAll(".trail-rule")].map((rule) => rule.getBoundingClientRect()).filter(({ height }) => height);
  const earlier = tests.filter((test) => test.left < left).length;
  const later = tests.filter((test) => test.left > right).length;
  /** @param {number} way */
  const go = (way) => () => box.scrollBy({ left: way * (right - left) * (1 - KEPT) });
  render(
    html`${earlier
      ? html`<button class="small-button" type="button" @click=${go(-1)}>${icon("back")} ${say("shapes-trail-earlier", { count: earlier })}</button>`
      : nothing}
    ${later
      ? html`<button class="small-button trail-later" type="button" @click=${go(1)}>${say("shapes-trail-later", { count: later })} ${icon("forward")}</button>`
      : nothing}`,
    host,
  );
}

/** Where the picture begins to be seen: the names stand before it. @param {HTMLElement} box */
function edge(box) {
  return box.querySelector(".trail-names")?.getBoundingClientRect().right ?? box.getBoundingClientRect().left;
}
