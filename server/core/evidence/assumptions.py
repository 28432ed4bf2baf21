"""What the figures of a job rest on: every rate with its meaning, and the facts that would change it.

Nothing here changes by itself: an estimate is offered beside the default, a factor that a code brings
is shown with its reason, and each can be set back.
"""

from ..codes import troublecode
from ..facts.draft import draft
from ..facts.learned import RATES as RATES_LEARNED
from ..infer.case import CONFIDENCE
from ..infer.case import RATES
from ..messages import decimal
from ..messages import message
from ..parts.sort import Sort
from ..state.job import Job
from . import comeback
from . import learned
from . import priors
from . import readings
from . import shows_rate

_PPM = 1000000
COMMON = message("evidence-common")

# What each rate is the chance of: the id of its message.
_MEANINGS = (
    ("unit", "evidence-rate-unit"),
    ("circuit", "evidence-rate-circuit"),
    ("blocked", "evidence-rate-blocked"),
    ("feed", "evidence-rate-feed"),
    ("control", "evidence-rate-control"),
    ("shows", "evidence-rate-shows"),
    ("false_alarm", "evidence-rate-false-alarm"),
    ("meter_sees", "evidence-rate-meter-sees"),
    ("meter_false", "evidence-rate-meter-false"),
)
# These matter once somebody listened.
_HEARD = (
    ("tick_unit", "evidence-rate-tick-unit"),
    ("tick_circuit", "evidence-rate-tick-circuit"),
    ("tick_feed", "evidence-rate-tick-feed"),
    ("tick_control", "evidence-rate-tick-control"),
    ("tick_false", "evidence-rate-tick-false"),
)
_MONEY = (
    ("labour_per_hour", "evidence-money-labour"),
    ("part_price", "evidence-money-part"),
    ("wrong_purchase", "evidence-money-wrong"),
)


def in_words(job: Job, result: dict | None) -> dict:
    """Return the assumptions of a job, each with the drafts that switch it or set it back."""
    return {
        "closed": job.is_closed(),
        "sort": job.sort.identity,
        "rates_ppm": job.rates_ppm,
        "confidence_ppm": job.confidence_ppm,
        "rates": [
            _rate(job, name, meaning)
            for name, meaning in _MEANINGS + (_HEARD if job.listened else ())
            if name not in job.sort.without
        ],
        "confidence": _confidence(job),
        "comes_and_goes": _comes_and_goes(job, result),
        "lamps": [
            {
                "sentence": message("evidence-lamp", result=entry["result"], factor=entry["factor"]),
                "source": COMMON,
            }
            for entry in priors.lamp_weights(job)
        ],
        "comeback": _comeback(job),
        "yard": _yard(job),
        "codes": [_code(entry) for entry in priors.code_weights(job)],
        "money": [
            {"id": name, "words": _of(job.sort, said), "value": job.money.get(name, 0)}
            for name, said in _MONEY
        ],
    }


def exact(ppm: int) -> dict:
    """Return parts per million as an exact percentage, e.g. 0.5 %."""
    units, places = ppm, 4
    while places and not units % 10:
        units, places = units // 10, places - 1
    return message("figures-percent", number=decimal(units, places))


def _about(ppm: int) -> dict:
    """Return parts per million as a percentage of two figures, those of its distance from the nearer end."""
    away, step = min(ppm, 1000000 - ppm), 1
    while away >= 100 * step:
        step *= 10
    return exact((ppm + step // 2) // step * step)


def _of(sort: Sort, name: str) -> dict:
    """Return a message of this module in the words of a sort of part."""
    return sort.says(name, blocked=sort.obstruction.words)


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
    # What jobs taught has no more figures than they can tell; what a person set stands as it was set.
    default_said = _about if name in learned.rates(job) else exact
    return {
        "id": name,
        "words": _of(job.sort, meaning),
        "default_words": default_said(default),
        "value_words": exact(value) if changed else default_said(value),
        "value_ppm": value,
        "changed": changed,
        "source": _source(job, name),
        "reset": [rates_set(job, {name: None})] if changed else [],
    }


def _default(job: Job, name: str) -> float:
    """Return a rate (0 to 1) of the job's sort of part or as learned, before anything is known of the job."""
    return learned.rates(job).get(name, job.sort.rates.get(name, RATES[name]))


def _source(job: Job, name: str) -> dict:
    if name not in learned.rates(job):
        return COMMON
    return message("evidence-learned", jobs=job.learned(RATES_LEARNED)["jobs"])


def _yard(job: Job) -> dict | None:
    """Return what the yard has taken and this job has not, with the drafts that take it; None for nothing."""
    drafts = learned.not_on(job)
    if not drafts:
        return None
    return {
        "sentence": message("evidence-yard-learned", jobs=max([each["data"]["jobs"] for each in drafts])),
        "words": message("evidence-yard-use"),
        "events": drafts,
    }


def _confidence(job) -> dict:
    default = _ppm(CONFIDENCE)
    changed = job.confidence_ppm != default
    return {
        "words": message("evidence-confidence"),
        "default_words": exact(default),
        "value_words": exact(job.confidence_ppm),
        "value_ppm": job.confidence_ppm,
        "changed": changed,
        "source": COMMON,
        "reset": [rates_set(job, {}, default)] if changed else [],
    }


def _comes_and_goes(job, result) -> dict:
    value = job.comes_and_goes
    switch = "evidence-switch-all-the-time" if value else "evidence-switch-comes-and-goes"
    offered = shows_rate.estimate(job, result)
    if offered:
        default = readings.SHOWS_COMES_AND_GOES if value else _default(job, "shows")
        offered = {
            "sentence": message(
                "evidence-estimate",
                shown=offered["shown"],
                repeats=offered["repeats"],
                share=exact(_whole_percent(offered["ppm"])),
                default=exact(_ppm(default)),
            ),
            "source": shows_rate.SOURCE,
            "used": job.rates_ppm.get("shows") == _whole_percent(offered["ppm"]),
            "words": message("evidence-use", share=exact(_whole_percent(offered["ppm"]))),
            "events": [rates_set(job, {"shows": _whole_percent(offered["ppm"])})],
        }
    return {
        "value": value,
        "words": message("evidence-comes-and-goes" if value else "evidence-there-all-the-time"),
        "note": job.sort.says("evidence-comes-and-goes-note"),
        "switch_words": message(switch),
        "events": [draft("comes_and_goes_set", value=not value)],
        "estimate": offered,
        "again": _rate(job, "again", "evidence-rate-again") if value else None,
    }


def _comeback(job) -> dict | None:
    """Return what earlier jobs on the vehicle speak for, and how much that may count; None without any."""
    if not comeback.before(job):
        return None
    factor, months = comeback.setting(job)
    return {
        "sentences": comeback.sentences(job),
        "source": comeback.SOURCE,
        "factors": [
            _offered(
                message("evidence-comeback-factor", factor=each), each, factor, factor=each, months=months
            )
            for each in comeback.FACTORS
        ],
        "halves": [
            _offered(
                message("evidence-comeback-months", months=each), each, months, factor=factor, months=each
            )
            for each in comeback.HALVES
        ],
    }


def _offered(said: dict, value: int, now: int, **setting) -> dict:
    """Return a value that could be set in place of the one there is `now`."""
    events = [draft("comeback_set", **setting)]
    return {"value": value, "words": said, "on": value == now, "events": events}


def _whole_percent(ppm: int) -> int:
    return (ppm + 5000) // 10000 * 10000


def _code(entry) -> dict:
    return {
        "position": entry["position"],
        "name": entry["name"],
        "code": entry["code"],
        "failure_type": entry["failure_type"],
        "sentence": message(
            "evidence-code",
            code=troublecode.in_one(entry),
            position=entry["name"],
            words=entry["words"],
            why=entry["why"],
        ),
        "source": message("evidence-source", source=entry["source"]),
        "on": entry["on"],
        "words": message("evidence-code-counts" if entry["on"] else "evidence-code-aside"),
        "switch_words": message("evidence-code-leave-out" if entry["on"] else "evidence-code-let-count"),
        "events": [draft("code_weight_set", position=entry["position"], on=not entry["on"])],
    }


def _ppm(chance: float) -> int:
    return int(chance * _PPM + 0.5)
