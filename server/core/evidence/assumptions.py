"""What the figures of a job rest on: every rate with its meaning, and the facts that would change it.

Nothing here changes by itself: an estimate is offered beside the default, a factor that a code brings
is shown with its reason, and each can be set back.
"""

from ..facts.draft import draft
from ..infer.case import CONFIDENCE
from ..infer.case import RATES
from ..parts.sort import Sort
from ..phrases import sentence_case
from ..state.job import Job
from . import priors
from . import readings
from . import shows_rate

_PPM = 1000000
COMMON = "common practice, no source"

_MEANINGS = (
    ("unit", "{A_unit} is bad, before any test"),
    ("circuit", "The wiring of one position is bad: connector, wire or channel"),
    ("blocked", "One position is blocked: {blocked}"),
    ("feed", "The supply or ground that one {shares} shares is bad"),
    ("control", "The control unit is bad"),
    ("shows", "A fault that is there shows in one self-test"),
    ("false_alarm", "A position with no fault shows one all the same"),
    ("meter_sees", "The wiring checks find a wiring fault"),
    ("meter_false", "The wiring checks read bad on good wiring"),
)
_MONEY = (
    ("labour_per_hour", "Labour, per hour"),
    ("part_price", "Price of a new {unit}"),
    ("wrong_purchase", "What {a_unit} bought for nothing costs you"),
)


def in_words(job: Job, result: dict | None) -> dict:
    """Return the assumptions of a job, each with the drafts that switch it or set it back."""
    return {
        "closed": job.is_closed(),
        "rates_ppm": job.rates_ppm,
        "confidence_ppm": job.confidence_ppm,
        "rates": [_rate(job, name, meaning) for name, meaning in _MEANINGS],
        "confidence": _confidence(job),
        "comes_and_goes": _comes_and_goes(job, result),
        "codes": [_code(entry) for entry in priors.code_weights(job)],
        "money": [
            {"id": name, "words": _of(job.sort, said), "value": job.money.get(name, 0)}
            for name, said in _MONEY
        ],
    }


def percent(ppm: int) -> str:
    """Return parts per million as an exact percentage, e.g. 0.5 %."""
    whole, rest = ppm // 10000, ppm % 10000
    if not rest:
        return "{} %".format(whole)
    digits = str(10000 + rest)[1:]
    while digits.endswith("0"):
        digits = digits[:-1]
    return "{}.{} %".format(whole, digits)


def _of(sort: Sort, text: str) -> str:
    """Return a text of this module in the words of a sort of part."""
    return text.format(
        unit=sort.unit,
        a_unit=sort.a_unit,
        A_unit=sentence_case(sort.a_unit),
        blocked=sort.obstruction.words,
        shares=sort.shares_a_feed,
    )


def rates_set(job: Job, changes: dict, confidence_ppm: int = 0) -> dict:
    """Return the fact that changes some rates (None takes one back to its default) and keeps the rest."""
    rates = dict(job.rates_ppm)
    for name in changes:
        if changes[name] is None:
            rates.pop(name, None)
        else:
            rates[name] = changes[name]
    return draft("rates_set", rates_ppm=rates, confidence_ppm=confidence_ppm)


def _rate(job, name, meaning) -> dict:
    default = _ppm(_default(job, name))
    if name == "shows" and job.comes_and_goes:
        default = _ppm(readings.SHOWS_COMES_AND_GOES)
    value = _ppm(readings.all_rates(job)[name])
    changed = name in job.rates_ppm
    return {
        "id": name,
        "words": _of(job.sort, meaning),
        "default_words": percent(default),
        "value_words": percent(value),
        "value_ppm": value,
        "changed": changed,
        "source": COMMON,
        "reset": [rates_set(job, {name: None})] if changed else [],
    }


def _default(job: Job, name: str) -> float:
    """Return a rate (0 to 1) of the job's sort of part, before anything is known of the job."""
    return job.sort.rates.get(name, RATES[name])


def _confidence(job) -> dict:
    default = _ppm(CONFIDENCE)
    changed = job.confidence_ppm != default
    return {
        "words": "How sure a verdict has to be before it is called one",
        "default_words": percent(default),
        "value_words": percent(job.confidence_ppm),
        "value_ppm": job.confidence_ppm,
        "changed": changed,
        "source": COMMON,
        "reset": [rates_set(job, {}, default)] if changed else [],
    }


def _comes_and_goes(job, result) -> dict:
    value = job.comes_and_goes
    offered = shows_rate.estimate(job, result)
    if offered:
        default = readings.SHOWS_COMES_AND_GOES if value else _default(job, "shows")
        offered = {
            "sentence": "It showed in {} of {} tests that were run again with nothing changed. "
            "That makes {}; the default is {}.".format(
                offered["shown"],
                offered["repeats"],
                percent(_whole_percent(offered["ppm"])),
                percent(_ppm(default)),
            ),
            "source": shows_rate.SOURCE,
            "used": job.rates_ppm.get("shows") == _whole_percent(offered["ppm"]),
            "words": "Use {}".format(percent(_whole_percent(offered["ppm"]))),
            "events": [rates_set(job, {"shows": _whole_percent(offered["ppm"])})],
        }
    return {
        "value": value,
        "words": "The fault comes and goes." if value else "The fault is there all the time.",
        "note": "A present fault then shows in half of the self-tests only, so proof takes more of them.",
        "switch_words": "It is there all the time" if value else "It comes and goes",
        "events": [draft("comes_and_goes_set", value=not value)],
        "estimate": offered,
    }


def _whole_percent(ppm: int) -> int:
    return (ppm + 5000) // 10000 * 10000


def _code(entry) -> dict:
    counted = "counts" if entry["on"] else "does not count"
    return {
        "position": entry["position"],
        "name": entry["name"],
        "code": entry["code"],
        "failure_type": entry["failure_type"],
        "sentence": "{} at {}: {}, so {}.".format(
            "-".join([each for each in (entry["code"], entry["failure_type"]) if each]),
            entry["name"],
            entry["words"],
            entry["why"],
        ),
        "source": entry["source"][:1].upper() + entry["source"][1:] + ".",
        "on": entry["on"],
        "words": "It " + counted,
        "switch_words": "Leave it out" if entry["on"] else "Let it count",
        "events": [draft("code_weight_set", position=entry["position"], on=not entry["on"])],
    }


def _ppm(chance: float) -> int:
    return int(chance * _PPM + 0.5)
