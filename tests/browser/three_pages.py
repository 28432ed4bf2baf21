"""A person at a real page who does mostly what an honest one does, and a way to ask the page's own core.

Everything is recorded by the app's own recorder: a step is done by taps on its buttons and by typing labels.
What its core answers is asked beside the app, by the same worker, in messages instead of words.
"""

import json
import random

from server.core.codes import labels
from tests.browser.phone import CODES
from tests.browser.phone import Phone
from tests.browser_support import wait_until

HONEST = 0.75
SOON = 30
#: A roll for each of three, none of the codes that are typed elsewhere in these tests.
LABELS_EACH = 75
_DRAWN = labels.codes_from([(index * 83 + index // 9 * 7 + 29) % 256 for index in range(9000)], 300)
ROLLS = [code for code in _DRAWN if code not in CODES]
#: The worker of the core answers whoever asks; the app takes only the answers to its own questions. One that
#: was started again is given the log first: it is asked beside the app only once the app asks for something.
LISTEN = """() => {
  const Plain = Worker;
  const giving = [
    'canonical', 'reset', 'append', 'restore', 'phones', 'labels_out', 'add', 'insert', 'unload_jobs',
  ];
  const waiting = new Map();
  let present = null;
  let last = 0;
  globalThis.Worker = class extends Plain {
    constructor(address, ...more) {
      super(address, ...more);
      this.isCore = String(address).includes('core/worker');
      if (!this.isCore) return;
      present = null;
      this.addEventListener('message', (event) => {
        const asked = waiting.get(event.data.id);
        if (!asked) return;
        event.stopImmediatePropagation();
        waiting.delete(event.data.id);
        asked.take(event.data);
      });
    }
    postMessage(message, ...more) {
      super.postMessage(message, ...more);
      const op = /"op":"(\\w+)"/.exec(message.text ?? '')?.[1];
      if (!this.isCore || this === present || !op || giving.includes(op)) return;
      present = this;
      for (const [id, { text }] of waiting) super.postMessage({ id, text });
    }
  };
  globalThis.askCore = (text) => new Promise((take) => {
    const id = `beside ${last += 1}`;
    waiting.set(id, { text, take });
    present?.postMessage({ id, text });
  });
}"""
_CLOSING = "li > .list-row:has-text('Job closed'):not(:has(.history-struck))"
_TAKEN_BACK_OR_REFUSED = "() => !document.querySelector('.take-back') || document.querySelector('.refusal')"
_ANSWERS = "[data-step] .answers .answer"
#: Taps one of what can be tapped in the step or under it; what opens a camera or another page is left out.
_TAP = """(lot) => {
  const apart = /camera|scan|picture|speak|listen|print|file|screen|back to/i;
  const found = [...document.querySelectorAll(
    '[data-step] button, [data-step] input[type=radio], [data-step] input[type=checkbox], .screen-foot button'
  )].filter((each) => !each.disabled && !apart.test(each.innerText ?? ''));
  found[Math.floor(lot * found.length)]?.click();
}"""
_WITH_WORDS = """[...document.querySelectorAll('.screen button')]
  .find((each) => !each.disabled && new RegExp(pattern).test(each.textContent.trim()))"""
#: Where labels are typed already no button leads there.
_MAY_TYPE = f"(pattern = '^Type') => Boolean({_WITH_WORDS} ?? document.querySelector('.field-code'))"
_TAP_WORDS = f"(pattern) => {_WITH_WORDS}?.click()"
_CLICK = """([selector, lot]) => {
  const found = [...document.querySelectorAll(selector)].filter((each) => !each.disabled);
  found[Math.floor(lot * found.length)]?.click();
  return found.length;
}"""
_ANSWERS_IT = """([selector, lot]) => {
  const found = [...document.querySelectorAll(selector)].filter((each) => !each.disabled);
  const chosen = found[Math.floor(lot * found.length)];
  globalThis.card = chosen?.closest('[data-step]').querySelector('.answers');
  chosen?.click();
  return found.length > 0;
}"""
_TYPES = """(code) => {
  const field = document.querySelector('.field-code');
  if (!field) return false;
  field.value = code;
  field.dispatchEvent(new Event('input'));
  return true;
}"""


class Fingers:
    """Somebody at a phone; `number` says whose roll of fresh labels it is."""

    def __init__(self, phone: Phone, number: int, dice: random.Random):
        """Take a phone whose page was loaded after `LISTEN` was put into it."""
        self.phone, self.page, self.dice = phone, phone.page, dice
        self.roll = ROLLS[number * LABELS_EACH : (number + 1) * LABELS_EACH]
        self.story: list[str] = []
        self.met: set[str] = set()  # forms of steps
        self.job = ""
        self.view: dict = {}
        self.driver = self  # what asks of a model phone's hands are asked of

    def goes_to(self, address: str) -> None:
        """Show a job."""
        self.page.goto(address)
        self.page.locator("[data-step], .screen-foot button").first.wait_for()
        self.job = address.rpartition("/")[2]
        self.looks()

    def core(self, op: str, **arguments):
        """Ask the core of the page, as it stands."""
        text = json.dumps({"op": op, **arguments})
        answer = self._asked(text)
        if "missing" in answer:  # it was started again, and only what the app itself asks brings it its files
            self.page.goto(f"{self.phone.base}/#/job/{self.job}")
            self.page.reload()
            self.page.locator("[data-step], .screen-foot button").first.wait_for()
            answer = self._asked(text)
        assert answer["ok"], answer
        return answer["value"]

    def _asked(self, text: str) -> dict:
        said = self.page.evaluate("(text) => askCore(text)", text)
        assert "text" in said, said
        return json.loads(said["text"])

    def looks(self) -> dict:
        """Ask for the view of the job."""
        self.view = self.core("job", job=self.job)
        return self.view

    def works(self) -> None:
        """Do one thing at the step: mostly what it is there for, else whatever can be tapped."""
        step = self.looks()["step"]
        self.story.append(f"{self.job} {step['id']}")
        self.met.add(step["form"])
        honest = {
            "test": self._enters_a_test,
            "photo": lambda _: self._clicks(".other-button"),
            "new_unit": self._takes_a_new_one,
            "scan": self._shows_the_label,
            "where_to": self._shows_the_label,
            "contradiction": self._shows_the_label,
            "done": self._takes_the_end_back,
            "checklist": self._puts_right_and_confirms,
        }
        if self.dice.random() > HONEST:
            self.page.evaluate(_TAP, self.dice.random())
        else:
            honest.get(step["form"], self._taps_on)(step)
        self.page.wait_for_timeout(self.dice.choice([30, 150]))

    def types(self, code: str) -> None:
        """Type a label where one is asked for."""
        self.page.evaluate(_TAP_WORDS, "^Type")
        if self.page.evaluate(_TYPES, code):
            self.page.wait_for_timeout(30)
            self._clicks(".main-button")

    def settles(self, _choose) -> None:
        """Settle the contradiction on the screen by one answer; a sensor by its label, read before."""
        step = self.view["step"]
        self.story.append(f"{self.job} settles {step['title']['msg']}")
        if step["expects"]["units"]:
            self.types(self._label_of(step["expects"]["units"][0]))
        # While something is recorded, no answer can be tapped.
        self.page.locator(f"{_ANSWERS}:enabled").first.wait_for()
        assert self.page.evaluate(_ANSWERS_IT, [_ANSWERS, self.dice.random()]), self.phone.text()
        # The core knows of it before the card is gone: what is tapped then is lost.
        wait_until(self.page, "() => !globalThis.card.isConnected", seconds=SOON)
        self.looks()

    def _enters_a_test(self, _step) -> None:
        if not self._clicks("[data-answer]:not([data-answer=other])"):
            self._clicks(".board button")
            self._clicks(".main-button")

    def _takes_a_new_one(self, _step) -> None:
        if not self._clicks(".spares button"):
            self.page.evaluate(_TAP_WORDS, "^It reads")
            self.types(self.roll.pop(0))

    def _shows_the_label(self, step) -> None:
        """Read the label that is asked for; where that is done, answer what is asked then."""
        units = step["expects"].get("units", [step["expects"].get("unit")])
        if units and self.page.evaluate(_MAY_TYPE):
            self.types(self._label_of(units[0]))
        else:
            self.page.evaluate(_TAP, self.dice.random())
            self._taps_on(step)

    def _takes_the_end_back(self, _step) -> None:
        """Take the closing back in the history: at a closed job nobody would do more until the end."""
        address = f"{self.phone.base}/#/job/{self.job}"
        self.page.goto(f"{address}/history")
        self.page.locator(".history-text").first.wait_for()
        if self.page.locator(_CLOSING).count():  # else somebody else was faster
            self.page.locator(_CLOSING).first.click()
            self.page.get_by_label("Why was it wrong?").fill("not done yet")
            self.page.locator(".take-back .small-button").click()
            wait_until(self.page, _TAKEN_BACK_OR_REFUSED, seconds=SOON)
        self.page.goto(address)
        self.page.locator("[data-step], .screen-foot button").first.wait_for()

    def _puts_right_and_confirms(self, step) -> None:
        """Put right what was tapped as not so: while one is, nobody can confirm, and all three stood here."""
        while self._clicks(".check-not"):
            pass
        self._taps_on(step)

    def _taps_on(self, step) -> None:
        if step["form"] in ("choices", "moves", "measure") or not self._clicks(".main-button"):
            self.page.evaluate(_TAP, self.dice.random())

    def _label_of(self, unit: str) -> str:
        worn = [code for code, each in sorted(self.core("state")["codes"].items()) if each == unit]
        return worn[0] if worn else self.roll.pop(0)

    def _clicks(self, selector: str) -> int:
        return self.page.evaluate(_CLICK, [selector, self.dice.random()])
