"""The next moves, best first: by expected minutes until the question is settled.

Once a verdict stands and its cause still acts, there is nothing left to find out: then the moves
are the ones that deal with it.
"""

from . import words
from .case import NOBODY
from .figures import hundredths
from .figures import parts
from .foresight import Foresight
from .foresight import live_fault
from .moves import NEW
from .moves import Move
from .outlook import Outlook
from .sight import Sight

# A person chooses from a handful; working out more would only cost time.
_SHOWN = 6
# Enough explanations for what is ranked; the exact figures do not depend on it.
_ENTRIES = 48
_LIKELY = 0.1


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
        self.acting = self._acting()

    def moves(self) -> list:
        """Return the moves as they are shown, best first."""
        unclear = not self.belief.suspects or not self.foresight.worlds
        if unclear or (self.is_clear and self.model.changed):
            return [self._shown(self._retest(self._why_test()))]
        if self.is_clear:
            return []
        if self.acting:
            chosen = self._fixes()
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
        """Return the causes known to act in a test made now: by the verdict, or beyond it.

        Without a verdict the set of live causes can be known all the same, when what is left in
        doubt is past: a blockage that is gone, a unit on the bench.
        """
        live = self.model.live()
        found = [cause for cause in self.belief.suspects if live[cause]]
        if self.named:
            return [cause for cause in found if self.model.names[cause] in self.named]
        mask, weight = live_fault(self.foresight.worlds, self.sight.live(self.state))
        if parts(weight) < parts(self.case.confidence):
            return []
        return [cause for cause in found if mask >> self.belief.bit[cause] & 1]

    def _ranked(self) -> list:
        """Return the candidates by expected minutes until settled."""
        moves = []
        last = []
        others = self.candidates.moves(self.state, self.scent, 3, True)
        cleared = [move for move in others if move.kind == "exchange" and move.why != "suspects"]
        shared = self._shared()
        for move in others:
            if move.kind == "retest":
                moves.append(self._retest("shared" if shared else self._why_test()))
            elif move.kind == "unplug" or (move.why == "suspects" and cleared):
                # Unplugging tells whether the test can be trusted, nothing about the cause. Two
                # suspects with each other lean on how rare the causes are, not on what is seen.
                last.append(move)
            else:
                moves.append(move)
        if shared:
            # No move here separates what all positions share; look there first.
            return moves + last
        return self.foresight.ranked(self.state, moves) + last

    def _shared(self) -> list:
        """Return the shared causes that are likely, when they alone are the best explanation."""
        worlds = self.foresight.worlds
        shared = [n for n, c in enumerate(self.belief.suspects) if self._is_shared(c)]
        mask = 0
        for n in shared:
            mask |= 1 << n
        if not worlds or not worlds[0][0] or worlds[0][0] & ~mask:
            return []
        return [self.belief.suspects[n] for n in shared if 1.0 - self.belief.expect([(n, 0.0)]) >= _LIKELY]

    def _is_shared(self, cause: int) -> bool:
        return self.model.kinds[cause] in ("feed", "control")

    def _fixes(self) -> list:
        """Return the moves that deal with the causes found, then the test that proves it."""
        model = self.model
        units = []
        found = []
        for cause in self.acting:
            kind = model.kinds[cause]
            if kind == "unit":
                units.append(self.state.fitted.index(model.unit.index(cause)))
            elif kind == "blocked":
                move = self.candidates.clean(model.blocked.index(cause))
                found.append(_because(move, "verdict clean"))
            elif kind == "circuit":
                place = [rows[-1] for rows in model.circuits].index(cause)
                if not self._measured(cause):
                    found.append(_because(self.candidates.meter(place), "verdict meter"))
        if units:
            replace = _because(self.candidates.replace(units), "verdict replace")
            found.insert(0, replace)
            spare = self.candidates.exchanges.spare(self.state, self.scent, units[0], [])
            if spare is not None and len(units) == 1:
                move = self.candidates.exchanges.with_spare(units[0], spare)
                found.insert(1, _because(move, "verdict spare"))
        repairs = [cause for cause in self.acting if self._to_repair(cause)]
        found.append(self._retest("repair" if repairs else "retest"))
        return found

    def _measured(self, cause: int) -> bool:
        return self.model.meter_bad[cause] + self.model.meter_good[cause] > 0

    def _to_repair(self, cause: int) -> bool:
        """Tell whether the next thing is a repair, for which there is no move."""
        return self._is_shared(cause) or (self.model.kinds[cause] == "circuit" and self._measured(cause))

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
            names = self._names(move)
            for n, (place, _) in enumerate(move.fitted):
                shown["fitted"][self.case.positions[place].id] = names[n]
        elif move.place != NOBODY:
            shown["position"] = self.case.positions[move.place].id
        places = self.foresight.results.watched(self.state, move, self.foresight.worlds)
        shown["outlook"], shown["bits_x1000"] = self.outlook.of_test(self.state, move, places)
        return shown

    def _names(self, move: Move) -> list:
        """Return the ids of the units to fit; each new one gets the first name that is free."""
        taken = [known.id for known in self.case.units]
        names = []
        for _, unit in move.fitted:
            name = "new"
            n = 2
            while name in taken:
                name = "new-{}".format(n)
                n += 1
            if unit != NEW:
                name = self.case.units[unit].id
            else:
                taken.append(name)
            names.append(name)
        return names

    def _about(self, move: Move) -> str:
        """Return what the sentence of a move speaks of."""
        if move.why == "shared":
            return words.either([words.cause(self.model, cause) for cause in self._shared()])
        if move.why.startswith("verdict") or move.why == "repair":
            return words.listed([words.cause(self.model, cause) for cause in self._dealt(move)])
        return self.case.positions[move.place].name if move.place != NOBODY else ""

    def _dealt(self, move: Move) -> list:
        """Return the known causes that a move deals with."""
        if move.kind == "retest":
            return [cause for cause in self.acting if self._to_repair(cause)]
        if move.place == NOBODY:
            return [cause for cause in self.acting if self.model.kinds[cause] == "unit"]
        return [cause for cause in self.acting if self._is_at(cause, move.place)]

    def _is_at(self, cause: int, place: int) -> bool:
        return cause == self.model.blocked[place] or cause in self.model.circuits[place]


def _because(move: Move, why: str) -> Move:
    """Return the same move, proposed for another reason."""
    return Move(move.kind, move.place, move.fitted, move.minutes, why)
