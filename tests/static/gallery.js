// @ts-check
/**
 * Shows one scene of the looks, chosen by the address: `?scene=board&kind=rear&count=6`.
 *
 * The scenes are made up here and need neither core nor server, so that the shapes are tested
 * alone. The CSP of the real server is sent with the page.
 */
import { html, render } from "lit-html";

import { board } from "/static/shapes/board.js";
import { code } from "/static/shapes/code.js";
import { harness } from "/static/shapes/harness.js";
import { icon, ICON_NAMES } from "/static/shapes/icons.js";
import { mark, markKey } from "/static/shapes/marks.js";
import { trail } from "/static/shapes/trail.js";
import { startWords } from "/static/words/words.js";

// Some scenes are made as this file is read.
await startWords();

let query = new URLSearchParams(location.search);
const CODES = ["K7F-3M", "P2W-9D", "A4C-6H", "M9T-2X", "W3Y-7N", "R6D-4J", "H2K-9F", "D7P-3C"];

/** @type {Record<number, string[]>} */
const ENDS = {
  1: ["middle"],
  2: ["left", "right"],
  4: ["left outer", "left inner", "right inner", "right outer"],
  6: ["left outer", "left middle", "left inner", "right inner", "right middle", "right outer"],
};
const SIDES = { left: ["left front side", "left rear side"], right: ["right front side", "right rear side"] };
const OWN = [
  "behind the tow bar cover on the near side", "left", "second hole from the left, cracked paint",
  "reflector", "plate lamp", "right corner, repaired last year",
];

/** @param {string[]} names @param {string} edge @param {number} from */
function positions(names, edge, from = 0) {
  const marks = ["clean", "clean", "clean", "fault", "untested", "aside", "empty"];
  const words = { clean: "clean", fault: "fault", untested: "not tested", aside: "set aside", empty: "empty" };
  return names.map((name, index) => {
    const n = from + index;
    const kind = marks[n % marks.length];
    const shown = kind === "untested" ? "" : CODES[n % CODES.length];
    return {
      id: `${edge}-${index}`, name, edge, index, count_on_edge: names.length, mark: kind,
      word: words[kind], unit: kind === "empty" ? null : { id: `u${n}`, shown, part: "" },
      photo: n % 3 === 0 ? "a".repeat(64) : "",
    };
  });
}

/** @param {string} kind @param {number} count @param {boolean} own */
function boardView(kind, count, own) {
  if (kind === "around") {
    const sides = Number(query.get("sides") ?? (count >= 8 ? 2 : 0));
    const rest = count - sides * 2;
    const front = Math.floor(rest / 2);
    const list = [
      ...positions(names(front, own), "front"),
      ...positions(sides > 2 ? names(sides, own) : SIDES.left.slice(0, sides), "left", 2),
      ...positions(sides > 2 ? names(sides, own) : SIDES.right.slice(0, sides), "right", 5),
      ...positions(names(rest - front, own), "rear", 3),
    ];
    return { kind, positions: list.map((one) => ({ ...one, name: one.edge === "front" ? `front ${one.name}` : one.name })) };
  }
  return { kind, positions: positions(names(count, own), kind) };
}

/** @param {number} count @param {boolean} own */
function names(count, own) {
  if (!own && ENDS[count]) {
    return ENDS[count];
  }
  return Array.from({ length: count }, (_, n) => (own ? OWN[n % OWN.length] : `place ${n + 1}`));
}

/** @param {string} story */
function trailView(story) {
  const rear = ENDS[4].map((name, n) => ({ position: `p${n}`, name }));
  const test = (n, counted = true) => ({ n: n + 1, label: `test ${n + 1}`, counted, why: "" });
  /** A unit's way: one letter a test, its row, "-" in hand, "." not there yet; capitals are faults. */
  const line = (shown, way, suspect = false, aside = []) => ({
    unit: shown, shown, suspect,
    points: [...way].flatMap((letter, index) => letter === "." ? [] : [letter === "-"
      ? { test: index, position: null, mark: "untested" }
      : { test: index, position: `p${letter.toLowerCase().charCodeAt(0) - 97}`,
        mark: aside.includes(index) ? "aside" : letter === letter.toUpperCase() ? "fault" : "clean" }]),
  });
  const stories = {
    one: { tests: [test(0)], rows: rear, lines: [line("", "a"), line("", "b"), line("", "c"), line("", "D", true)] },
    followed: { tests: [test(0), test(1)], rows: rear,
      lines: [line("", "aa"), line("", "bb"), line("P2W-9D", "cd"), line("K7F-3M", "DC", true)] },
    stayed: { tests: [test(0), test(1)], rows: rear.map((row) => ({ ...row, suspect: row.position === "p3" })),
      lines: [line("", "aa"), line("", "bb"), line("P2W-9D", "cD"), line("K7F-3M", "Dc")] },
    spare: { tests: [test(0), test(1), test(2)], rows: rear,
      lines: [line("A4C-6H", "aaa"), line("M9T-2X", "bbb"), line("P2W-9D", "cdc"), line("K7F-3M", "DC-", true),
        line("W3Y-7N", "--d")] },
    mixed: { tests: [test(0), test(1)], rows: rear,
      lines: [line("A4C-6H", "aa"), line("P2W-9D", "cd"), line("K7F-3M", "DC", true)],
      mixed_words: "P2W-9D may be the one from right inner or the one from right outer. "
        + "K7F-3M is the one from right outer, 99.9 % sure." },
    aside: { tests: [test(0), test(1, false), test(2)], rows: rear,
      lines: [line("A4C-6H", "aaa", false, [1]), line("M9T-2X", "bbb", false, [1]),
        line("P2W-9D", "cdd", false, [1]), line("K7F-3M", "DCC", true, [1])] },
  };
  if (story === "many") {
    const rows = Array.from({ length: 12 }, (_, n) => ({ position: `p${n}`, name: n === 3 ? OWN[2] : `front ${ENDS[6][n % 6]}` }));
    const lines = rows.map((_, n) => line(`${CODES[n % 8].slice(0, 4)}${"23467ACDEFHJ"[n]}X`, String.fromCharCode(97 + n).repeat(8)));
    lines[0] = line("P2W-9D", "alllaaaa");
    lines[11] = line("K7F-3M", "LAA---aa".replace("aa", "Ll"), true);
    lines[0] = line("P2W-9D", "allllla-");
    return { tests: Array.from({ length: 8 }, (_, n) => test(n)), rows, lines };
  }
  return stories[story];
}

/** @param {{bad: string, from: string, to: string, line: string}} of  the named part, "" for none; where the probes go */
function harnessView({ bad, from, to, line }) {
  const ids = ["pins", "connector", "wire", "splice", "loom", "control-plug", "channel", "shared"];
  const at = ids.indexOf(from);
  return {
    pins: query.get("pins") ?? "1 signal, 2 supply, 3 ground", position: "p", where: "", readings: [], wire: null, sizes: [],
    next: from ? { check: "c", why: "", minutes: "3", from, to, line } : null,
    segments: ids.map((id, n) => ({
      id, name: id, chance: "12 %", ppb: 0, branch: id === "shared",
      state: bad ? (id === bad ? "named" : "sound") : n < at ? "sound" : "possible",
    })),
  };
}

/** @param {unknown} body @param {{title?: string, main?: string, other?: string, now?: number}} [frame] */
function screen(body, { title = "Blue estate · rear", main = "Exchange ", other = "other moves", now = 3 } = {}) {
  const words = ["look", "test", "label", "swap", "prove", "close"];
  return html`<div class="screen">
    <header class="screen-head"><a class="screen-back" href="#" aria-label="back">${icon("back")}</a>
      <h1 class="screen-title">${title}</h1><button class="pill" data-state="waiting">4 not sent yet</button></header>
    <ol class="stages">${words.map((word, n) => html`<li class="stage"
      data-state=${n < now ? "done" : n === now ? "now" : "to_come"}><span class="stage-word">${word}</span></li>`)}</ol>
    <main class="screen-body">${body}</main>
    <footer class="screen-foot">${other ? html`<button class="other-button">${other}</button>` : ""}
      <button class="main-button">${main}</button></footer></div>`;
}

const move = html`<section class="card card-now">
  <h2>Exchange right outer with right inner</h2>
  <p>Same part, and the easiest to reach. About 9 minutes with the retest.</p>
  <table class="outlook">
    ${[["75 %", "fault moves to right inner", "the sensor is bad"],
      ["8 %", "fault stays at right outer", "connector, wire or control unit"],
      ["17 %", "no fault anywhere", "dirt or a loose plug; test again"]].map(([chance, result, then]) => html`<tr>
        <th class="outlook-chance">${chance}</th><td><span class="outlook-result">${result}</span>
        <span class="outlook-then">${then}</span></td></tr>`)}
  </table></section>`;

const stop = html`<section class="panel panel-stop">
  <p class="panel-kicker">${icon("stop")} Stop: wrong sensor in your hand</p>
  <h2>This is ${code("K7F-3M", { size: "plain" })}. ${code("P2W-9D", { size: "plain" })} belongs here.</h2>
  <p>Put ${code("K7F-3M", { size: "plain" })} down and pick up ${code("P2W-9D", { size: "plain" })}, which you pulled from
    <strong>right inner</strong>.</p></section>`;

const parts = html`
  <h1>How did the lamp behave?</h1><p class="lead">Key on, engine off. Watch the lamp in the button.</p>
  <ul class="cautions"><li class="caution">${icon("ground", { size: "large" })}<span class="caution-text">Level ground, parking brake on, wheels chocked.</span></li>
    <li class="caution">${icon("reverse", { size: "large" })}<span class="caution-text">Foot on the brake before you select reverse.</span>
      <button class="small-button">I have</button></li></ul>
  <div class="choices"><label class="choice"><input type="radio" name="a" checked><span class="choice-word">It came on and went out</span></label>
    <label class="choice"><input type="radio" name="a"><span class="choice-word">It blinked</span><span class="choice-note">a fault is present now</span></label></div>
  <div class="field"><label class="field-name" for="c">Code on the label</label><input id="c" class="field-code" value="K7F-3M"></div>
  <div class="field"><label class="field-name" for="n">Note</label><input id="n" placeholder="what you saw"><span class="field-fault">Write at least one word.</span></div>
  <section class="panel panel-ask"><p class="panel-kicker">${icon("ask")} Not known yet</p><p>Two phones put this sensor in two places. Scan it again.</p></section>
  <section class="panel panel-good"><p class="panel-kicker">${icon("tick")} Fitted</p><p>${code("P2W-9D", { size: "large" })}</p></section>
  ${markKey()}
  <div class="progress"><span class="progress-words">3 of 6 photos sent</span><progress max="6" value="3"></progress></div>
  <div class="photos"><div class="photo"><img alt=""><span class="photo-words">left outer</span></div></div>
  <div class="list"><a class="list-row" href="#">${mark("fault", { word: "" })}<span class="list-main"><span class="list-title">right outer</span>
    <span class="list-note">fault in both tests</span></span><span class="list-end">${code("K7F-3M")}</span></a></div>
  <label class="check checks"><input type="checkbox" checked><span>Both catches home</span></label>
  <section class="cause"><span class="cause-name">the sensor K7F-3M</span><span class="cause-chance">98.8 %</span></section>
  <dl class="facts"><dt>part</dt><dd>PDC-441</dd><dt>seen</dt><dd>today</dd></dl>
  <details class="more"><summary>What carries this</summary><p>Two tests.</p></details>
  <section class="nothing">${icon("car", { size: "large" })}<h2>No job yet</h2><p>Open one for the vehicle in front of you.</p></section>`;

const verdict = () => html`<h1>The fault followed sensor ${code("K7F-3M", { size: "plain" })}.</h1>
  <p class="lead">Replace the sensor. <strong>98.8 %</strong> sure; the wiring at right outer passed with another sensor.</p>
  ${trail(trailView(query.get("story") ?? "followed"))}
  <section class="card"><p><strong>What else it could be:</strong> dirt that came off in your hand, 1.1 %.</p></section>`;

const scenes = {
  board: () => screen(html`${board(boardView(query.get("kind") ?? "rear", Number(query.get("count") ?? 4), query.has("own")),
    { onPick: (id) => { document.title = id; }, chosen: query.get("chosen") ?? "" })}${query.has("move") ? move : ""}`),
  trail: () => screen(verdict(), { title: "What the tests say", main: "Fit the new sensor", other: "show all", now: 4 }),
  harness: () => screen(html`${harness(harnessView({
    bad: query.get("bad") ?? "", from: query.get("from") ?? "", to: query.get("to") ?? "", line: query.get("line") ?? "",
  }), "the circuit")}`),
  stop: () => screen(html`${stop}`, { title: "Exchange · 3 of 6", main: "Scan again", other: "type the code" }),
  parts: () => screen(parts, { title: "Blue estate", main: "Keep this", other: "", now: 0 }),
  icons: () => screen(html`<div class="choices choices-two">${ICON_NAMES.map((name) => html`<span>${icon(name, { size: "large" })} ${name}</span>`)}</div>`),
};

/**
 * Draws a scene afresh, without a new page: the tests look at hundreds.
 * @param {string} search
 */
async function show(search) {
  query = new URLSearchParams(search);
  const root = document.documentElement;
  delete root.dataset.theme;
  if (query.has("theme")) {
    root.dataset.theme = String(query.get("theme"));
  }
  root.style.fontSize = `${112.5 * Number(query.get("text") ?? 100) / 100}%`;
  document.adoptedStyleSheets = [];
  render(html``, document.body);
  render(scenes[query.get("scene") ?? "board"](), document.body);
  await document.fonts.ready;
}

Object.assign(window, { show });
await show(location.search);
document.body.dataset.ready = "yes";
