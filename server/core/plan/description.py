"""A move as it is shown: its reason, its minutes, its outlook, and what speaks against it."""

from ..infer import cost
from ..infer import reasons
from ..infer.figures import hundredths
from ..messages import all_of
from ..messages import any_of
from . import why_not
from .moves import NEW
from .moves import Move
from .outlook import Outlook


class Description:
    """Describes the moves of one belief."""

    def __init__(self, variations, observation, lookahead, known_causes, marginals, entries: list):
        self.belief = observation.belief
        self.model = observation.model
        self.case = observation.case
        self.state = observation.now()
        self.lookahead = lookahead
        self.known_causes = known_causes
        self.marginals = marginals
        self.outlook = Outlook(variations, observation, entries)

    def described(self, move: Move, best: bool) -> dict:
        """Return a move with its reason, its outlook, and what speaks against it."""
        told = self._without_objections(move)
        if not best:
            against = why_not.sentence(move, told["bits_x1000"], self._untested(move))
            if against:
                told["why_not"] = against
        if self.case.money is not None:
            bought = len([1 for _, unit in move.fitted if unit == NEW])
            told["cost"] = cost.cost(self.case.money, told["minutes_x100"], bought)
        return told

    def _untested(self, move: Move) -> bool:
        """Tell whether a move fits a spare that no test has seen clean and no history speaks for."""
        for _, unit in move.fitted:
            if unit >= 0 and unit not in self.state.fitted:
                cause = self.model.unit[unit]
                if self.model.clean[cause] == 0 and cause not in self.belief.bit:
                    if self.model.priors[cause] >= self.case.rates["unit"]:
                        return True
        return False

    def _without_objections(self, move: Move) -> dict:
        """Return a move with its reason and its outlook."""
        minutes = hundredths(move.minutes)
        told = {
            "move": move.kind,
            "minutes_x100": minutes,
            "reason": reasons.reason(
                move.why,
                self._about(move),
                minutes,
                move.kind not in ("retest", "meter", "listen"),
                self.case.sort,
            ),
        }
        if move.kind == "repair":
            told["cause"] = self.model.names[move.places[0]]
        if move.kind == "meter":
            told["position"] = self.case.positions[move.places[0]].id
            told["outlook"], told["bits_x1000"] = self.outlook.of_meter(move)
            return told
        if move.kind == "listen":
            told["position"] = self.case.positions[move.places[0]].id
            listening = self.lookahead.predictions.listening
            told["outlook"], told["bits_x1000"] = listening.outlook(
                move, self.outlook.entries, self.outlook.foreseen
            )
            return told
        if move.fitted:
            told["fitted"] = {}
            names = self._names(move)
            for n, (place, _) in enumerate(move.fitted):
                told["fitted"][self.case.positions[place].id] = names[n]
        elif len(move.places) == 1 and move.kind != "repair":
            told["position"] = self.case.positions[move.places[0]].id
        elif len(move.places) > 1:
            told["positions"] = [self.case.positions[place].id for place in move.places]
        places = self.lookahead.predictions.watched(self.state, move, self.lookahead.hypotheses)
        told["outlook"], told["bits_x1000"] = self.outlook.of_test(self.state, move, places)
        return told

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

    def _about(self, move: Move) -> dict:
        """Return what the sentence of a move speaks of."""
        if move.why == "shared":
            return any_of([reasons.cause(self.model, cause) for cause in self.known_causes.shared()])
        if move.why.startswith("verdict") or move.why == "repair":
            return all_of([reasons.cause(self.model, cause) for cause in self.known_causes.dealt(move)])
        return all_of([self.case.positions[place].name for place in move.places])
