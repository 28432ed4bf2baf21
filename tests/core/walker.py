"""Walks through a job as anybody might: at each step any of the answers that it allows.

The walker reads steps by their form, so that it needs no change when a step gets another one of those.
What can be wrong with a step is said by `Walker.do`: an answer that is offered and then refused, and a
screen that is the same again although nothing that it shows or rests on has changed.
"""

import json

from server.core.host import Host
from tests.core.driver import Driver
from tests.hosts import CHANGES_LOG

CODES_SEED = [(index * 89 + index // 7 * 31 + 17) % 256 for index in range(2000)]
PHOTO = {"sha256": "ab" * 32, "mime": "image/jpeg", "bytes": 9, "width": 4, "height": 3, "unit": ""}


class Stuck(AssertionError):
    """A walk found a step that leads nowhere."""


def quick_core():
    """Return a core of its own that answers in messages, not in words: much quicker.

    What it has said of the present log it says again at once: a driver looks at a step, and then taps.
    """
    host = Host()
    said: dict[str, str] = {}

    def ask(op, **arguments):
        text = json.dumps({"op": op, **arguments})
        if op in CHANGES_LOG:
            said.clear()
        if text not in said:
            said[text] = host.call(text)
        answer = json.loads(said[text])
        assert answer["ok"], answer
        return answer["value"]

    return ask


class Answer:
    """One thing that somebody can do at a step: `drafts` to record, or a label to `scan`."""

    def __init__(self, name, drafts=(), scan=None, wrong=False):
        """Name it for the story of a walk; `wrong` where it is stopped and the step stays."""
        self.name = name
        self.drafts = list(drafts)
        self.scan = scan
        self.wrong = wrong

    def leaves(self):
        """Tell whether it leaves something as it is: a position empty, a sensor where it was tested."""
        return bool(self.drafts) and self.drafts[0]["kind"] == "left_deliberately"


class Walker:
    """Somebody at work on one job of a vehicle whose faults are known to the walk alone."""

    def __init__(self, faults=(), positions=4, layout="rear-4"):
        """Open a job on the first positions of a layout; `faults` are causes: "unit:U", "circuit:P", ..."""
        self.driver = Driver(quick_core())
        self.driver.codes = self.driver.core("codes", random=CODES_SEED, count=200)
        self.driver.open(layout=layout, first=positions)
        self.faults = dict.fromkeys(faults, True)
        self.story = []
        self.added = 0
        self.view = self.driver.view()

    # --- what can be done

    def answers(self):
        """Return every answer that the present step allows; the first one is what an honest person does."""
        step = self.view["step"]
        form = step["form"]
        found = getattr(self, f"_at_{form}", self._at_choices)(step)
        for name in ("action", "second"):
            if (
                form not in ("look", "test", "photo", "new_unit", "scan")
                and step[name]
                and step[name]["events"]
            ):
                found.append(Answer(name, step[name]["events"]))
        if step.get("further"):
            found += self._at_measure(step["further"])
        if form in ("photo", "scan") and step["second"] and step["second"]["events"]:
            found.append(Answer("second", step["second"]["events"]))
        found += [Answer(f"also {n}", way["events"]) for n, way in enumerate(step["also"]) if way["events"]]
        return found

    def ways(self):
        """Return the other ways: a repair, a pause, the end."""
        ways = self.view["ways"]
        if not ways:
            return []
        found = [_way("repair", each) for each in ways["repair"]["choices"]]
        found += [_way("pause", each) for each in (ways["pause"] or {"choices": []})["choices"]]
        close = ways["close"]
        if not close["blockers"]:
            found += [_way("close", each) for each in close["choices"]]
        if close["stop"]:
            found.append(Answer("stop", close["stop"]["events"]))
        for each in close["settle"]:
            found += [Answer("settle", _told_why(choice)) for choice in each["choices"]]
        return found

    def _at_choices(self, step):
        offered = [_told_why(each) for each in step["choices"]]
        return [Answer(f"choice {n}", events) for n, events in enumerate(offered) if events]

    def _at_look(self, step):
        expects = step["expects"]
        seen = [{"position": expects["positions"][0]["id"], "found": expects["found"][0]["id"]}]
        answers = [Answer("all right", step["action"]["events"])]
        for lamp in expects["lamps"]:
            for choice in lamp["choices"][1:]:
                shown = {"when": lamp["when"], "result": choice["id"], "note": ""}
                answers.append(Answer(f"lamp {choice['id']}", [{"kind": "lamp_checked", "data": shown}]))
        if not expects["looked"]:
            looked = {"positions": seen, "note": ""}
            answers.append(Answer("seen", [{"kind": "looked", "data": looked}]))
        return answers

    def _at_photo(self, step):
        expects = step["expects"]
        places = expects["position"] if isinstance(expects["position"], list) else [expects["position"]]
        taken = [{**PHOTO, "shows": "position", "position": place} for place in places]
        return [Answer("photo", [{"kind": "photo_taken", "data": each} for each in taken])]

    def _at_test(self, step):
        places = [each["id"] for each in step["expects"]["positions"]]
        off = step["expects"]["unplugged"]
        shown = self._shows(off)
        results = [shown, [], *[[place] for place in places], places]
        found = []
        for result in results:
            if result not in [each.drafts[0]["data"]["faulted"] for each in found]:
                found.append(Answer(f"test {result}", [_test(result, off)]))
        found.append(Answer("test not heard", [_test([], off, heard=False)]))
        found.append(Answer("test came and went", [_test(shown, off, came_and_went=True)]))
        return found + self._at_choices(step)

    def _shows(self, off):
        """Return which positions the test finds faulted, by the faults that there are."""
        state = self.driver.core("state")
        holds = state["vehicles"]["v1"]["holds"]
        groups = {each["id"]: each["group"] for each in state["jobs"][self.driver.job]["positions"]}
        shown = []
        for place in groups:
            of_place = ("circuit:" + place, "blocked:" + place, "feed:" + groups[place], "control")
            causes = [*of_place, f"unit:{holds.get(place)}"]
            if place in off or not holds.get(place) or any(cause in self.faults for cause in causes):
                shown.append(place)
        return shown

    def _at_measure(self, step):
        found = self._at_choices(step)
        bad = "circuit:" + step["expects"]["position"] in self.faults
        good = [each for each, choice in zip(found, step["choices"], strict=True)
                if choice["reads"] == ("bad" if bad else "good")]  # fmt: skip
        return good + [each for each in found if each not in good]

    def readings(self, reads):
        """Return the answers at a check of the wiring that read so, none at another step."""
        step = self.view["step"]
        asked = step if step["form"] == "measure" else step.get("further")
        chosen = [each for each in asked["choices"] if each["reads"] == reads] if asked else []
        return [Answer(reads, each["events"]) for each in chosen]

    def _at_scan(self, step):
        expects = step["expects"]
        right = self.driver.label_of(expects["unit"])
        on_units = self.driver.core("state")["codes"]
        wrong = [code for code in sorted(on_units) if on_units[code] != expects["unit"]]
        found = [Answer("scan", scan=right)]
        if wrong:
            found.append(Answer("scan of another", scan=wrong[-1], wrong=True))
        return found

    def _at_where_to(self, step):
        return [
            *self._at_choices(step),
            Answer("scan", scan=self.driver.label_of(step["expects"]["unit"]), wrong=True),
        ]

    def _at_contradiction(self, step):
        """Return what settles it on this job: the answers to a label that is read, or those of the step."""
        offered = step["choices"]
        if step["expects"]["units"]:
            label = self.driver.label_of(step["expects"]["units"][0])
            said = self.driver.core("scan", job=self.driver.job, text=label, how="scanned")
            offered = said["choices"] + said["others"]
        here = [each for each in offered if each["job"] == self.driver.job]
        return [Answer(f"settled {n}", each["events"]) for n, each in enumerate(here)]

    def _at_moves(self, _step):
        found = []
        for n, move in enumerate(self.view["moves"]):
            if move["form"]:
                found += [
                    Answer(f"move {n}: {each.name}", each.drafts) for each in self._at_new_unit(move["form"])
                ]
            elif move["move"] == "listen":
                found += self._heard(move["touches"][0])
            else:
                events = (move["repair"] or move)["events"]
                found.append(Answer(f"move {n}: {move['move']}", events))
        return found

    def _heard(self, place):
        """What is heard at a position: first what its faults make of it."""
        unit = self.driver.core("state")["vehicles"][self.view["vehicle"]["id"]]["holds"].get(place)
        answers = ["ticks", "silent"]
        if f"unit:{unit}" in self.faults or f"circuit:{place}" in self.faults:
            answers.reverse()
        event = self.view["listen"]["event"]
        return [
            Answer(f"{each} at {place}", [{**event, "data": {**event["data"], each: [place]}}])
            for each in answers
        ]

    def _at_new_unit(self, step):
        place = step["expects"]["position"]
        unit = f"unew{self.added:09d}"
        new = {"unit": unit, "part": step["expects"]["part"] or "PS-1", "serial": "", "how": "scanned"}
        new.update(code=self.driver.label_of(unit), place="out")
        begun = {"move": "replace", "fitted": {place: unit}, "position": place, "reason": ""}
        found = [
            Answer(
                f"new unit at {place}",
                [{"kind": "unit_added", "data": new}, {"kind": "move_started", "data": begun}],
            )
        ]
        return found + self._at_choices(step)

    def _at_walk(self, step):
        places = [each["id"] for each in step["expects"]["positions"]]
        missed = {"positions": places[1:], "missed": places[:1]}
        return [
            Answer("all heard", step["action"]["events"]),
            Answer("one missed", [{"kind": "walk_checked", "data": missed}]),
        ]

    # --- doing it

    def do(self, answer):
        """Do it, and raise Stuck where it is refused or the screen then says the same again."""
        before = self.view
        self.story.append(f"{before['step']['id']}: {answer.name}")
        if answer.scan:
            said = self.driver.core("scan", job=self.driver.job, text=answer.scan, how="scanned")
            drafts = said.get("events", [])
        else:
            drafts = answer.drafts
        refusal = self.driver.check(*drafts) if drafts else None
        if refusal:
            raise Stuck(f"refused: {json.dumps(refusal)}\n{self.told()}")
        for draft in drafts:
            self._take_effect(draft)
            self.driver.force(draft["kind"], **draft["data"])
        self.view = self.driver.view()
        if (
            not answer.wrong
            and screen(before) == screen(self.view)
            and standing(before) == standing(self.view)
        ):
            raise Stuck(f"the same screen again: {self.view['step']['id']}\n{self.told()}")

    def _take_effect(self, draft):
        """A repair ends what it repairs, cleaning what blocks a position."""
        data = draft["data"]
        if draft["kind"] == "circuit_repaired":
            self.faults.pop(data["cause"].partition("#")[0], None)
        elif draft["kind"] == "cleaned" or draft["kind"] == "unit_pulled":
            self.faults.pop("blocked:" + data["position"], None)
        elif draft["kind"] == "unit_added":
            self.added += 1

    def told(self):
        """Return the story of the walk so far."""
        return "\n".join(self.story)

    def bookmark(self):
        """Return where the walk stands, for `go_back`."""
        driver = self.driver
        return [*driver.events], driver.seq, driver.prev, {**self.faults}, self.added, [*self.story]

    def go_back(self, mark):
        """Stand again where the walk stood."""
        events, self.driver.seq, self.driver.prev, faults, self.added, story = mark
        self.driver.events, self.faults, self.story = [*events], {**faults}, [*story]
        self.driver.core("reset", events=[{"event": event} for event in events])
        self.view = self.driver.view()

    def finish(self, most=60):
        """End it without a repair: what is half done is stopped, what is out goes where the steps say."""
        for _ in range(most):
            if self.view["closed"]:
                return
            close = self.view["ways"]["close"]
            left = [each for each in self.answers() if each.leaves()]
            if not close["blockers"]:
                self.do(_way("close", close["choices"][0]))
            elif close["stop"]:
                self.do(Answer("stop", close["stop"]["events"]))
            elif left:
                self.do(left[0])
            elif close["settle"] and self.view["step"]["form"] != "scan":
                self.do(Answer("settle", close["settle"][0]["choices"][0]["events"]))
            else:
                self.do(self.answers()[0])
        raise Stuck(f"it does not end\n{self.told()}")


def _way(way, choice):
    typed = {"note": "so it is"} if choice["wants"] == "note" else {}
    *before, last = choice["events"]
    return Answer(f"{way} {choice['id']}", [*before, {**last, "data": {**last["data"], **typed}}])


def _told_why(choice):
    """Return the facts of a choice, with the reason that it asks for."""
    events = choice.get("events")
    if choice.get("wants") != "note":
        return events
    return [
        {**each, "data": {**each["data"], "note": "for a try"}} if each["kind"] == "unit_moved" else each
        for each in events
    ]


def _test(faulted, off, heard=True, came_and_went=False):
    data = {"heard": heard, "faulted": faulted, "silent": [], "unplugged": off, "codes": []}
    return {"kind": "test_run", "data": {**data, "came_and_went": came_and_went, "note": ""}}


def screen(view):
    """Return what a person takes for the screen of a step; the number of a test says nothing new."""
    step = view["step"]
    expects = {name: step["expects"][name] for name in step["expects"] if name != "number"}
    choices = [choice.get("words") for choice in step["choices"] + step["also"]]
    shown = [step["id"], step["title"], step["text"], expects, step["progress"], choices]
    # Where a segment is named, the check that is left stands behind its own button.
    return json.dumps([*shown, step.get("further")], sort_keys=True)


def standing(view):
    """Return what a job shows of its evidence and state besides the step; tests set aside are no evidence."""
    shown = {name: view[name] for name in ("board", "out", "mixed", "disputes", "paused")}
    told = view["reasoning"] or {"causes": [], "verdict": None, "clear": 0}
    shown["reasoning"] = [told[name] for name in ("causes", "verdict", "clear")]
    shown["counted"] = [each["counted"] for each in view["trail"]["tests"]].count(True)
    kinds = [each["kind"] for each in view["history"]]
    shown["did"] = [kinds.count(kind) for kind in ("circuit_repaired", "walk_checked")]
    shown["ways"] = view["ways"] and view["ways"]["close"]["stop"]
    return json.dumps(shown, sort_keys=True)
