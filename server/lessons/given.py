"""The figures of a yard as a file that it gives to others: sealed, and figures alone.

    {"app": "swaptrail-lessons", "v": 1, "key", "number", "first", "last", "jobs",
     "causes": [{"has", "weights", "count"}], "readings": [{"base", "explained", "count"}],
     "checks": {rate: [hits, tries]}, "signature"}

No vehicle, no name, no code, no position, and no date finer than a quarter ("2026-Q3", of the first and of
the last job that was closed). What jobs say of the rates stands there as the sums have it (`sums.causes_of`,
`sums.readings_of`), each thing once with how many jobs said it. `number` counts the files that a yard has
given: the higher is the newer. The seal is the signature of the installation over all but itself, by the key
that seals its records.
"""

import json
from typing import Any
from typing import NamedTuple

from sqlite_utils import Database

from server.core.errors import BadInput
from server.core.log import canon
from server.core.messages import message
from server.lessons import given_form
from server.lessons.given_form import APP
from server.lessons.given_form import MOST_BYTES
from server.lessons.given_form import VERSION
from server.lessons.running import Running
from server.lessons.spans import quarter
from server.lessons.sums import Sums
from server.lessons.work import ENOUGH
from server.phones.signing import Signer
from server.phones.signing import is_signed
from server.refusals import CommandRefused
from server.storage import writing
from server.storage.folder import setting

_NUMBER = "lessons_given"  # the setting that counts the files given


class Given(NamedTuple):
    """What a yard gave: whose seal it has, which of its files it is, from when to when, and the figures."""

    key: str
    number: int
    first: str
    last: str
    jobs: int
    figures: dict[str, Any]


def make(sums: Sums, number: int, signer: Signer) -> str:
    """Returns the file of a yard's own jobs; refuses fewer than show nothing of one job."""
    if len(sums.counted) < ENOUGH:
        raise CommandRefused(message("lessons-give-few", jobs=len(sums.counted), least=ENOUGH))
    closed = [at for job, _, at in sums.names if job not in sums.unclocked]
    body = {
        "app": APP,
        "v": VERSION,
        "key": signer.key,
        "number": number,
        "first": quarter(min(closed)) if closed else "",
        "last": quarter(max(closed)) if closed else "",
        "jobs": len(sums.counted),
        **sums.figures(),
    }
    return canon.dumps({**body, "signature": signer.sign(canon.dumps(body))})


def read(data: bytes) -> Given:
    """Returns what a file holds; raises CommandRefused where it is none, was altered, or cannot be so."""
    body = _parsed(data)
    if not isinstance(body, dict) or body.get("app") != APP:
        raise CommandRefused(message("lessons-given-none"))
    version = body.get("v")
    if not isinstance(version, int) or version < VERSION:
        raise CommandRefused(message("lessons-given-none"))
    if version > VERSION:
        raise CommandRefused(message("lessons-given-version"))
    signature, key = body.pop("signature", None), body.get("key")
    if not isinstance(signature, str) or not isinstance(key, str) or not _is_sealed(body, signature, key):
        raise CommandRefused(message("lessons-given-altered"))
    try:
        given_form.check(body)
    except BadInput as error:
        raise CommandRefused(message("lessons-given-nonsense", place=error.field)) from None
    figures = {name: body[name] for name in ("causes", "readings", "checks")}
    return Given(body["key"], body["number"], body["first"], body["last"], body["jobs"], figures)


def give(db: Database, signer: Signer, now: int) -> tuple[str, int]:
    """Returns the next file that a yard gives, and how many jobs its figures are of."""
    sums, _ = Running().look(db, now, 0, None)
    number = int(setting(db, _NUMBER) or 0) + 1
    made = make(sums, number, signer)
    with writing(db):
        db.conn.execute("INSERT OR REPLACE INTO settings (name, value) VALUES (?, ?)", [_NUMBER, str(number)])
    return made, len(sums.counted)


def _is_sealed(body: dict, signature: str, key: str) -> bool:
    try:
        return is_signed(canon.dumps(body), signature, key)
    except (BadInput, RecursionError):  # what no canonical text has, such as half a number
        return False


def _parsed(data: bytes) -> object:
    if len(data) > MOST_BYTES:
        return None
    try:
        return json.loads(data)
    except (ValueError, RecursionError):
        return None
