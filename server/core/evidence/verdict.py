"""What the tests say so far, as sentences: heading, how sure, what carries it, what else it could be."""

from .. import phrases
from ..state.job import Job
from ..words import causes
from ..words import words
from . import leave_one_out

# An explanation at nine tenths of the likeliest is as likely as it, for a person.
_AS_LIKELY = (9, 10)


def reasoning(job: Job, result: dict) -> dict:
    """Return the view of a reasoning result (probabilities in parts per billion) in plain words."""
    verdict = result["verdict"]
    settled = is_clear(job, result)
    shown = {
        "sentence": "",
        "detail": "",
        "probability": verdict["probability"] if verdict else None,
        "clear": result["clear"],
        "confidence_words": "",
        "verdict": None,
        "causes": _causes(job, result),
        "clear_words": phrases.percent(result["clear"]),
        "else_words": _else(job, result),
        "carries_words": _carries(job, result),
        "settled": settled,
        "aside": [
            "Test {} is set aside: {}".format(entry["test"] + 1, entry["reason"])
            for entry in result["ignored"]
        ],
    }
    if verdict:
        shown["sentence"] = headline(job, verdict["causes"])
        shown["confidence_words"] = phrases.percent(verdict["probability"])
        shown["detail"] = _detail(job, verdict, settled)
        shown["verdict"] = [
            {
                "cause": cause,
                "words": causes.phrase(job, cause),
                "live": causes.is_live(job, cause),
            }
            for cause in verdict["causes"]
        ]
    elif not _suspects(result):
        shown["sentence"] = "No test has shown a fault."
        shown["detail"] = "If it comes and goes, test again, and say so."
    elif settled and _only_unplugged(job, result):
        shown["sentence"] = "Only what is unplugged shows a fault."
        shown["detail"] = (
            "A plug that is off needs no other cause. Nothing else is left to fix: {} sure.".format(
                phrases.percent(result["clear"])
            )
        )
    elif settled:
        shown["sentence"] = "The fault is gone."
        shown["detail"] = "{} {} Nothing is left to fix: {} sure.".format(
            _how_it_went(job, result), _was(_leading(job, result)), phrases.percent(result["clear"])
        )
    else:
        known = _known_live(job, result)
        shown["sentence"] = "Not settled yet."
        shown["detail"] = _leading(job, result)
        if known:
            shown["sentence"] = phrases.sentence_case(causes.phrases(job, known)) + (
                " is a cause." if len(known) == 1 else " are causes."
            )
            shown["detail"] = "Whether anything else is wrong is not settled yet. " + shown["detail"]
        elif _last_was_clean(job, result):
            shown["sentence"] = "No fault in the last test."
            shown["detail"] = "Nothing is left to fix: {} sure, {} wanted. {}".format(
                phrases.percent(result["clear"]),
                phrases.percent(job.confidence_ppb),
                _was(shown["detail"]),
            )
    return shown


def is_clear(job: Job, result: dict) -> bool:
    """Tell whether the chance that nothing is left to fix reaches the confidence asked for."""
    return result["clear"] >= job.confidence_ppb


def headline(job: Job, found: list) -> str:
    """Return the verdict as a heading: followed, stayed, or each cause by name."""
    if len(found) == 1:
        kind, what, _ = causes.split(found[0])
        if kind == "unit" and len(faulted_places(job, what)) > 1:
            return "The fault followed {}.".format(causes.phrase(job, found[0]))
        if kind == "circuit" and len(faulted_units(job, what)) > 1:
            return "The fault stayed at {}.".format(words.position_name(job, what))
        name = phrases.sentence_case(causes.phrase(job, found[0]))
        return "{} is the cause.".format(name)
    return "{} faults: {}.".format(_number(len(found)), causes.phrases(job, found))


def _detail(job: Job, verdict, settled) -> str:
    live = [cause for cause in verdict["causes"] if causes.is_live(job, cause)]
    sure = "{} sure.".format(phrases.percent(verdict["probability"]))
    if not live and settled:
        return "It is dealt with, and clean tests have proved it. " + sure
    if not live:
        return "It is dealt with. Clean tests now prove the repair. " + sure
    return " ".join([causes.fix(job, cause) for cause in sorted(live)] + [sure])


def _known_live(job: Job, result) -> list:
    """Return the live causes that are sure by themselves although the whole is not settled."""
    return sorted(
        [
            entry["cause"]
            for entry in result["causes"]
            if entry["probability"] >= job.confidence_ppb and causes.is_live(job, entry["cause"])
        ]
    )


def _leading(job: Job, result) -> str:
    """Name the likeliest explanation that is not enough yet, and the next if it is as likely."""
    named = [each for each in result["explanations"] if each["causes"]]
    if not named:
        return ""
    said = _named(job, named[0])
    if len(named) == 1 or named[1]["probability"] * _AS_LIKELY[1] < named[0]["probability"] * _AS_LIKELY[0]:
        return "Most likely so far: {}, {}.".format(said, phrases.percent(named[0]["probability"]))
    return "Most likely so far: {}, {}; about as likely: {}.".format(
        said, phrases.percent(named[0]["probability"]), _named(job, named[1])
    )


def _was(leading) -> str:
    return leading.replace("Most likely so far:", "Most likely it was")


def _named(job: Job, explanation) -> str:
    return causes.phrases(job, explanation["causes"])


def _counted(job, result) -> list:
    """Return the numbers of the tests that count, from 0."""
    ignored = {entry["test"]: True for entry in result["ignored"]}
    return [index for index in range(len(job.tests)) if index not in ignored]


def _last_was_clean(job, result) -> bool:
    counted = _counted(job, result)
    return bool(counted) and not job.tests[counted[-1]]["faulted"]


def _only_unplugged(job, result) -> bool:
    """Tell whether faults were shown, and each where the plug was off or the position empty."""
    shown = False
    for index in _counted(job, result):
        test = job.tests[index]
        for position in test["faulted"]:
            if position in test["fitted"] and position not in test["unplugged"]:
                return False
            shown = True
    return shown


def _how_it_went(job, result) -> str:
    """Say what was done between the last fault and the first clean test after it."""
    counted = _counted(job, result)
    showed = [index for index in counted if job.tests[index]["faulted"]]
    if not showed:
        return "Only the meter read bad: no test has shown a fault."
    after = [index for index in counted if index > showed[-1]]
    if not after:
        return "What caused it is no longer there."
    before, now = job.tests[showed[-1]], job.tests[after[0]]
    fresh = [
        position
        for position in before["faulted"]
        if now["fitted"].get(position) not in before["fitted"].values() and position in now["fitted"]
    ]
    if fresh:
        names = [words.position_name(job, position) for position in fresh]
        return "It went away with another {} at {}.".format(job.sort.unit, phrases.listed(names))
    if before["fitted"] != now["fitted"]:
        return "It went away when the {} were handled.".format(job.sort.units)
    if now["repaired"]:
        return "It went away with the repair."
    if now["cleaned"]:
        names = [words.position_name(job, position) for position in sorted(now["cleaned"])]
        return "It went away when {} was cleaned.".format(phrases.listed(names))
    return "It has not come back in {} clean tests.".format(len(after))


def instead(job: Job, result) -> dict | None:
    """Return the runner-up to the verdict, {"words", "probability"}; None where there is none."""
    verdict = result["verdict"]
    other = leave_one_out.runner_up(result, verdict["causes"]) if verdict else None
    if other is None:
        return None
    said = _named(job, other) if other["causes"] else "no fault at all"
    return {"words": said, "probability": other["probability"]}


def _else(job: Job, result) -> str:
    """Name the runner-up to the verdict."""
    other = instead(job, result)
    if other is None:
        return ""
    return "{}, {}".format(phrases.sentence_case(other["words"]), phrases.percent(other["probability"]))


def _carries(job, result) -> str:
    """Say which tests counted."""
    counted = [str(index + 1) for index in _counted(job, result)]
    if not counted:
        return ""
    if len(counted) == 1:
        return "Test {}, {}.".format(counted[0], job.sort.self_test.heard)
    return "Tests {}, {} each time.".format(phrases.listed(counted), job.sort.self_test.heard)


def _causes(job: Job, result) -> list[dict]:
    return [
        {
            "cause": entry["cause"],
            "words": causes.phrase(job, entry["cause"]),
            "probability_words": phrases.percent(entry["probability"]),
        }
        for entry in result["causes"][:6]
    ]


def _suspects(result) -> bool:
    for explanation in result["explanations"]:
        if explanation["causes"]:
            return True
    return False


def faulted_places(job: Job, unit: str) -> list:
    """Return the positions at which a unit showed a fault, in the order in which it did."""
    places = []
    for test in job.tests:
        for position in sorted(test["fitted"]):
            if test["fitted"][position] == unit and position in test["faulted"] and test["heard"]:
                if position not in places:
                    places.append(position)
    return places


def faulted_units(job: Job, position: str) -> list:
    """Return the units that showed a fault at a position, in the order in which they did."""
    units = []
    for test in job.tests:
        unit = test["fitted"].get(position)
        if position in test["faulted"] and test["heard"] and unit not in units:
            units.append(unit)
    return units


def _number(count: int) -> str:
    names = ("No", "One", "Two", "Three", "Four")
    return names[count] if count < len(names) else str(count)
