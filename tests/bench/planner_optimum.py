"""The cheapest policy there can be, by dynamic programming over beliefs, and what ours costs there.

For small boards on which a fault always shows and nothing else does: each result then only strikes
out explanations, so that a belief is the set of those that are left. Written from the design alone;
the planner is asked through the published case. Settled means the same as in planner_policies.py.
"""

from collections import namedtuple
from itertools import chain
from itertools import combinations
from itertools import permutations

from server.core.plan.answer import reason
from tests.bench.planner_cars import MINUTES
from tests.bench.planner_cars import SEAT
from tests.bench.planner_cars import cleaned_by
from tests.bench.planner_cars import hung_by
from tests.bench.planner_cars import minutes_of
from tests.bench.planner_cars import repaired_by
from tests.bench.worlds import ASSUMED

CONFIDENCE = 0.95
BOUGHT = ["new", "new-2"]
RATES = {"shows": 1, "false_alarm": 0, "meter_sees": 1, "meter_false": 0}

# `hypotheses` numbers of the explanations left, `fitted` the unit at each place, `open` the places that
# may be blocked, `seen` the causes that were behind a fault, `mended` those repaired since, `hanging` the
# places at which a unit hangs.
State = namedtuple("State", ("hypotheses", "fitted", "open", "seen", "mended", "hanging"))


class Board:
    """Positions of one group with given reach, and spares with given priors."""

    def __init__(self, reach: list, spares=(), among_suspects=True):
        """Enumerate what can be wrong; what is rarer than one in fifty million is left out.

        Without `among_suspects`, no exchange has suspects only: what that proves leans on how rare
        the causes are, not on what is seen, and the planner keeps off it on purpose.
        """
        self.among_suspects = among_suspects
        self.places = [f"p{n}" for n in range(len(reach))]
        self.reach = dict(zip(self.places, reach, strict=True))
        self.units = [f"u{n}" for n in range(len(reach))] + [f"s{n}" for n in range(len(spares))]
        chances = {f"unit:{unit}": ASSUMED["unit"] for unit in self.units}
        chances.update({f"unit:s{n}": prior for n, prior in enumerate(spares)})
        for place in self.places:
            chances[f"circuit:{place}"] = ASSUMED["circuit"]
            chances[f"blocked:{place}"] = ASSUMED["blocked"]
        chances["feed:g"], chances["control"] = ASSUMED["feed"], ASSUMED["control"]
        # Bought one after the other when the planner says so; the optimum buys nothing.
        chances.update({f"unit:{unit}": ASSUMED["unit"] for unit in BOUGHT})
        self.spares = {f"s{n}": prior for n, prior in enumerate(spares)}
        self.hypotheses = [(1.0, frozenset())]
        for cause, chance in chances.items():
            self.hypotheses = [
                (weight * share, causes | extra)
                for weight, causes in self.hypotheses
                for share, extra in ((1 - chance, frozenset()), (chance, frozenset([cause])))
                if weight * share > 2e-8
            ]
        self.known = {}

    def starts(self):
        """Return (chance, faulted, state) of each first test that shows a fault; they add up to 1."""
        everything = frozenset(range(len(self.hypotheses)))
        size = len(self.places)
        none: frozenset = frozenset()
        start = State(everything, tuple(self.units[:size]), frozenset(self.places), none, none, none)
        found = []
        for faulted, state in self._read(start):
            if faulted:
                found.append((self.weight(state), faulted, state))
        whole = sum(chance for chance, _, _ in found)
        return [(chance / whole, faulted, state) for chance, faulted, state in found]

    def weight(self, state) -> float:
        """Return how likely the explanations left are together."""
        return sum(self.hypotheses[n][0] for n in state.hypotheses)

    def _parents(self, state, n: int) -> frozenset:
        place = self.places[n]
        own = {f"circuit:{place}", f"unit:{state.fitted[n]}", "feed:g", "control"}
        return frozenset(own | {f"blocked:{place}"} if place in state.open else own) - state.mended

    def _read(self, state) -> list:
        """Return the (faulted, state) that a test can lead to."""
        parents = [self._parents(state, n) for n in range(len(self.places))]
        found = {}
        for hypothesis in state.hypotheses:
            causes = self.hypotheses[hypothesis][1]
            shown = tuple(n for n, mine in enumerate(parents) if mine & causes)
            found.setdefault(shown, []).append(hypothesis)
        results = []
        for shown in sorted(found):
            seen = state.seen.union(*[parents[n] for n in shown])
            results.append((shown, state._replace(hypotheses=frozenset(found[shown]), seen=seen)))
        return results

    def results(self, state, move: dict) -> list:
        """Return the (result, state) that a move of the published form can lead to."""
        if move["move"] == "meter":
            cause = "circuit:" + move["position"]
            bad = frozenset(n for n in state.hypotheses if cause in self.hypotheses[n][1])
            good = state._replace(hypotheses=state.hypotheses - bad)
            both = [("good", good), ("bad", state._replace(hypotheses=bad, seen=state.seen | {cause}))]
            return [(reads, after) for reads, after in both if after.hypotheses]
        if move["move"] == "repair":
            return self._read(state._replace(mended=state.mended | set(repaired_by(move))))
        if move["move"] == "clean":
            return self._read(state._replace(open=state.open - set(cleaned_by(move))))
        if move["move"] in ("exchange", "replace"):
            fitted = dict(zip(self.places, state.fitted, strict=True)) | move["fitted"]
            after = state._replace(fitted=tuple(fitted.values()), open=state.open - set(move["fitted"]))
            return self._read(after._replace(hanging=hung_by(move, state.hanging)))
        return self._read(state)

    def settled(self, state) -> bool:
        """Tell whether a verdict stands, all is clear, or it is known what acts."""
        live = frozenset().union(*[self._parents(state, n) for n in range(len(self.places))])
        whole = self.weight(state)
        verdicts, acting, shared = {}, {}, 0.0
        for n in state.hypotheses:
            weight, causes = self.hypotheses[n]
            causes = causes & state.seen
            verdicts[causes] = verdicts.get(causes, 0.0) + weight / whole
            acting[causes & live] = acting.get(causes & live, 0.0) + weight / whole
            shared += weight / whole if causes & live & {"feed:g", "control"} else 0.0
        best = max(verdicts.values())
        named = best >= CONFIDENCE and verdicts.get(frozenset(), 0.0) < best
        return named or max(*acting.values(), shared) >= CONFIDENCE

    def moves(self, state) -> list:
        """Return (minutes, move) of everything that could be done, cheapest first."""
        doubtful = self._doubtful(state)
        found = []
        for units in permutations(self.units, len(self.places)):
            pairs = zip(self.places, units, state.fitted, strict=True)
            fitted = {place: unit for place, unit, now in pairs if unit != now}
            if fitted and (self.among_suspects or not doubtful.issuperset(fitted.values())):
                found.append({"move": "exchange", "fitted": fitted})
        found += [{"move": "meter", "position": place} for place in self.places]
        sizes = range(1, len(self.places) + 1)
        several = chain.from_iterable(combinations(self.places, size) for size in sizes)
        found += [{"move": "clean", "positions": list(places)} for places in several]
        rows = [(self._minutes(state, move), n) for n, move in enumerate(found)]
        return [(minutes, found[n]) for minutes, n in sorted(rows)]

    def _minutes(self, state, move: dict) -> float:
        """Return what a move takes in a belief: checks end where they find the fault."""
        found = 0.0
        if move["move"] == "meter":
            cause = "circuit:" + move["position"]
            bad = sum(self.hypotheses[n][0] for n in state.hypotheses if cause in self.hypotheses[n][1])
            found = bad / self.weight(state)
        return minutes_of(move, self.reach, state.hanging, found)

    def _doubtful(self, state) -> set:
        """Return the units that are not known to be good."""
        known = frozenset().union(*[self.hypotheses[n][1] for n in state.hypotheses])
        return {unit for unit in self.units if f"unit:{unit}" in known and unit not in self.spares}

    def optimum(self, state) -> float:
        """Return the expected minutes until settled when every move is the best one."""
        good = [
            u for u in self.units if not any(f"unit:{u}" in self.hypotheses[n][1] for n in state.hypotheses)
        ]
        # Units known to be good are one like the other.
        key = state._replace(fitted=tuple("good" if u in good else u for u in state.fitted))
        if key not in self.known:
            self.known[key] = _seats(state) if self.settled(state) else self._best(state)
        return self.known[key]

    def _best(self, state) -> float:
        best = float("inf")
        whole = self.weight(state)
        tried = set()
        for minutes, move in self.moves(state):
            if minutes >= best:
                break
            results = self.results(state, move)
            after = frozenset(result.hypotheses for _, result in results)
            # A result that is certain beforehand tells nothing and brings nothing nearer.
            if len(results) == 1 or (after, frozenset(move.get("fitted", ()))) in tried:
                continue
            tried.add((after, frozenset(move.get("fitted", ()))))
            expected = minutes
            for _, result in results:
                expected += self.weight(result) / whole * self.optimum(result)
                if expected >= best:
                    break
            best = min(best, expected)
        return best

    def case(self, faulted) -> dict:
        """Return the published case after a first test that showed these faults."""
        case = {
            "positions": [
                {"id": place, "group": "g", "reach_minutes": self.reach[place]} for place in self.places
            ],
            "units": [{"id": u, "part": "P1"} | self._prior(u) for u in self.units],
            "tests": [],
            "meter": [],
            "rates": RATES,
            "minutes": MINUTES,
            # The optimum settles by the confidence alone.
            "doubt": 1,
        }
        fitted = dict(zip(self.places, self.units, strict=False))
        return _tested(case, fitted, faulted, self.places)

    def _prior(self, unit: str) -> dict:
        return {"prior": self.spares[unit]} if unit in self.spares else {}

    def planned(self, state, case: dict, depth: int = 0) -> float:
        """Return the expected minutes until settled when the core's first move is taken each time."""
        if self.settled(state):
            return _seats(state)
        move = reason(case)["next"][0]
        if depth > 8 or move["move"] in ("retest", "unplug"):
            raise AssertionError(f"{move['move']} settles nothing here: {case}")
        whole = self.weight(state)
        expected = self._minutes(state, move)
        if move["move"] == "repair":
            # What is known to be bad is mended whatever else is open: only the test finds out.
            expected = MINUTES["test"]
        if move["move"] == "replace":
            for place in move["fitted"]:
                old = f"unit:{state.fitted[self.places.index(place)]}"
                bad = sum(self.hypotheses[n][0] for n in state.hypotheses if old in self.hypotheses[n][1])
                expected += MINUTES["part"] * (1 - bad / whole)
        for result, after in self.results(state, move):
            if move["move"] == "meter":
                reading = {"position": move["position"], "reads": result}
                longer = case | {"meter": [*case["meter"], reading]}
            else:
                fitted = dict(case["tests"][-1]["fitted"]) | move.get("fitted", {})
                longer = _tested(case, fitted, result, self.places, cleaned_by(move), repaired_by(move))
            longer["now"] = {"hanging": sorted(after.hanging)}
            expected += self.weight(after) / whole * self.planned(after, longer, depth + 1)
        return expected


def _seats(state) -> float:
    """Return the minutes to push home what hangs, once the question is settled."""
    return SEAT * len(state.hanging)


def _tested(case: dict, fitted: dict, faulted, places: list, cleaned=(), repaired=()) -> dict:
    shown = [places[n] for n in faulted]
    known = [unit["id"] for unit in case["units"]]
    bought = [{"id": unit, "part": "P1"} for unit in fitted.values() if unit not in known]
    case = case | {"units": case["units"] + bought}
    test = {"fitted": fitted, "faulted": shown, "cleaned": list(cleaned), "repaired": list(repaired)}
    return case | {"tests": [*case["tests"], test]}


def compare(reach: list, spares=()) -> list:
    """Return (suspects, chance, ours, the optimum, the optimum without exchanges among suspects)."""
    board = Board(reach, spares)
    strict = Board(reach, spares, among_suspects=False)
    rows = []
    for chance, faulted, state in board.starts():
        ours = board.planned(state, board.case(faulted))
        rows.append((len(faulted), chance, ours, board.optimum(state), strict.optimum(state)))
    return rows
