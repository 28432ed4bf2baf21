"""What the tests say so far, as sentences: heading, how sure, what carries it, what else it could be."""

from ..infer import holds
from ..messages import all_of
from ..messages import message
from ..messages import percent
from ..messages import sentences
from ..state.job import Job
from ..words import causes
from ..words import words
from . import leave_one_out
from . import proof
from . import retaken
from . import standing

# An explanation at nine tenths of the likeliest is as likely as it, for a person.
_AS_LIKELY = (9, 10)
# What may have been there besides, from so many parts per billion on; our choice.
_MAY_HAVE_BEEN = 2000000


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
        "clear_words": percent(result["clear"]),
        "else_words": _else(job, result),
        "carries_words": _carries(job, result),
        "past_words": _past(job, result),
        "holds_words": standing.words(job, result, settled),
        "settled": settled,
        "aside": [
            message("evidence-aside", test=str(entry["test"] + 1), why=entry["reason"])
            for entry in result["ignored"]
        ],
    }
    if verdict:
        shown["sentence"] = headline(job, verdict["causes"])
        shown["confidence_words"] = percent(verdict["probability"])
        shown["detail"] = _detail(job, verdict, settled and proof.clean_in_a_row(job, result) > 0)
        shown["verdict"] = [
            {
                "cause": cause,
                "words": causes.phrase(job, cause),
                "live": causes.is_live(job, cause),
            }
            for cause in verdict["causes"]
        ]
    elif not _suspects(result):
        shown["sentence"] = message("evidence-no-fault")
        shown["detail"] = message("evidence-no-fault-detail")
    elif settled and _only_unplugged(job, result):
        shown["sentence"] = message("evidence-unplugged")
        shown["detail"] = message("evidence-unplugged-detail", share=percent(result["clear"]))
    elif settled:
        shown["sentence"] = message("evidence-gone")
        shown["detail"] = sentences(
            [
                _how_it_went(job, result),
                _leading(job, result, was=True),
                message("evidence-nothing-left", share=percent(result["clear"])),
            ]
        )
    else:
        known = _known_live(job, result)
        shown["sentence"] = message("evidence-open")
        shown["detail"] = _leading(job, result)
        if known:
            shown["sentence"] = message("evidence-known", cause=causes.phrases(job, known), count=len(known))
            shown["detail"] = sentences([message("evidence-known-detail"), shown["detail"]])
        elif _last_was_clean(job, result):
            shown["sentence"] = message("evidence-last-clean")
            wanted = percent(job.confidence_ppb)
            left = message("evidence-nothing-left-yet", share=percent(result["clear"]), wanted=wanted)
            shown["detail"] = sentences([left, _leading(job, result, was=True)])
    return shown


def is_clear(job: Job, result: dict) -> bool:
    """Tell whether nothing is left to fix: the chance of it reaches the confidence, and holds."""
    return holds.is_clear(result, job.confidence_ppb)


def headline(job: Job, found: list) -> dict:
    """Return the verdict as a heading: followed, stayed, or each cause by name."""
    if len(found) == 1:
        kind, what, _ = causes.split(found[0])
        if kind == "unit" and len(faulted_places(job, what)) > 1:
            return message("evidence-followed", cause=causes.phrase(job, found[0]))
        if kind == "circuit" and len(faulted_units(job, what)) > 1:
            return message("evidence-stayed", position=words.position_name(job, what))
        return message("evidence-cause", cause=causes.phrase(job, found[0]))
    return message("evidence-faults", count=len(found), cause=causes.phrases(job, found))


def _detail(job: Job, verdict, proved) -> dict:
    """Say what to do about a verdict; `proved` once nothing is left to fix and a clean test shows it."""
    live = [cause for cause in verdict["causes"] if causes.is_live(job, cause)]
    sure = message("evidence-sure", share=percent(verdict["probability"]))
    if not live:
        if retaken.owed(job):
            return sentences([message("evidence-to-read-again"), sure])
        return sentences([message("evidence-proved" if proved else "evidence-to-prove"), sure])
    return sentences([causes.fix(job, cause) for cause in sorted(live)] + [sure])


def _known_live(job: Job, result) -> list:
    """Return the live causes that are sure by themselves although the whole is not settled."""
    found = [entry["cause"] for entry in result["certain"]]
    return sorted([cause for cause in found if causes.is_live(job, cause)])


def _leading(job: Job, result, was: bool = False):
    """Name the likeliest explanation that is not enough yet, and the next if it is as likely.

    `was`: of a fault that does not show any more.
    """
    named = [each for each in result["explanations"] if each["causes"]]
    if not named:
        return ""
    said, share = _named(job, named[0]), percent(named[0]["probability"])
    if len(named) == 1 or named[1]["probability"] * _AS_LIKELY[1] < named[0]["probability"] * _AS_LIKELY[0]:
        return message("evidence-likely-was" if was else "evidence-likely", cause=said, share=share)
    other = _named(job, named[1])
    tied = "evidence-likely-two-was" if was else "evidence-likely-two"
    return message(tied, cause=said, share=share, other=other)


def _named(job: Job, explanation) -> dict:
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


def _how_it_went(job, result) -> dict:
    """Say what was done between the last fault and the first clean test after it."""
    counted = _counted(job, result)
    showed = [index for index in counted if job.tests[index]["faulted"]]
    if not showed:
        return message("evidence-went-meter")
    after = [index for index in counted if index > showed[-1]]
    if not after:
        return message("evidence-went-away")
    before, now = job.tests[showed[-1]], job.tests[after[0]]
    fresh = [
        position
        for position in before["faulted"]
        if now["fitted"].get(position) not in before["fitted"].values() and position in now["fitted"]
    ]
    if fresh:
        names = [words.position_name(job, position) for position in fresh]
        return message("evidence-went-fresh", sort=job.sort.identity, positions=all_of(names))
    if before["fitted"] != now["fitted"]:
        return message("evidence-went-handled", sort=job.sort.identity)
    if now["repaired"]:
        return message("evidence-went-repair")
    if now["cleaned"]:
        names = [words.position_name(job, position) for position in sorted(now["cleaned"])]
        return message("evidence-went-cleaned", positions=all_of(names), count=len(names))
    return message("evidence-went-stayed", count=len(after))


def instead(job: Job, result) -> dict | None:
    """Return the runner-up to the verdict, {"words", "probability"}; None where there is none."""
    verdict = result["verdict"]
    other = leave_one_out.runner_up(result, verdict["causes"]) if verdict else None
    if other is None:
        return None
    said = _named(job, other) if other["causes"] else message("evidence-no-fault-at-all")
    return {"words": said, "probability": other["probability"]}


def _else(job: Job, result):
    """Name the runner-up to the verdict."""
    other = instead(job, result)
    if other is None:
        return ""
    return message("evidence-else", cause=other["words"], share=percent(other["probability"]))


def _past(job: Job, result):
    """Name the dirt that may have been there beside a verdict and went when its place was handled.

    The verdict does not speak of it, for no test shows it any more, and nothing has to be done about it.
    """
    if not result["verdict"]:
        return ""
    gone = []
    for entry in result["causes"]:
        cause = entry["cause"]
        besides = entry["probability"] >= _MAY_HAVE_BEEN and cause not in result["verdict"]["causes"]
        if besides and causes.split(cause)[0] == "blocked" and not causes.is_live(job, cause):
            gone.append(cause)
    return message("evidence-past", causes=causes.phrases(job, gone)) if gone else ""


def _carries(job: Job, result):
    """Say which tests counted."""
    counted, heard = [str(index + 1) for index in _counted(job, result)], job.sort.self_test.heard
    if not counted:
        return ""
    if len(counted) == 1:
        return message("evidence-carries-one", test=counted[0], heard=heard)
    return message("evidence-carries", tests=all_of(counted), heard=heard)


def _causes(job: Job, result) -> list[dict]:
    return [
        {
            "cause": entry["cause"],
            "words": causes.phrase(job, entry["cause"]),
            "probability_words": percent(entry["probability"]),
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
