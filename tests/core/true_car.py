"""A vehicle with a hidden truth: what is wrong with it, where each part really is, what tests show of it.

Nothing here asks the core. A part is a number; it carries the label that somebody put on it.
"""

import random

from server.core.harness.chain import WARM


class TrueCar:
    """What is true of one vehicle, whatever the app believes of it.

    `faults` are causes as the core names them, but "unit:POSITION" is the part that sits there at first.
    `shows` is the chance that a present fault shows in a test; `warm`: it shows only after heat or a drive.
    """

    def __init__(self, positions, sort, faults=(), shows=1.0, warm=False, seed=0):
        """Put a part into each position."""
        self.dice = random.Random(f"car {seed}")
        self.sort, self.shows, self.warm = sort, shows, warm
        self.groups = {each["id"]: each["group"] for each in positions}
        self.sits = {place: number for number, place in enumerate(self.groups)}
        self.made = len(self.sits)
        self.hand: list[int] = []
        self.shelf: list[int] = []
        self.labels: dict[int, str] = {}
        self.bad = {self.sits[cause.partition(":")[2]] for cause in faults if cause.startswith("unit:")}
        self.faults = {cause for cause in faults if not cause.startswith("unit:")}
        self.ever = set(self.faults)
        self.segments = {cause: self._segment() for cause in sorted(self.faults) if "circuit" in cause}
        # Parts that sit the wrong way round: no self-test sees it.
        self.turned: set[int] = set()

    def _segment(self) -> tuple:
        """Draw where in a circuit its fault is: (segment, kind) of a chain, else the check that sees it."""
        harness = self.sort.harness
        if harness is None:
            return self.dice.choice([each["id"] for each in self.sort.circuit_checks]), ""
        chain = harness.warm if self.warm else harness.chain
        kinds = [(segment.id, kind) for segment in chain.segments for kind in sorted(segment.faults)]
        own = [each for each in kinds if each[0] != "shared" and each[1].startswith("warm") >= self.warm]
        return self.dice.choice(own)

    def new_part(self, bad: bool, among: list[int]) -> int:
        """Take a part out of its box, into the hand or onto the shelf."""
        self.made += 1
        among.append(self.made)
        if bad:
            self.bad.add(self.made)
        return self.made

    def wrong_at(self, place: str, unplugged=()) -> set:
        """Return what is wrong at a position now, as causes."""
        causes = {"circuit:" + place, "feed:" + self.groups[place], "control"}
        part = self.sits[place]
        if place in unplugged or part is None:
            return (self.faults & causes) | {"unplugged"}
        wrong = self.faults & (causes | {"blocked:" + place})
        return wrong | {f"part:{part}"} if part in self.bad else wrong

    def self_test(self, unplugged=(), warmed=False) -> list[str]:
        """Return where a test shows a fault."""
        shown = []
        for place in self.groups:
            for cause in sorted(self.wrong_at(place, unplugged)):
                shows = float(warmed) if self.warm else self.shows
                if self.dice.random() < (1.0 if cause == "unplugged" else shows) and place not in shown:
                    shown.append(place)
        return shown

    def quiet(self) -> list[str]:
        """Return the positions at which a test pole is not seen."""
        shown = self.self_test()
        return [place for place in self.groups if place in shown or self.sits[place] in self.turned]

    def reads(self, place: str, check: str, warmed: bool) -> str:
        """Return what a check of a circuit reads."""
        circuit = "circuit:" + place
        fault = self.segments[circuit] if circuit in self.faults else None
        if fault is None and "feed:" + self.groups[place] in self.faults:
            fault = ("shared", "supply")
        if fault is None:
            # Two channels are exchanged for a fault that stays; here nothing tells where it goes.
            return "unclear" if check == "channels" else "good"
        harness = self.sort.harness
        if harness is None:
            return "bad" if check in fault else "good"
        chain = harness.warm if warmed else harness.chain
        probe = next(each for each in chain.probes if each.id == (check + WARM if warmed else check))
        sees = fault[0] in probe.segments and (not probe.kinds or fault[1] in probe.kinds)
        return "bad" if sees else "good"

    def pull(self, place: str) -> int:
        """Take out what sits at a position; what blocked it goes with that."""
        part = self.sits[place]
        assert part is not None, f"nothing is at {place}"
        self.sits[place] = None
        self.hand.append(part)
        self.faults.discard("blocked:" + place)
        return part

    def fit(self, part: int, place: str) -> None:
        """Put a part from the hand into a position that is empty."""
        assert self.sits[place] is None, f"{place} holds {self.sits[place]}"
        self.hand.remove(part)
        self.sits[place] = part

    def labelled(self, code: str) -> int | None:
        """Return the part that carries a label."""
        return next((part for part in self.labels if self.labels[part] == code), None)

    def is_sound(self) -> bool:
        """Tell whether nothing is wrong any more."""
        return not self.faults and not [
            part for part in self.sits.values() if part is None or part in self.bad
        ]
