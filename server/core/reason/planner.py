"""The next moves, best first: by expected minutes until the question is settled.

Once a verdict stands and its cause still acts, there is nothing left to find out: then the moves
are the ones that deal with it.
"""

from . import words
from .case import NOBODY
from .figures import hundredths
from .figures import parts
from .foresight import Foresight
from .moves import NEW
from .moves import Move
from .outlook import Outlook
from .sight import Sight

# A person chooses from a handful; working out more would only cost time.
_SHOWN = 6
# Enough explanations for what is ranked; the exact figures do not depend on it.
_ENTRIES = 48


def next_moves(belief, entries: list, verdict, clear: float) -> list:
    """Return the moves as they are shown, best first; none when nothing is left to do."""
    return _Planner(belief, entries[:_ENTRIES], verdict, clear).moves()


class _Planner:
    """The moves for one belief; `verdict` and `clear` are what the case says so far."""

    def __init__(self, belief, entries: list, verdict, clear: float):
        self.belief = belief
        self.model = belief.model
        self.case = belief.model.case
        self.sight = Sight(belief)
        self.outlook = Outlook(self.sight, entries)
        self.foresight = Foresight(self.sight, entries, verdict is not None)
        self.candidates = self.foresight.candidates
        self.state = self.sight.now()
        self.named = verdict["causes"] if verdict is not None else []
        self.is_clear = parts(clear) >= parts(self.case.confidence)
        self.scent = self.foresight.scent(self.state, self.foresight.worlds)

    def moves(self) -> list:
        """Return the moves as they are shown, best first."""
        if not self.belief.suspects or (self.is_clear and self.model.changed):
            return [self._shown(self._retest(self._why_test()))]
        if self.is_clear:
            return []
        acting = self._acting()
        if acting:
            chosen = self._fixes(acting)
        else:
            chosen = self._ranked()
        return [self._shown(move) for move in chosen[:_SHOWN]]

    def _retest(self, why: str) -> Move:
        return Move("retest", NOBODY, [], self.case.minutes["test"], why)

    def _why_test(self) -> str:
        if self.model.changed:
            return "changed"
        if self.model.ignored and self.model.ignored[-1][0] == len(self.case.tests) - 1:
            return "aside"
        if not self.model.counted:
            return "first"
        if not self.belief.suspects:
            return "no fault"
        return "gone" if self.named else "retest"

    def _acting(self) -> list:
        """Return the causes of the verdict that would still act in a test made now."""
        live = self.model.live()
        return [
            cause for cause in self.belief.suspects if live[cause] and self.model.names[cause] in self.named
        ]

    def _ranked(self) -> list:
        """Return the candidates by expected minutes until settled."""
        moves = []
        checks = []
        for move in self.candidates.moves(self.state, self.scent, 3, True):
            if move.kind == "retest":
                moves.append(self._retest(self._why_test()))
            elif move.kind == "unplug":
                # It tells whether the test can be trusted, nothing about the cause: never first.
                checks.append(move)
            else:
                moves.append(move)
        return [move for _, move in self.foresight.ranked(self.state, moves)] + checks

    def _fixes(self, acting: list) -> list:
        """Return the moves that deal with the causes found, then the test that proves it."""
        model = self.model
        units = []
        found = []
        for cause in acting:
            kind = model.kinds[cause]
            if kind == "unit":
                units.append(self.state.fitted.index(model.unit.index(cause)))
            elif kind == "blocked":
                move = self.candidates.clean(model.blocked.index(cause))
                found.append(_because(move, "verdict clean"))
            elif kind == "circuit":
                place = [rows[-1] for rows in model.circuits].index(cause)
                found.append(_because(self.candidates.meter(place), "verdict meter"))
        if units:
            replace = _because(self.candidates.replace(units), "verdict replace")
            found.insert(0, replace)
            spare = self.candidates.spare(self.state, self.scent, units[0])
            if spare is not None and len(units) == 1:
                move = self.candidates.with_spare(units[0], spare)
                found.insert(1, _because(move, "verdict spare"))
        shared = [cause for cause in acting if model.kinds[cause] in ("feed", "control")]
        found.append(self._retest("repair" if shared else self._why_test()))
        return found

    def _shown(self, move: Move) -> dict:
        """Return a move with its reason and its outlook."""
        minutes = hundredths(move.minutes)
        shown = {
            "move": move.kind,
            "minutes_x100": minutes,
            "reason": words.reason(
                move.why, self._about(move), minutes, move.kind not in ("retest", "meter")
            ),
        }
        if move.kind == "meter":
            shown["position"] = self.case.positions[move.place].id
            shown["outlook"], shown["bits_x1000"] = self.outlook.of_meter(move)
            return shown
        if move.fitted:
            shown["fitted"] = {}
            for place, unit in move.fitted:
                shown["fitted"][self.case.positions[place].id] = self._unit_id(unit)
        elif move.place != NOBODY:
            shown["position"] = self.case.positions[move.place].id
        places = self.foresight.watched(self.state, move, self.foresight.worlds)
        shown["outlook"], shown["bits_x1000"] = self.outlook.of_test(self.state, move, places)
        return shown

    def _unit_id(self, unit: int) -> str:
        """Return the id of a unit; a new one gets the first name that is free."""
        if unit != NEW:
            return self.case.units[unit].id
        taken = [known.id for known in self.case.units]
        name = "new"
        n = 2
        while name in taken:
            name = "new-{}".format(n)
            n += 1
        return name

    def _about(self, move: Move) -> str:
        """Return what the sentence of a move speaks of."""
        if move.why.startswith("verdict") or move.why == "repair":
            acting = self._acting()
            if move.why == "repair":
                kinds = ("feed", "control")
            elif move.why in ("verdict replace", "verdict spare"):
                kinds = ("unit",)
            else:
                kinds = ("blocked",) if move.kind == "clean" else ("circuit",)
            names = []
            for cause in acting:
                if self.model.kinds[cause] in kinds:
                    if move.place == NOBODY or self._is_at(cause, move.place):
                        names.append(words.cause(self.model, cause))
            return words.listed(names)
        return self.case.positions[move.place].name if move.place != NOBODY else ""

    def _is_at(self, cause: int, place: int) -> bool:
        model = self.model
        return cause == model.blocked[place] or cause in model.circuits[place]


def _because(move: Move, why: str) -> Move:
    """Return the same move, proposed for another reason."""
    return Move(move.kind, move.place, move.fitted, move.minutes, why)
