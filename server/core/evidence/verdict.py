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
from . import tests_so_far

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
        "holds_words": standing.words(job, result, holds.is_clear(result, job.confidence_ppb)),
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
    elif settled and tests_so_far.only_unplugged(job, result):
        shown["sentence"] = message("evidence-unplugged")
        shown["detail"] = message("evidence-unplugged-detail", share=percent(result["clear"]))
    elif settled:
        shown["sentence"] = message("evidence-gone")
        shown["detail"] = sentences(
            [
                tests_so_far.how_it_went(job, result),
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
        elif tests_so_far.last_was_clean(job, result):
            shown["sentence"] = message("evidence-last-clean")
            wanted = percent(job.confidence_ppb)
            left = message("evidence-nothing-left-yet", share=percent(result["clear"]), wanted=wanted)
            shown["detail"] = sentences([left, _leading(job, result, was=True)])
    return shown


def is_clear(job: Job, result: dict) -> bool:
    """Tell whether nothing is left to fix: the chance of it reaches the confidence, and holds.

    A fault in the last test may well be a false alarm; no job ends on it, one more test says so.
    """
    return holds.is_clear(result, job.confidence_ppb) and not tests_so_far.last_shows_a_fault(job, result)


def headline(job: Job, found: list) -> dict:
    """Return the verdict as a heading: followed, stayed, or each cause by name."""
    if len(found) == 1:
        kind, what, _ = causes.split(found[0])
        if kind == "unit" and len(tests_so_far.faulted_places(job, what)) > 1:
            return message("evidence-followed", cause=causes.phrase(job, found[0]))
        if kind == "circuit" and len(tests_so_far.faulted_units(job, what)) > 1:
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
    counted, heard = [str(index + 1) for index in tests_so_far.counted(job, result)], job.sort.self_test.heard
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
