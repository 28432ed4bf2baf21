"""What the tests say so far, as sentences: heading, how sure, what carries it, what else it could be."""

from . import causes
from . import words


def reasoning(state, job: dict, result: dict) -> dict:
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
        "causes": _causes(state, job, result),
        "clear_words": words.percent(result["clear"]),
        "else_words": _else(state, job, result),
        "carries_words": _carries(job, result),
        "settled": settled,
        "aside": [
            "Test {} is set aside: {}".format(entry["test"] + 1, entry["reason"])
            for entry in result["ignored"]
        ],
    }
    if verdict:
        shown["sentence"] = headline(state, job, verdict["causes"])
        shown["confidence_words"] = words.percent(verdict["probability"])
        shown["detail"] = _detail(state, job, verdict)
        shown["verdict"] = [
            {
                "cause": cause,
                "words": causes.phrase(state, job, cause),
                "live": causes.is_live(state, job, cause),
            }
            for cause in verdict["causes"]
        ]
    elif not _suspects(result):
        shown["sentence"] = "No test has shown a fault."
        shown["detail"] = "If it comes and goes, test again, and say so."
    elif settled:
        shown["sentence"] = "The fault is gone."
        shown["detail"] = (
            "It went away when the parts were handled, most likely dirt or a loose plug. "
            "Nothing is left to fix: {} sure.".format(words.percent(result["clear"]))
        )
    else:
        known = _known_live(state, job, result)
        shown["sentence"] = "Not settled yet."
        shown["detail"] = _leading(state, job, result)
        if known:
            names = [causes.phrase(state, job, cause) for cause in known]
            shown["sentence"] = words.sentence_case(words.listed(names)) + (
                " is a cause." if len(known) == 1 else " are causes."
            )
            shown["detail"] = "Whether anything else is wrong is not settled yet. " + shown["detail"]
    return shown


def is_clear(job: dict, result: dict) -> bool:
    """Tell whether the chance that nothing is left to fix reaches the confidence asked for."""
    return result["clear"] >= job["confidence_ppm"] * 1000


def headline(state, job: dict, found: list) -> str:
    """Return the verdict as a heading: followed, stayed, or each cause by name."""
    if len(found) == 1:
        kind, what, _ = causes.split(found[0])
        if kind == "unit" and len(_faulted_places(job, what)) > 1:
            return "The fault followed {}.".format(causes.phrase(state, job, found[0]))
        if kind == "circuit" and len(_faulted_units(job, what)) > 1:
            return "The fault stayed at {}.".format(words.position_name(job, what))
        name = words.sentence_case(causes.phrase(state, job, found[0]))
        return "{} is the cause.".format(name)
    names = [causes.phrase(state, job, cause) for cause in sorted(found)]
    return "{} faults: {}.".format(_number(len(found)), words.listed(names))


def _detail(state, job, verdict) -> str:
    live = [cause for cause in verdict["causes"] if causes.is_live(state, job, cause)]
    sure = "{} sure.".format(words.percent(verdict["probability"]))
    if not live:
        return sure + " It is dealt with; clean tests now prove the repair."
    return " ".join([causes.fix(state, job, cause) for cause in sorted(live)] + [sure])


def _known_live(state, job, result) -> list:
    """Return the live causes that are sure by themselves although the whole is not settled."""
    return sorted(
        [
            entry["cause"]
            for entry in result["causes"]
            if entry["probability"] >= job["confidence_ppm"] * 1000
            and causes.is_live(state, job, entry["cause"])
        ]
    )


def _leading(state, job, result) -> str:
    """Name the likeliest explanation that is not enough yet."""
    for explanation in result["explanations"]:
        if explanation["causes"]:
            names = [causes.phrase(state, job, cause) for cause in sorted(explanation["causes"])]
            return "Most likely so far: {}, {}.".format(
                words.listed(names), words.percent(explanation["probability"])
            )
    return ""


def _else(state, job, result) -> str:
    """Name the runner-up to the verdict."""
    verdict = result["verdict"]
    if not verdict:
        return ""
    for explanation in result["explanations"]:
        if explanation["causes"] and sorted(explanation["causes"]) != sorted(verdict["causes"]):
            names = [causes.phrase(state, job, cause) for cause in sorted(explanation["causes"])]
            return "{}, {}".format(words.listed(names), words.percent(explanation["probability"]))
    return ""


def _carries(job, result) -> str:
    """Say which tests counted, and how the units in them were identified."""
    ignored = {entry["test"]: True for entry in result["ignored"]}
    counted = [str(n + 1) for n in range(len(job["tests"])) if n not in ignored]
    if not counted:
        return ""
    if len(counted) == 1:
        return "Test {}, sounder heard.".format(counted[0])
    return "Tests {}, sounder heard each time.".format(words.listed(counted))


def _causes(state, job, result) -> list[dict]:
    return [
        {
            "cause": entry["cause"],
            "words": causes.phrase(state, job, entry["cause"]),
            "probability_words": words.percent(entry["probability"]),
        }
        for entry in result["causes"][:6]
    ]


def _suspects(result) -> bool:
    for explanation in result["explanations"]:
        if explanation["causes"]:
            return True
    return False


def _faulted_places(job, unit) -> list:
    places = []
    for test in job["tests"]:
        for position in sorted(test["fitted"]):
            if test["fitted"][position] == unit and position in test["faulted"] and test["heard"]:
                if position not in places:
                    places.append(position)
    return places


def _faulted_units(job, position) -> list:
    units = []
    for test in job["tests"]:
        unit = test["fitted"].get(position)
        if position in test["faulted"] and test["heard"] and unit not in units:
            units.append(unit)
    return units


def _number(count: int) -> str:
    names = ("No", "One", "Two", "Three", "Four")
    return names[count] if count < len(names) else str(count)
