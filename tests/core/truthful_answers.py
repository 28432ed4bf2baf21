"""What a truthful person does at each step of a job, by the form of the step."""

from tests.core.walker import PHOTO


class Answers:
    """The hands of a `Mechanic`."""

    def answer(self) -> str:
        """Do the present step; return what was done."""
        return getattr(self, f"_at_{self.step['form']}", self._at_button)()

    def tap(self, button) -> str:
        """Tap a button."""
        return self.record(*button["events"])

    def _first(self, *buttons) -> str:
        """Tap the first button that records something."""
        return self.tap(next(each for each in buttons if each and each["events"]))

    def _at_button(self):
        step = self.step
        return self._first(step["action"], step["second"], *step["choices"], *step["also"])

    # --- before the first move

    def _at_look(self):
        expects = self.step["expects"]
        dirty = [each["id"] for each in expects["positions"] if "blocked:" + each["id"] in self.car.faults]
        if dirty and not expects["looked"] and self.chance("sees dirt"):
            seen = [{"position": each, "found": expects["found"][0]["id"]} for each in dirty]
            return self.record({"kind": "looked", "data": {"positions": seen, "note": ""}})
        return self.tap(self.step["action"])

    def _at_photo(self):
        place = self.step["expects"]["position"]
        return self.record({"kind": "photo_taken", "data": {**PHOTO, "shows": "position", "position": place}})

    def _at_test(self):
        self.tests += 1
        off, provoking = self.step["expects"]["unplugged"], self.step["expects"]["provoking"]
        data = {"silent": [], "unplugged": off, "codes": [], "came_and_went": False, "note": ""}
        if self.habits.get("mute") or self.chance("unheard"):
            return self.record({"kind": "test_run", "data": {**data, "heard": False, "faulted": []}})
        how = ""
        if provoking:
            offered = [each["id"] for each in provoking["of"]]
            how = self.habits.get("provokes", "")
            how = how if how in offered else provoking["chosen"]
            data |= {"provoked": how} if how else {}
        shown = self.car.self_test(off, how in ("heat", "drive"))
        if shown and self.habits.pop("knows", False):
            data["came_and_went"] = True
        self.record({"kind": "test_run", "data": {**data, "heard": True, "faulted": shown}})
        return f"{shown} {how}"

    # --- parts in the hand

    def _at_scan(self):
        expects, car = self.step["expects"], self.car
        unit, place, do = expects["unit"], expects["position"], expects["do"]
        if do == "fit" and not self.code(unit):
            return self.tap(self.step["second"])
        if do == "mixed":
            part = self._next_mixed()
        elif do == "pull" and self.holds().get(place) == unit:
            part = car.pull(place)
        else:
            part = self.part(unit)
            assert part in (car.shelf if do == "take" else car.hand) or part in self.swapped, self.told()
        if part not in car.labels:
            self.label(part)
        answer = self.driver.core("scan", job=self.driver.job, text=car.labels[part], how="scanned")
        if answer["outcome"] == "stop":
            return self._stopped(answer, part)
        if do == "take":
            car.shelf.remove(part)
            car.hand.append(part)
        elif do == "fit":
            self._fits(part, place)
        self.record(*answer["events"])
        self.units[unit] = part
        return f"{do} {part} {place}"

    def _fits(self, part: int, place: str):
        """Fit what was scanned or, by a slip, the other one that lies beside it."""
        others = [each for each in self.car.hand if each != part]
        if others and self.chance("swaps"):
            self.habits["swaps"] = 0
            self.swapped = {part: others[0], others[0]: part}
        self.car.fit(self.swapped.pop(part, part), place)

    def _stopped(self, answer, part: int) -> str:
        """Do as the stop says: it goes back to where it is on record, what sits there comes out for it."""
        self.record(*answer["events"])
        holds = self.holds()
        place = next(each for each in holds if self.part(holds[each]) == part)
        other = self.car.pull(place)
        self.car.fit(part, place)
        answer = self.driver.core("scan", job=self.driver.job, text=self.car.labels[other], how="scanned")
        self.record(*answer["events"])
        return f"stopped with {part}, which goes to {place}"

    def _next_mixed(self) -> int:
        """Return the part whose label comes next after a mix-up: one that kept its own first, as is asked."""
        units = self.driver.core("state")["units"].values()
        own = [each["code"] for each in units if each["place"] == "mixed" and each["code"]]
        kept = [part for part in self.car.hand if self.car.labels.get(part) in own]
        return kept[0] if kept else next(part for part in self.car.hand if part not in self.car.labels)

    def _at_checklist(self):
        for place in self.step["expects"]["positions"]:
            if self.chance("turned"):
                self.car.turned.add(self.car.sits[place])
        return self.tap(self.step["action"])

    def _at_new_unit(self):
        return self._fetches(self.step)

    def _fetches(self, form) -> str:
        """Take what lies at hand, else buy a part."""
        if form["choices"]:
            return self.tap(form["choices"][0])
        place, number = form["expects"]["position"], form["expects"]["part"]
        sits = self.car.sits[place]
        new = self.car.new_part(self.chance("new is bad"), self.car.hand)
        self.bought.append("for a bad one" if sits is None or sits in self.car.bad else "for a good one")
        unit = f"unew{new:08d}"
        other, reason = ("-B", "it supersedes it") if self.chance("other number") else ("", "")
        added = {"unit": unit, "part": number + other, "serial": "", "how": "scanned", "place": "out"}
        begun = {"move": "replace", "fitted": {place: unit}, "position": place, "reason": reason}
        self.record(
            {"kind": "unit_added", "data": {**added, "code": self.label(new)}},
            {"kind": "move_started", "data": begun},
        )
        return f"new {new} for {sits} at {place}"

    # --- moves and the wiring

    def _at_moves(self):
        for move in self.view["moves"]:
            if move["repair"]:
                cause = self._repairs(move["repair"])
                if cause in self.car.faults or cause == "control":
                    return self.tap(move["repair"])
                self.not_honest.append((self.steps, self.step["id"], "nothing is wrong with " + cause))
            elif move["form"]:
                return self._fetches(move["form"])
            elif move["move"] == "listen":
                return self._listens(move["touches"])
            else:
                self.tap(move)
                return f"{move['move']} {move['touches']}"
        raise AssertionError(f"no move\n{self.told()}")

    def _listens(self, places) -> str:
        event = self.view["listen"]["event"]
        silent = [each for each in places if self.car.wrong_at(each) and self.car.dice.random() < 0.8]
        ticks = [each for each in places if each not in silent]
        self.record({**event, "data": {**event["data"], "ticks": ticks, "silent": silent}})
        return f"ticks {ticks}, silent {silent}"

    def _repairs(self, button) -> str:
        """Return the cause that a button says was repaired, the last one where there are several; or ""."""
        causes = [each["data"]["cause"] for each in button["events"] if each["kind"] == "circuit_repaired"]
        return causes[-1].partition("#")[0] if causes else ""

    def _at_measure(self):
        return self._reads(self.step)

    def _reads(self, step) -> str:
        place, check, offered = step["expects"]["position"], step["expects"]["check"], step["choices"]
        reads = self.car.reads(place, check, "provoked" in offered[0]["events"][0]["data"])
        chosen = next((each for each in offered if each["reads"] == reads), offered[0])
        self.tap(chosen)
        return f"{check} {chosen['reads']}"

    def _at_found(self):
        button = self.step["action"]
        cause, segment = self._repairs(button), button["events"][0]["data"].get("segment")
        if cause in self.car.faults and self.car.segments[cause][0] == segment:
            return self.tap(button)
        self.not_honest.append((self.steps, self.step["id"], f"{cause} is not at {segment}"))
        if self.step["further"]:
            return self._reads(self.step["further"])
        return self._first(self.step["second"], *self.step["also"], button)

    def _at_choices(self):
        step = self.step
        if step["id"].startswith("sounder."):
            return self._at_sounder()
        for choice in step["choices"]:
            if self._repairs(choice) in self.car.faults:
                return self.tap(choice)
        again = self.came_again[step["id"]] = self.came_again.get(step["id"], 0) + 1
        if again > 1 and step["second"]:
            return self._at_moves()
        # Whether a control unit is bad is known once there is another.
        honest = [each for each in step["choices"] if self._repairs(each) in ("", "control")]
        return self._first(*honest, *step["also"], step["second"])

    def _at_sounder(self):
        mute = self.habits.get("mute")
        if not mute and self.step["also"]:
            return self.tap(self.step["also"][0])  # it was only not heard: once more
        for choice in self.step["choices"]:
            done = choice["events"][0]
            mended = done["kind"] == "sounder_checked" and done["data"] == {"check": mute, "found": "mended"}
            if mended or (self._repairs(choice) == "control" and mute == "control"):
                self.habits["mute"] = ""
                if mute == "control":
                    self.car.faults.add("control")
                    self.car.ever.add("control")
                return self.tap(choice)
        return self.tap(self.step["choices"][0])

    # --- the end

    def _at_walk(self):
        if self.step["id"] == "walk.again":
            self.car.turned.clear()
        quiet = self.car.quiet()
        again = self.came_again["walk"] = self.came_again.get("walk", 0) + 1
        if not quiet:
            return self.tap(self.step["action"])
        if again > 3:
            return self.tap(self.step["also"][0])
        heard = [each["id"] for each in self.step["expects"]["positions"] if each["id"] not in quiet]
        self.record({"kind": "walk_checked", "data": {"positions": heard, "missed": quiet}})
        return f"quiet {quiet}"

    def _at_close(self):
        return self._at_where_to() if self.step["choices"] else self._at_button()

    def _at_where_to(self):
        # What the app called bad goes to the counter, any other part into stock.
        goal = "counter" if "unit:" + self.step["expects"]["unit"] in self.verdict() else "stock"
        for choice in self.step["choices"]:
            moved = [each["data"] for each in choice["events"] if each["kind"] == "unit_moved"]
            if moved and moved[0]["place"] == goal:
                if choice["wants"] == "note":
                    moved[0]["note"] = "not known to be bad"
                self.tap(choice)
                return goal
        raise AssertionError(f"no {goal}\n{self.told()}")
