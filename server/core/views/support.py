"""Evidence in words: which tests carry a conclusion, the runner-up, and what would tell the two apart."""

from .. import phrases
from ..guide import moves
from ..state.job import Job
from ..words import causes
from ..words import results
from ..words import words

# The tests that matter most are named; a longer list is read by nobody.
_MOST_NAMED = 3
# A rival at four fifths of the best or more is as likely as it, for a person.
_AS_LIKELY = (4, 5)
_COUNTS = ("no", "one", "pair", "three", "four")


def in_words(job: Job, case: dict, found: dict | None, told: dict | None) -> dict:
    """Return {"carries": [sentences], "runner_up", "apart": {"sentence", "results"} or None}.

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
        lines.append("Others matter too, but less.")
    elif found["by"] == "verdict":
        rest = [str(entry["test"] + 1) for entry in found["tests"] if entry["effect"] == "stands"]
        if rest:
            said = "confirms it; without it this still stands."
            if len(rest) > 1:
                said = "confirm it; without any one of them this still stands."
            lines.append("{} {}".format(_tests(rest), said))
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
        groups.append({"entry": entry, "tests": [str(entry["test"] + 1)], "check": None})
    for entry in found["meter"]:
        if entry["effect"] != "stands":
            check = case["meter"][entry["n"]]["position"]
            groups.append({"entry": entry, "tests": [], "check": check})
    for group in groups:
        entry = group["entry"]
        group["rank"] = entry["left"] if entry["effect"] == "changes" else entry["probability"]
    return groups


def _same(one, other) -> bool:
    for key in ("effect", "causes", "probability", "positions"):
        if one[key] != other[key]:
            return False
    return True


def _tests(numbers) -> str:
    return "Test {}".format(numbers[0]) if len(numbers) == 1 else "Tests " + phrases.listed(numbers)


def _line(job: Job, found, group) -> str:
    """Return what carries it, what would be said without, and which readings of a test it is about."""
    entry = group["entry"]
    if group["check"]:
        start = "The checks of the wiring at {} carry this: without them".format(
            words.position_name(job, group["check"])
        )
    elif len(group["tests"]) > 1:
        start = "{} each carry this: with one of them less".format(_tests(group["tests"]))
    else:
        start = _tests(group["tests"]) + " carries this: without it"
    about = _about(job, entry) if len(group["tests"]) == 1 else ""
    if found["by"] == "clear" or entry["effect"] == "weaker":
        return "{}, you would be only {} sure.{}".format(start, phrases.percent(entry["probability"]), about)
    if not entry["causes"]:
        return "{}, nothing would point to a cause.{}".format(start, about)
    other = causes.phrases(job, entry["causes"])
    if entry["left"] * _AS_LIKELY[1] >= entry["probability"] * _AS_LIKELY[0]:
        return "{}, {} would be just as likely.{}".format(start, other, about)
    chance = phrases.percent(entry["probability"])
    return "{}, it would most likely be {}, {}.{}".format(start, other, chance, about)


def _about(job, entry) -> str:
    """Return 'What counts is the fault at right inner.' where one or two readings matter alone."""
    if not 1 <= len(entry["positions"]) <= 2:
        return ""
    faulted = job.tests[entry["test"]]["faulted"]
    shown = [words.position_name(job, each) for each in entry["positions"] if each in faulted]
    clean = [words.position_name(job, each) for each in entry["positions"] if each not in faulted]
    said = []
    if shown:
        said.append("the fault at " + phrases.listed(shown))
    if clean:
        said.append("that {} tested clean".format(phrases.listed(clean)))
    return " What counts is {}.".format(phrases.listed(said))


def _nothing_alone(found) -> str:
    """Say that no single reading carries the conclusion, and how sure the worst loss leaves it."""
    least = found["probability"]
    for entry in found["tests"] + found["meter"]:
        least = min(least, entry["probability"])
    return "No single test carries this: leave out any one of them, and the others still make it {}.".format(
        phrases.percent(least)
    )


def _runner_up(job: Job, found) -> str:
    """Name the likeliest explanation beside the verdict, and what it fails to explain."""
    other = found["alternative"]
    if other is None:
        return ""
    said = []
    if found["alone"]:
        said.append("No other {} fits all that was seen.".format(_as_few(len(found["causes"]))))
    name = "no fault at all"
    if other["causes"]:
        name = causes.phrases(job, other["causes"])
    said.append("The next likeliest is {}, {}.".format(name, phrases.percent(other["probability"])))
    if other["missed"]:
        said.append("It does not explain {}.".format(_missed(job, other["missed"])))
    return " ".join(said)


def _as_few(count) -> str:
    if count == 1:
        return "single cause"
    if count == 2:
        return "pair of causes"
    return "set of {} causes".format(_COUNTS[count] if count < len(_COUNTS) else count)


def _missed(job, missed) -> str:
    """Return 'the fault at right inner in test 2' for what an explanation leaves to chance."""
    if len(missed) > 2:
        return "{} of the faults seen".format(len(missed))
    said = []
    for test, position in missed:
        name = words.position_name(job, position)
        if test is None:
            said.append("the bad check at " + name)
        else:
            said.append("the fault at {} in test {}".format(name, test + 1))
    return " nor ".join(said)


def _apart(job: Job, found, told) -> dict:
    if told["same"]:
        return {"sentence": "A test made now would show the same either way.", "results": []}
    move = told["move"]
    if move is None:
        return {"sentence": "No single test made now tells the two apart.", "results": []}
    rows = []
    # One result that is not decisive only leans one way.
    sharp = told["sharp"]
    for explained, outcome in zip((found["causes"], found["alternative"]["causes"]), move["results"]):
        says = "it is" if len(explained) < 2 else "the causes are"
        names = causes.phrases(job, explained) if explained else "no fault at all"
        rows.append(
            {
                "result": results.result(job, move, outcome),
                "then": "{} {}".format(says if sharp else "speaks for", names),
            }
        )
    return {"sentence": moves.title_of(job, move) + ".", "results": rows}
