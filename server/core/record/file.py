"""What a record as a file is made of, whoever seals it: its parts, its limits, and what goes into it.

An installation seals with its own key, a phone without a server with the phone's: two beginnings, for
who knows only the first is not to take the other for an altered one. For the same reason the version is
another since conclusions are told in messages and codes: in records of version 1 they are sentences.
One with smaller versions of photos in it is of version 3: programs from before check no photo that no
entry names, and are not to call a record intact in which such a one was changed.
"""

from ..codes import labels
from ..log import envelope
from ..log import ids
from ..messages import message
from ..state.unit import Unit
from . import named
from .entries import FoldedLog
from .entries import gather

APP, VERSION, LATEST = "swaptrail record", 2, 3
PHONE_APP = "swaptrail phone record"
RECORD, ENTRIES, HASHES, SEAL = "record.json", "entries.jsonl", "hashes.json", "seal.json"

# The seal: {"app", "v", "key", "digests", "signature"}; a field of `record.json` is a part of its own.
SEAL_APP, PHONE_SEAL_APP, SEAL_VERSION = "swaptrail seal", "swaptrail phone seal", 1
FIELD = RECORD + "/"

MOST_BYTES = 48 * 1024 * 1024  # of the whole file
MOST_TEXT = 16 * 1024 * 1024  # of one member that is no photo, so that reading it stays bounded
MOST_MEMBERS = 2000

# How a picture is drawn again that has no room as it is: its long side in pixels, and per cent of quality.
SMALLER_SIDE, SMALLER_QUALITY = 1280, 65

_PHOTO_OVERHEAD = 640  # what a photo takes beside its own bytes: its heads, its digests
_OTHER_MEMBERS = 4
_OTHER_BYTES = 64 * 1024


def photo_member(digest: str) -> str:
    """Return under which name a photo lies in a record."""
    return "photos/{}.jpg".format(digest)


def photos(entries: list) -> list[str]:
    """Return the digests of the photos that entries name, each once, in their order."""
    found = []
    for entry in entries:
        digest = named.photo(entry.event)
        if digest and digest not in found:
            found.append(digest)
    return found


def with_room(sizes: list, text: int) -> list[bool]:
    """Tell which photos go in, by their sizes in bytes (None is not there), beside so much text."""
    room = MOST_BYTES - text - _OTHER_BYTES
    count = 0
    kept = []
    for size in sizes:
        fits = size is not None and size + _PHOTO_OVERHEAD <= room and count < MOST_MEMBERS - _OTHER_MEMBERS
        if fits:
            room -= size + _PHOTO_OVERHEAD
            count += 1
        kept.append(fits)
    return kept


def over(sizes: list, text: int) -> int:
    """Return how many bytes too many all these photos would be, beside so much text; 0 or less: none."""
    total = text + _OTHER_BYTES
    for size in sizes:
        if size is not None:
            total += size + _PHOTO_OVERHEAD
    return total - MOST_BYTES


def title(state, unit: str, job: str) -> dict:
    """Return whose record it is, as a message."""
    if not unit:
        return message("record-title-job", vehicle=state.vehicles[state.jobs[job]["vehicle"]]["name"])
    name = labels.shown(state.units[unit]["code"]) or unit
    return message("record-title-unit", sort=Unit(state, unit).sort.identity, unit=name)


def file_name(state, unit: str, job: str) -> str:
    """Return the name that the file goes by; a code or an id that is no plain word is in none."""
    code = state.units[unit]["code"] if unit else ""
    for name in (code, unit, job):
        if ids.fits(name):
            return "swaptrail-record-{}.zip".format(name)
    return "swaptrail-record.zip"


def fields(state, unit: str, job: str, gathered, told: dict) -> dict:
    """Return what `record.json` says, but for who made it, when, with which core, and what is missing."""
    code = state.units[unit]["code"] if unit else ""
    return {
        "v": VERSION,
        "unit": unit,
        "job": job,
        # A code that was never issued is no label's: the form of a record (`form.py`) knows of none.
        "code": code if labels.may_be_issued(code) else "",
        "jobs": gathered.jobs,
        "format": envelope.FORMAT_VERSION,
        "elsewhere": gathered.elsewhere,
        "told": told,
    }


def parts(fold, unit: str, job: str, told) -> dict:
    """Return what a phone makes a record of, from all that it knows; `told(jobs)` says what is concluded."""
    state = fold.state
    gathered = gather(state, FoldedLog(fold.whole()), unit, job)
    record_fields = fields(state, unit, job, gathered, told(gathered.jobs))
    record_fields["app"] = PHONE_APP
    return {
        "fields": record_fields,
        "order": [[entry.event["device"], entry.event["seq"]] for entry in gathered.entries],
        "photos": photos(gathered.entries),
        "title": title(state, unit, job),
        "name": file_name(state, unit, job),
        "most_text": MOST_TEXT,
        "smaller": {"v": LATEST, "side": SMALLER_SIDE, "quality": SMALLER_QUALITY},
        "names": {"record": RECORD, "entries": ENTRIES, "hashes": HASHES, "seal": SEAL},
        "seal": {"app": PHONE_SEAL_APP, "v": SEAL_VERSION, "field": FIELD},
    }
