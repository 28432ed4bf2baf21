"""What carries a conclusion: each reading is left out in turn and the case is reasoned over again.

Leave-one-out: a test is left out as if its sounder had not been heard, a single position as if the
test did not report on it, so that what was moved, cleaned and repaired stays as it was. Only the
inference is repeated, not the planning, and single positions are only tried where the whole test
matters and a suspect is involved. What is left is held against the confidence; how it would hold against
other rates is not asked again.
"""

from collections import namedtuple

from ..infer import explanations
from ..infer import holds
from ..infer.belief import Belief
from ..infer.case import CONFIDENCE
from ..infer.case_form import read
from ..infer.figures import WHOLE
from ..infer.figures import parts
from ..infer.model import Model

# Enough to find the best explanation and what stands beside it; each is exact.
_EXPLANATIONS = 6
# An explanation as rare as this (parts per billion) is no rival to speak of.
_NO_RIVAL = WHOLE // 1000
# Larger sets of causes are not searched for as rivals: nobody would check five things at once.
_MOST_CAUSES = 4
# With more positions involved, no single one of them is worth a sentence.
_MOST_POSITIONS = 4

Concluded = namedtuple("Concluded", ("explanations", "clear", "confidence"))


def evidence(case: dict, result: dict) -> dict | None:
    """Return what carries the conclusion of `result` (the reasoning over `case`), None without one.

    {"by": "verdict" or "clear", "causes", "probability", "clear": whether nothing is left to fix,
     "tests": [{"test", "effect", "causes", "probability", "positions"}], "meter": [{"n", ...}],
     "listen": [{"position", ...}],
     "alternative": {"causes", "probability", "missed"} or None, "alone": bool}

    `effect` is what happens without it: "stands", "weaker" (the same, below the confidence) or
    "changes" (another explanation is the likeliest: `causes`). `positions` are the readings of a test
    that matter one by one. `missed` are the readings (test, position) that the alternative leaves to
    chance. `alone`: no other set of as few causes fits what was seen.
    """
    verdict = result["verdict"]
    is_clear = holds.is_clear(result, parts(case.get("confidence", CONFIDENCE)))
    named = [each for each in result["explanations"] if each["causes"]]
    if not verdict and not (named and is_clear):
        return None
    by = "verdict" if verdict else "clear"
    base = verdict["causes"] if verdict else []
    faults = _faults(case)
    return {
        "by": by,
        "clear": is_clear,
        "causes": base,
        "probability": verdict["probability"] if verdict else result["clear"],
        "tests": _tests(case, result, by, base, faults),
        "meter": _checks(case, by, base),
        "listen": _heard(case, by, base),
        "alternative": _alternative(result, base, faults) if base else None,
        "alone": _is_alone(result, base, faults),
    }


def _tests(case: dict, result: dict, by: str, base: list, faults: list) -> list:
    """Return what leaving out each test that counted does."""
    ignored = {entry["test"]: True for entry in result["ignored"]}
    found = []
    for index in range(len(case["tests"])):
        if index in ignored or _only_listened(case, index):
            continue
        if found and found[-1]["test"] == index - 1 and _is_repeat(case, index):
            # Of two tests that are the same, one is as good as the other.
            entry = dict(found[-1])
            entry["test"] = index
        else:
            entry = _without_test(case, index, by, base, faults)
        found.append(entry)
    return found


def _is_repeat(case: dict, index: int) -> bool:
    """Tell whether a test saw just what the one before saw, with nothing done between them."""
    test, before = case["tests"][index], case["tests"][index - 1]
    if test.get("cleaned") or test.get("repaired") or test["fitted"] != before["fitted"]:
        return False
    for key in ("faulted", "silent", "unplugged"):
        if sorted(test.get(key, [])) != sorted(before.get(key, [])):
            return False
    return True


def _checks(case: dict, by: str, base: list) -> list:
    """Return what leaving out each meter reading does."""
    found = []
    for index in range(len(case.get("meter", []))):
        entry = _effect(_without_check(case, index), by, base)
        entry["n"] = index
        found.append(entry)
    return found


def _only_listened(case: dict, index: int) -> bool:
    """Tell whether nothing was tested in an entry."""
    return len(case["tests"][index].get("silent", [])) == len(case["positions"])


def _heard(case: dict, by: str, base: list) -> list:
    """Return what leaving out what was ever heard at a position does."""
    places = {place: True for test in case["tests"] for place in test.get("listen", {})}
    found = []
    for place in sorted(places):
        changed = dict(case)
        changed["tests"] = [_unheard(test, place) for test in case["tests"]]
        entry = _effect(changed, by, base)
        entry["position"] = place
        found.append(entry)
    return found


def _unheard(test: dict, place: str) -> dict:
    """Return a test as if nobody had listened at a position."""
    heard = test.get("listen", {})
    return dict(test, listen={each: heard[each] for each in heard if each != place})


def _conclude(case: dict) -> Concluded:
    """Return what a case says, without the next moves."""
    checked = read(case)
    belief = Belief(Model(checked))
    listed = explanations.named(belief, explanations.likeliest(belief, _EXPLANATIONS))
    return Concluded(listed, parts(belief.absent(belief.model.live())), parts(checked.confidence))


def _effect(case: dict, by: str, base: list) -> dict:
    """Return what a case, with something left out, does to the conclusion."""
    concluded = _conclude(case)
    if by == "clear":
        effect = "stands" if concluded.clear >= concluded.confidence else "weaker"
        return {"effect": effect, "causes": [], "probability": concluded.clear}
    best = concluded.explanations[0]
    if best["causes"] != base:
        kept = [each["probability"] for each in concluded.explanations if each["causes"] == base]
        return {
            "effect": "changes",
            "causes": best["causes"],
            "probability": best["probability"],
            "left": kept[0] if kept else 0,
        }
    effect = "stands" if best["probability"] >= concluded.confidence else "weaker"
    return {"effect": effect, "causes": base, "probability": best["probability"]}


def _without_test(case, index, by, base, faults) -> dict:
    """Return what leaving out one test does, and which of its readings matter by themselves."""
    entry = _effect(_changed(case, index, heard=False), by, base)
    entry["test"] = index
    entry["positions"] = []
    if entry["effect"] == "stands":
        return entry
    for position in _involved(case["tests"][index], faults):
        if _is_read(case["tests"][index], position):
            alone = _effect(_silenced(case, index, position), by, base)
            if alone["effect"] != "stands":
                entry["positions"].append(position)
    return entry


def _involved(test: dict, faults: list) -> list:
    """Return the positions of a test to try one by one: where a fault ever showed, if they are few."""
    showed = sorted({position: True for _, position, _ in faults})
    if len(showed) <= _MOST_POSITIONS:
        return showed
    return sorted(test.get("faulted", []))[:_MOST_POSITIONS]


def _changed(case: dict, index: int, **changes) -> dict:
    """Return the case with one test changed."""
    test = dict(case["tests"][index])
    test.update(changes)
    changed = dict(case)
    changed["tests"] = case["tests"][:index] + [test] + case["tests"][index + 1 :]
    return changed


def _silenced(case: dict, index: int, position: str) -> dict:
    """Return the case with one position of one test not reported on."""
    test = case["tests"][index]
    faulted = [place for place in test.get("faulted", []) if place != position]
    return _changed(case, index, faulted=faulted, silent=test.get("silent", []) + [position])


def _without_check(case: dict, index: int) -> dict:
    changed = dict(case)
    changed["meter"] = case["meter"][:index] + case["meter"][index + 1 :]
    return changed


def _is_read(test: dict, position: str) -> bool:
    if position in test.get("silent", []):
        return False
    return position in test["fitted"] or position in test.get("unplugged", [])


def _faults(case: dict) -> list:
    """Return every fault that counted as (test, position, names of its parents), in order.

    A fault at an unplugged position needs no cause and is left out. Silence is one too, (None, position,
    what may silence it), and so is a bad meter reading: (None, position, its circuit).
    """
    model = Model(read(case))
    found = []
    for test, place, parents in model.faults:
        names = [model.names[cause] for cause in parents]
        found.append((test, model.case.positions[place].id, names))
    for _, place, parents in model.silences:
        found.append((None, model.case.positions[place].id, [model.names[cause] for cause in parents]))
    for check in model.case.meter:
        if check.bad:
            cause = model.circuits[check.position][check.generation - 1]
            found.append((None, model.case.positions[check.position].id, [model.names[cause]]))
    return found


def _alternative(result: dict, base: list, faults: list) -> dict | None:
    """Return the runner-up with the faults that it leaves to chance."""
    other = runner_up(result, base)
    if other is None:
        return None
    left = explanations.unexplained([parents for _, _, parents in faults], other["causes"])
    return {
        "causes": other["causes"],
        "probability": other["probability"],
        "missed": [[test, position] for test, position, parents in faults if parents in left],
    }


def runner_up(result: dict, base: list):
    """Return the likeliest explanation that is not the verdict, nor the verdict and more; or None."""
    for explanation in result["explanations"]:
        if [cause for cause in base if cause not in explanation["causes"]]:
            return explanation
    return None


def _is_alone(result: dict, base: list, faults: list) -> bool:
    """Tell whether nothing else of as few causes explains every fault and fits the clean readings."""
    if not base or len(base) > _MOST_CAUSES or not faults:
        return False
    chances = {tuple(sorted(e["causes"])): e["probability"] for e in result["explanations"]}
    sets = explanations.minimal([parents for _, _, parents in faults], len(base))
    if sorted(base) not in sets:
        return False
    for causes in sets:
        if causes != sorted(base) and chances.get(tuple(causes), 0) >= _NO_RIVAL:
            return False
    return True
