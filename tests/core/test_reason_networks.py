"""The reasoning beside pyAgrum: the same noisy-OR network, solved by somebody else's exact engine."""

import random
import warnings

import pytest

with warnings.catch_warnings():
    # Its C++ types warn while they load, and a warning turned into an error crashes them.
    warnings.simplefilter("ignore")
    import pyagrum as gum

SHOWS = 0.7
ALARM = 0.01


def network(case):
    """Build the noisy-OR network of a case without repairs and meters; return it with evidence."""
    net = gum.BayesNet()
    priors = {"unit": 0.05, "circuit": 0.005, "blocked": 0.01, "feed": 0.001, "control": 0.001}
    evidence = {}
    disturbed = {}

    def cause(name):
        if name not in net.names():
            net.add(gum.LabelizedVariable(name, name, 2))
            prior = priors[name.split(":")[0]]
            net.cpt(name).fillWith([1 - prior, prior])
        return name

    before = {}
    for n, test in enumerate(case["tests"]):
        for position in case["positions"]:
            place = position["id"]
            unit = test["fitted"][place]
            if before.get(place, unit) != unit:
                disturbed[place] = True
            before[place] = unit
            parents = ["unit:" + unit, "circuit:" + place, "feed:" + position["group"], "control"]
            if place not in disturbed:
                parents.append("blocked:" + place)
            reading = f"reading:{n}:{place}"
            # The form with a leak beside the causes, 1 - (1 - leak) * product, is the "net" one.
            net.addNoisyORNet(gum.LabelizedVariable(reading, reading, 2), ALARM)
            for parent in parents:
                net.addWeightedArc(cause(parent), reading, SHOWS)
            evidence[reading] = 1 if place in test["faulted"] else 0
    return net, evidence


def turned(size, turns, faulted):
    """A case of `size` positions in which every unit moves `turns` places on for each test."""
    places = [f"p{n:02}" for n in range(size)]
    tests = []
    for t, turn in enumerate(turns):
        fitted = {place: f"u{(n + turn) % size:02}" for n, place in enumerate(places)}
        tests.append({"fitted": fitted, "faulted": [places[n] for n in faulted[t]]})
    return {
        "positions": [
            {"id": place, "group": "front" if n < size // 2 else "rear"} for n, place in enumerate(places)
        ],
        "units": [{"id": f"u{n:02}"} for n in range(size)],
        "tests": tests,
        "rates": {"shows": SHOWS, "false_alarm": ALARM},
    }


def scattered(size, tests, seed):
    choose = random.Random(seed)
    faulted = [[n for n in range(size) if choose.random() < 0.6] for _ in range(tests)]
    return turned(size, [0, 1, 3, 4][:tests], faulted)


CASES = {
    "one fault of four": turned(4, [0], [[2]]),
    "follows": turned(4, [0, 1], [[2], [1]]),
    "stays": turned(4, [0, 1], [[2], [2]]),
    "goes away": turned(4, [0, 1], [[2], []]),
    "all of four": turned(4, [0], [[0, 1, 2, 3]]),
    "two of six, then one": turned(6, [0, 1], [[1, 4], [0]]),
    # From here on components have more than ten causes and are eliminated, not enumerated.
    "six in a ring, all faulted": turned(6, [0, 1], [range(6), range(6)]),
    "eight, scattered": scattered(8, 3, 1),
    "twelve, two tests": scattered(12, 2, 2),
    "twelve, three tests": scattered(12, 3, 3),
}


@pytest.mark.parametrize("name", CASES)
def test_agrees_with_pyagrum(core, name):
    case = CASES[name]
    net, evidence = network(case)
    engine = gum.LazyPropagation(net)
    engine.setEvidence(evidence)
    engine.makeInference()

    answer = core("reason", case=case)

    found = {entry["cause"]: entry["probability"] / 1e9 for entry in answer["causes"]}
    wanted = {cause: float(engine.posterior(cause)[1]) for cause in found}
    assert found == pytest.approx(wanted, abs=1e-9)


@pytest.mark.parametrize("name", ["six in a ring, all faulted", "eight, scattered"])
def test_explanations_of_a_large_component_agree_with_pyagrum(core, name):
    case = CASES[name]
    net, evidence = network(case)
    engine = gum.LazyPropagation(net)
    engine.setEvidence(evidence)
    engine.makeInference()
    before = engine.evidenceProbability()
    answer = core("reason", case=case)
    suspects = {
        parent
        for reading, value in evidence.items()
        if value
        for parent in (net.variable(n).name() for n in net.parents(reading))
    }

    for explanation in answer["explanations"][:5]:
        present = {cause: int(cause in explanation["causes"]) for cause in suspects}
        engine = gum.LazyPropagation(net)
        engine.setEvidence(evidence | present)
        engine.makeInference()
        wanted = engine.evidenceProbability() / before
        assert explanation["probability"] / 1e9 == pytest.approx(wanted, abs=1e-9)
