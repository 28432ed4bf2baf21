"""Evidence in words: which tests carry a conclusion, the runner-up, and what would tell the two apart."""

from ..guide import moves
from ..messages import all_of
from ..messages import message
from ..messages import percent
from ..messages import sentences
from ..state.job import Job
from ..words import causes
from ..words import results
from ..words import words

# The tests that matter most are named; a longer list is read by nobody.
_MOST_NAMED = 3
# A rival at four fifths of the best or more is as likely as it, for a person.
_AS_LIKELY = (4, 5)


def in_words(job: Job, case: dict, found: dict | None, told: dict | None) -> dict:
    """Return {"carries": [messages], "runner_up", "apart": {"sentence", "results"} or None}.

    `found` is what `leave_one_out` gives, None without a conclusion; `told` what `discriminate` gives.
    """
    if found is None:
        return {"carries": [], "runner_up": "", "apart": None}
    return {
        "carries": _carries(job, case, found),
        "runner_up": _runner_up(job, found),
        "apart": _apart(job, found, told) if told else None,
    }


def _carries(job: Job, case, found) -> list:
    groups = _groups(case, found)
    if not groups:
        return [_nothing_alone(found)]
    ranked = sorted([(groups[n]["rank"], n) for n in range(len(groups))])[:_MOST_NAMED]
    named = sorted([n for _, n in ranked])
    lines = [_line(job, found, groups[n]) for n in named]
    if len(named) < len(groups):
        lines.append(message("views-support-others"))
    elif found["by"] == "verdict":
        rest = [str(entry["test"] + 1) for entry in found["tests"] if entry["effect"] == "stands"]
        if rest:
            lines.append(_of_tests("views-support-confirms", rest))
    return lines


def _groups(case, found) -> list:
    """Return what carries the conclusion, what does the same put together, in order of the tests."""
    groups = []
    for entry in found["tests"]:
        if entry["effect"] == "stands":
            continue
        same = [each for each in groups if _same(each["entry"], entry)]
        if same:
            same[0]["tests"].append(str(entry["test"] + 1))
            continue
        groups.append({"entry": entry, "tests": [str(entry["test"] + 1)]})
    for entry in found["meter"]:
        if entry["effect"] != "stands":
            check = case["meter"][entry["n"]]["position"]
            groups.append({"entry": entry, "at": check, "carries": "views-support-checks-carry"})
    for entry in found["listen"]:
        if entry["effect"] != "stands":
            groups.append({"entry": entry, "at": entry["position"], "carries": "views-support-heard-carries"})
    for group in groups:
        entry = group["entry"]
        group["rank"] = entry["left"] if entry["effect"] == "changes" else entry["probability"]
    return groups


def _same(one, other) -> bool:
    for key in ("effect", "causes", "probability", "positions"):
        if one[key] != other[key]:
            return False
    return True


def _of_tests(which: str, numbers: list) -> dict:
    """Return what is said of one test or of several, by their numbers."""
    return message(which, how_many="one" if len(numbers) == 1 else "several", tests=all_of(numbers))


def _line(job: Job, found, group) -> dict:
    """Return what carries it, what would be said without, and which readings of a test it is about."""
    entry = group["entry"]
    about = ""
    if "at" in group:
        carrier = message(group["carries"], position=words.position_name(job, group["at"]))
    else:
        carrier = _of_tests("views-support-tests-carry", group["tests"])
        about = _about(job, entry) if len(group["tests"]) == 1 else ""
    return sentences([_without(job, found, entry, carrier), about])


def _without(job: Job, found, entry, carrier) -> dict:
    chance = percent(entry["probability"])
    if found["by"] == "clear" or entry["effect"] == "weaker":
        return message("views-support-weaker", carrier=carrier, sure=chance)
    if not entry["causes"]:
        return message("views-support-nothing-left", carrier=carrier)
    other = causes.phrases(job, entry["causes"])
    if entry["left"] * _AS_LIKELY[1] >= entry["probability"] * _AS_LIKELY[0]:
        return message("views-support-as-likely", carrier=carrier, cause=other)
    return message("views-support-other", carrier=carrier, cause=other, chance=chance)


def _about(job, entry):
    """Return 'What counts is the fault at right inner.' where one or two readings matter alone."""
    if not 1 <= len(entry["positions"]) <= 2:
        return ""
    faulted = job.tests[entry["test"]]["faulted"]
    shown = [words.position_name(job, each) for each in entry["positions"] if each in faulted]
    clean = [words.position_name(job, each) for each in entry["positions"] if each not in faulted]
    said = []
    if shown:
        said.append(message("views-support-fault-at", positions=all_of(shown)))
    if clean:
        said.append(message("views-support-clean-at", positions=all_of(clean)))
    return message("views-support-counts", readings=all_of(said))


def _nothing_alone(found) -> dict:
    """Say that no single reading carries the conclusion, and how sure the worst loss leaves it."""
    least = found["probability"]
    for entry in found["tests"] + found["meter"] + found["listen"]:
        least = min(least, entry["probability"])
    return message("views-support-none-alone", chance=percent(least))


def _runner_up(job: Job, found):
    """Name the likeliest explanation beside the verdict, and what it fails to explain."""
    other = found["alternative"]
    if other is None:
        return ""
    said = []
    if found["alone"]:
        said.append(message("views-support-alone", count=len(found["causes"])))
    said.append(message("views-support-next", cause=_named(job, other), chance=percent(other["probability"])))
    if other["missed"]:
        said.append(message("views-support-misses", what=_missed(job, other["missed"])))
    return sentences(said)


def _named(job: Job, explanation):
    if not explanation["causes"]:
        return message("views-support-no-fault")
    return causes.phrases(job, explanation["causes"])


def _missed(job, missed) -> dict:
    """Return 'the fault at right inner in test 2' for what an explanation leaves to chance."""
    if len(missed) > 2:
        return message("views-support-missed-many", count=len(missed))
    said = []
    for test, position in missed:
        where = words.position_name(job, position)
        if test is None:
            said.append(message("views-support-missed-check", position=where))
        else:
            said.append(message("views-support-missed-fault", position=where, number=str(test + 1)))
    if len(said) == 1:
        return said[0]
    return message("views-support-missed-two", one=said[0], other=said[1])


def _apart(job: Job, found, told) -> dict:
    if told["same"]:
        return {"sentence": message("views-support-same"), "results": []}
    move = told["move"]
    if move is None:
        return {"sentence": message("views-support-no-test"), "results": []}
    rows = []
    # One result that is not decisive only leans one way.
    sharp = told["sharp"]
    for explained, outcome in zip((found, found["alternative"]), move["results"]):
        kind = "leans"
        if sharp:
            kind = "one" if len(explained["causes"]) < 2 else "several"
        rows.append(
            {
                "result": results.result(job, move, outcome),
                "then": message("views-support-then", kind=kind, cause=_named(job, explained)),
            }
        )
    return {
        "sentence": message("views-support-apart", move=moves.title_of(job, move)),
        "results": rows,
    }
