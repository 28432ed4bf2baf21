"""What one job contributes, as plain JSON: kept until the job changes, so that figures are quick.

It holds no sentence and nothing of other jobs. `why` says what keeps a job from counting towards rates:
UNTESTED, MIXED_UP, ANOTHER_SORT, IMPOSSIBLE; the rest of it is there all the same.
"""

from typing import Any

from server.core.codes import vin
from server.core.errors import BadInput
from server.core.evidence import learned
from server.core.evidence import readings
from server.core.state.job import Job
from server.core.words import words
from server.lessons import minutes
from server.lessons.classes import compositions
from server.lessons.explained import explained
from server.lessons.proven import checks_of
from server.lessons.proven import is_mixed_up
from server.lessons.proven import place_of
from server.lessons.proven import prove
from server.lessons.showing import Base

UNTESTED, MIXED_UP, ANOTHER_SORT, IMPOSSIBLE = "untested", "mixed_up", "another_sort", "impossible"
_PPM = 1_000_000
_PPB = 1_000_000_000


def of_job(job: Job) -> dict[str, Any]:
    """Returns what a closed job contributes."""
    closing = job.closing or {"at": job.opened_at}
    times, left_out = minutes.of_job(job)
    tests = readings.tests(job)
    counted = [test for test in tests if readings.counts(test)]
    found: dict[str, Any] = {
        "job": job.id,
        "name": job.vehicle["name"],
        "vehicle": job.vehicle_id,
        "model": _model(job),
        "layout": job.facts["layout"],
        "opened": job.opened_at,
        "closed": closing["at"],
        "unrepaired": bool(closing.get("why")),
        "faulted": counted[0]["faulted"] if counted else [],
        "times": [list(each) for each in times],
        "times_left_out": left_out,
        "positions": [
            [each["id"], words.called(job, each), each["edge"], each["group"], readings.reach(job, each)]
            for each in job.positions
        ],
        "bought": _bought(job),
        "why": "",
    }
    found["saved"] = _saved(job, found["faulted"])
    why = _keeps_out(job, counted)
    if why:
        return found | {"why": why}
    try:
        return found | _proof(job, tests)
    except BadInput:
        return found | {"why": IMPOSSIBLE}


def of_open_job(job: Job) -> dict[str, Any]:
    """Returns what a job says before it is closed: whether its vehicle has come back with the same fault.

    Its first test that counts tells that; `closed` is None, and it teaches nothing else yet.
    """
    counted = [test for test in readings.tests(job) if readings.counts(test)]
    return {
        "job": job.id,
        "name": job.vehicle["name"],
        "vehicle": job.vehicle_id,
        "opened": job.opened_at,
        "closed": None,
        "faulted": counted[0]["faulted"] if counted else [],
    }


def _proof(job: Job, tests: list[dict]) -> dict[str, Any]:
    proof = prove(job)
    kinds = proof.belief.model.kinds
    has = [len(job.positions)] * 3 + [len({each["group"] for each in job.positions if each["group"]}), 1]
    weights = compositions(proof.belief)
    names = proof.belief.model.names
    return {
        "has": has,
        "weights": [[list(key), int(share * _PPB + 0.5)] for key, share in sorted(weights.items())],
        "causes": [[kinds[names.index(each)], place_of(each, tests)] for each in proof.leading],
        "proven": bool(proof.causes),
        "claimed_ppb": int(proof.chance * _PPB + 0.5) if proof.claimed else 0,
        "right": bool(proof.claimed) and set(proof.claimed) <= set(proof.causes),
        "base": [int(proof.belief.model.rates[name] * _PPM + 0.5) for name in Base._fields],
        "readings": explained(job, tests, proof.belief),
        "checks": checks_of(job, tests, proof.causes) if proof.causes else {},
    }


def _keeps_out(job: Job, counted: list[dict]) -> str:
    if not learned.teaches(job.sort):
        return ANOTHER_SORT
    if not counted:
        return UNTESTED
    return MIXED_UP if is_mixed_up(job) else ""


def _model(job: Job) -> str:
    """Returns what vehicles of one model share: maker and description in the number, else the vehicle."""
    read = vin.look(job.vehicle["vin"])
    return read["vin"][:8] if read["state"] in {"fits", "does_not_fit"} else job.vehicle_id


def _bought(job: Job) -> int:
    """Returns how many units came for this job and sit on the vehicle at its last test."""
    added = [each["data"]["unit"] for each in job.entries() if each["kind"] == "unit_added"]
    sits = set(job.tests[-1]["fitted"].values()) if job.tests else set()
    return len(sits & set(added))


def _saved(job: Job, faulted: list[str]) -> int:
    """Returns how many positions showed a fault at first and got no unit that was bought.

    A habit without a test buys a unit for each of them.
    """
    if not job.tests or (job.closing or {}).get("why"):
        return 0
    last = job.tests[-1]["fitted"]
    bought = [place for place in last if last[place] not in job.units_at_opening]
    return max(0, len(faulted) - len(bought))
