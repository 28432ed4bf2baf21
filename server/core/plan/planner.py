"""The next moves, best first: by expected minutes until the question is settled.

Once a verdict stands and its cause still acts, or a single cause is certain, there is nothing left to find
out about it: then the moves are the ones that deal with it. A new part is a move for these only.
"""

from ..infer import holds
from ..infer.case import NOBODY
from ..infer.figures import parts
from ..infer.ordering import by_chance_per_minute
from . import doubts
from . import worth
from .description import Description
from .fills import Fills
from .known import KnownCauses
from .lookahead import LookAhead
from .moves import CLEARED
from .moves import Move
from .moves import because
from .observation import Observation

# A person chooses from a handful; working out more would only cost time. Listening comes on top.
_MOST_MOVES = 6
# Enough explanations for what is ranked; the exact figures do not depend on it.
_ENTRIES = 48
_LIKELY = 0.1
# A unit less surely bad is bought anew only after one more test, where that would make it as sure; more sure
# where the circuit it faults at is not cleared.
_SURE, _SURE_BESIDE_CIRCUIT = 0.995, 0.998


def next_moves(belief, entries: list, answer: dict, variations) -> list:
    """Return the moves as they are shown, best first; none when nothing is left to do.

    `answer` holds what the case says so far: verdict, certain causes, clear.
    """
    return _Planner(belief, entries[:_ENTRIES], answer, variations).moves()


class _Planner:
    """The moves for one belief, and what the case says so far."""

    def __init__(self, belief, entries: list, answer: dict, variations):
        self.belief = belief
        self.model = belief.model
        self.case = belief.model.case
        self.observation = Observation(belief)
        verdict = answer["verdict"]
        weighed = doubts.weighed(belief, entries, answer, variations)
        self.lookahead = LookAhead(self.observation, weighed, verdict is not None, weighed is not entries)
        self.candidates = self.lookahead.candidates
        self.state = self.observation.now()
        self.named = verdict["causes"] if verdict is not None else []
        self.is_clear = holds.is_clear(answer, parts(self.case.confidence))
        self.clear = answer["clear"]
        self.marginals = self.lookahead.marginals(self.state, self.lookahead.hypotheses)
        certain = [entry["cause"] for entry in answer["certain"]]
        self.known_causes = KnownCauses(self.observation, self.lookahead, self.named, certain)
        self.description = Description(
            variations, self.observation, self.lookahead, self.known_causes, self.marginals, entries
        )

    def moves(self) -> list:
        """Return the moves as they are shown, best first."""
        fills = self._fills()
        if fills:
            return [self.description.described(move, n == 0) for n, move in enumerate(fills[:_MOST_MOVES])]
        unclear = not self.belief.suspects or not self.lookahead.hypotheses
        if unclear or (self.is_clear and self.model.changed):
            return [self.description.described(self._retest(self._why_test()), True)]
        if self.is_clear:
            chosen = self._told_apart()
            return [self.description.described(move, n == 0) for n, move in enumerate(chosen)]
        if self.known_causes.acting:
            chosen = self.known_causes.fixes(self.marginals)
            told = self._before_buying(chosen[0]) if chosen[0].kind == "replace" else None
            if told:
                chosen = [told] + [move for move in chosen if move.kind != told.kind]
        else:
            chosen = _with_suspects(self._with_checks(self._ranked()))
            if chosen and self._may_be_a_false_alarm(chosen[0]):
                again = self._retest("before a spare")
                chosen = [again] + [move for move in chosen if move.kind != "retest"]
        return [self.description.described(move, n == 0) for n, move in enumerate(_handful(chosen))]

    def _fills(self) -> list:
        """Return the ways to fit the units in hand, none where nothing is to be filled."""
        known = self.named + [self.model.names[cause] for cause in self.known_causes.acting]
        loose = [n for n in self.case.now.loose if self.model.names[self.model.unit[n]] not in known]
        if not loose or NOBODY not in self.state.fitted:
            return []
        moves = Fills(self.lookahead, self.state, loose).moves()
        return self.lookahead.ranked(self.state, moves, []) if self.lookahead.hypotheses else moves

    def _told_apart(self) -> list:
        """Return the move that puts a unit back for which a spare is in, where it is not known to be bad."""
        spares = self.lookahead.remaining.spares
        if not spares.any:
            return []
        found = spares.to_tell(self.state, self.marginals.spare)
        return [self.candidates.exchanges.back(self.state, *pair) for pair in found[:1]]

    def _before_buying(self, move: Move) -> Move | None:
        """Return the test that tells whether a part may well be bought for nothing, None where none would.

        The same test again, or with the unit in another place: where it faults from the first test on, its
        circuit may have been missed before, and would have one good part after another bought.
        """
        exchanges = self.candidates.exchanges
        for place, _ in move.fitted:
            unit = self.state.fitted[place]
            elsewhere = exchanges.with_cleared(self.state, self.marginals, place)[:1]
            cleared = self.marginals.circuit[place] < CLEARED
            for sure in [_SURE] if cleared else [_SURE_BESIDE_CIRCUIT, _SURE]:
                for test in [self._retest("before buying")] + elsewhere:
                    doubted = self.marginals.unit[place] < sure
                    if doubted and worth.told_by(self.lookahead, self.state, test, unit, sure):
                        return test
        return None

    def _may_be_a_false_alarm(self, move: Move) -> bool:
        """Tell whether a spare would go in on the word of one test: dirt may be what showed before it.

        With the spare in, all is clean for either reason, and a good unit would be called bad.
        """
        if move.why != "spare" or self.lookahead.remaining.often > 1:
            return False
        wiped = not self.state.blockable[move.fitted[0][0]]
        return wiped and not self.model.changed and self.clear > parts(1.0 - _SURE)

    def _retest(self, why: str) -> Move:
        return Move("retest", [], [], self.case.minutes["test"], why)

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

    def _ranked(self) -> list:
        """Return the candidates by expected minutes until settled."""
        moves = []
        last = []
        among = []
        others = self.candidates.moves(self.state, self.marginals, 3, True)
        doubted = self.candidates.by_doubt(self.state, self.marginals)
        others = others + self.lookahead.predictions.listening.moves(self.state, doubted[:1])
        proving = self.candidates.proving(others)
        shared = self.known_causes.shared()
        for move in others:
            if move.kind == "retest":
                moves.append(self._retest("shared" if shared else self._why_test()))
            elif move.kind == "unplug":
                # It tells whether the test can be trusted, nothing about the cause.
                last.append(self._doubted() or move)
            elif move not in proving:
                among.append(move)
            else:
                moves.append(move)
        repairs = self.known_causes.repairs(shared or self.known_causes.likely(self.marginals))
        if shared and self.known_causes.sure(shared):
            # No move here separates what all positions share.
            return repairs + self._checks_in_order([move for move in moves if len(move.places) < 2]) + last
        ranked = self.lookahead.ranked(self.state, moves + repairs + self._new_parts(moves), among)
        if ranked and ranked[0].why == "suspects":
            ranked[0] = because(ranked[0], "suspects first")
        elif among:
            last.append(among[0])
        # The first is weighed with what comes after it; behind it each stands for itself.
        ranked = ranked[:1] + self._checks_in_order(ranked[1:])
        doubt = [move for move in last if move.why == "unplug doubt"]
        return ranked[:1] + doubt + ranked[1:] + [move for move in last if move.why != "unplug doubt"]

    def _with_checks(self, moves: list) -> list:
        """Return the moves with the check of a circuit beside its repair: it has to be found first."""
        ordered = list(moves)
        for repair in [move for move in moves if move.kind == "repair"]:
            for check in [move for move in moves if move.kind == "meter"]:
                if repair.places[0] in self.model.circuits[check.places[0]]:
                    ordered.remove(check)
                    ordered.insert(ordered.index(repair) + 1, check)
        return ordered

    def _new_parts(self, moves: list) -> list:
        """Return the move that fits a new part to be told by it, where nothing is left to exchange with."""
        if [move for move in moves if move.kind == "exchange" and move.why != "suspects"]:
            return []
        places = self.candidates.by_doubt(self.state, self.marginals)
        return [because(self.candidates.replace(self.state, [place]), "replace") for place in places[:1]]

    def _checks_in_order(self, moves: list) -> list:
        """Return the moves with the checks of circuits, among themselves, by chance for their minutes."""
        slots = [n for n, move in enumerate(moves) if move.kind == "meter"]
        checks = [moves[n] for n in slots]
        chances = [self.marginals.circuit[check.places[0]] for check in checks]
        ordered = list(moves)
        for n, check in enumerate(by_chance_per_minute(chances, [check.minutes for check in checks])):
            ordered[slots[n]] = checks[check]
        return ordered

    def _doubted(self) -> Move | None:
        """Return the move that asks whether the test watches a suspect's new place, None without doubt.

        In doubt is a place that reads clean with a suspect in it, and never showed a fault before.
        """
        rows = []
        for place, chance in enumerate(self.marginals.unit):
            faulted_before = [1 for test in self.case.tests if test.heard and place in test.faulted]
            if chance >= _LIKELY and not faulted_before and self.state.fitted[place] != NOBODY:
                rows.append((-int(chance * 1000000 + 0.5), place))
        if not rows or not self.case.tests:
            return None
        return because(self.candidates.unplug(self.state, sorted(rows)[0][1]), "unplug doubt")


def _with_suspects(moves: list) -> list:
    """Return the first moves; an exchange of suspects stays among them, to be told what it lacks."""
    first = _handful(moves)
    for move in moves[len(first) :]:
        if move.why == "suspects":
            first[-1] = move
    return first


def _handful(moves: list) -> list:
    """Return the first moves that are as many as a person chooses from."""
    return moves[: _MOST_MOVES + len([1 for move in moves[:_MOST_MOVES] if move.kind == "listen"])]
