"""A record of a sensor or a job as a sort of file to verify."""

import json
from contextlib import closing
from pathlib import Path

from server.core.host import Host
from server.core.log import canon
from server.core.messages import message
from server.core.record import check as record_check
from server.core.record import comparison
from server.core.record.comparison import stand_ins
from server.core.record.file import MOST_BYTES
from server.keeping.record.check import HEAD_BYTES
from server.keeping.record.check import Altered
from server.keeping.record.check import Sound
from server.keeping.record.check import begins
from server.keeping.record.check import check
from server.keeping.record.makers import confirmed
from server.keeping.verify.sort import Sort
from server.keeping.verify.sort import Telling
from server.log.fault import Fault
from server.phones.signing import fingerprint
from server.phones.signing import signer
from server.refusals import CommandRefused
from server.storage import folder_with_data
from server.web.core_files import core_digest
from server.words.spoken import say
from server.words.spoken import text


def fits(path: Path) -> bool:
    """Tells whether `path` means to be a record; one that is cut short still does."""
    if not path.is_file():
        return False
    with path.open("rb") as file:
        return begins(file.read(HEAD_BYTES))


def first_fault(path: Path) -> Fault | None:
    """Returns the first fault of a record."""
    try:
        _checked(path)
    except Altered as error:
        return error.fault
    return None


def told(path: Path, data: Path | None) -> Telling:
    """Says what sealed a record (whose key it is, only `data` may know), of what it is, and what follows."""
    sound = _checked(path)
    record = sound.record
    view = _folded(sound)
    jobs, compared = view["jobs"], view["compared"]
    by_phone = sound.by == record_check.PHONE
    lines = [
        say("keeping-sealed-phone" if by_phone else "keeping-sealed", key=fingerprint(record["key"])),
        _whose(record["key"], data),
        *([say("keeping-of-unit", unit=view["unit"]["shown"] or record["unit"])] if record["unit"] else []),
        *(text(each) for each in comparison.concluded(jobs)),
        text(compared["sentence"]),
        *(text(each) for each in compared["differs"]),
    ]
    if compared["elsewhere"]:
        lines.append(text(compared["elsewhere"]))
    if sound.smaller:
        lines.append(say("keeping-smaller", count=len(sound.smaller)))
    return Telling(lines, compared["same"])


def _whose(key: str, data: Path | None) -> str:
    """Says whose a key is: as a person has confirmed it in a data folder, or that nobody has."""
    known = None
    if data is not None:
        folder = folder_with_data(data)
        if signer(folder).key == key:
            return say("keeping-own-seal")
        with closing(folder.open()) as db:
            known = confirmed(db, key)
    if known is None:
        return say("keeping-unconfirmed")
    return say("keeping-confirmed", name=known["name"], how=known["how"], by=known["by"])


def _folded(sound: Sound) -> dict:
    """Returns what the core makes of a record's entries alone (`op_record`)."""
    record = sound.record
    core = Host()
    events = [{"event": event} for event in [*stand_ins(record["elsewhere"]), *sound.events]]
    _asked(core, {"op": "reset", "events": events, "phones": sound.phones})
    question = {name: record[name] for name in ("unit", "jobs", "told", "elsewhere")}
    return _asked(core, {"op": "record", **question, "same_core": record["core"] == core_digest()})


def _asked(core: Host, question: dict) -> dict:
    reply = json.loads(core.call(canon.dumps(question)))
    if not reply["ok"]:
        raise CommandRefused(reply["error"]["message"])
    value: dict = reply["value"]
    return value


def _checked(path: Path) -> Sound:
    with path.open("rb") as file:
        return check(file.read(MOST_BYTES + 1))


RECORD = Sort(message("keeping-sort-record"), fits, first_fault, told=told)
