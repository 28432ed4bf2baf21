"""POST /api/sync: takes what the server lacks, gives what the phone lacks.

Any number of repeats in any order ends in the same log; the answer goes out after the commit.
"""

import logging

from flask import Blueprint
from flask import Response
from sqlite_utils import Database

from server.clock import now_ms
from server.core.errors import shorten
from server.core.log.envelope import FORMAT_VERSION
from server.core.messages import message
from server.folded import phones
from server.labelling import store as labels
from server.log import epoch
from server.log import events
from server.log import proof
from server.log.proof import Proofs
from server.news.board import board
from server.phones import certificates
from server.phones import devices
from server.phones.certificates import Certificate
from server.phones.installation import installation_id
from server.phones.installation import installation_signer
from server.phones.people import checked_people
from server.phones.people import note_people
from server.phones.sessions import Session
from server.phones.sessions import require_session
from server.photos import lost
from server.storage import writing
from server.web.answers import json_answer
from server.web.assets import current_shell
from server.web.bodies import json_object
from server.web.bodies import text_field
from server.web.bodies import whole_field
from server.web.database import database
from server.web.errors import BadRequest
from server.web.errors import NotAllowed
from server.web.errors import TooLarge

log = logging.getLogger(__name__)

blueprint = Blueprint("sync", __name__)

SYNC_VERSION = 1
MOST_BYTES = 2 * 1024 * 1024
MOST_EVENTS_UP = 200
MOST_EVENTS_DOWN = 500
MOST_LABELS_OUT = 5000
MOST_PHOTOS_WANTED = 100
MOST_PHOTOS_LOST = 100


@blueprint.post("/api/sync")
def sync() -> Response:
    """Receives a batch of events and answers with the feed behind the phone's cursor."""
    session = require_session()
    body = json_object(MOST_BYTES)
    device, app, cursor, entries = _checked(body)
    keeping, seen = devices.checked_keeping(body), epoch.checked_seen(body)
    signer = installation_signer()
    proofs = proof.read(body, signer.key)
    only_prove = body.get("only_prove") is True
    people, phones_known = checked_people(body), body.get("phones")
    if phones_known is not None:
        phones_known = whole_field(body, "phones")
    db, now = database(), now_ms()
    with writing(db):
        if not devices.claim(db, device, session.id, now):
            raise NotAllowed(
                "device",
                device,
                "the device id of this phone",
                message("server-other-phone-pair"),
            )
        devices.note_app(db, device, app)
        if keeping:
            devices.note_keeping(db, device, keeping)
        starts_over = epoch.knows_another_log(db, cursor, seen)
        if starts_over and epoch.is_proven(cursor, seen, signer.key):
            log.warning("a phone has seen a longer or another log: a new epoch begins")
            epoch.begin(db.conn)
        _bind(db, device, session, proofs, now)
        if people is not None:
            note_people(db, device, people)
        receipt = events.take_in(db, entries, session.id, now, session.role, proofs, only_prove=only_prove)
    if receipt.stored:
        board().entries_came(_jobs(entries), session.id)
    last = events.last_n(db)
    if starts_over or cursor > last:
        cursor = 0  # the phone knows another or a longer log than this one: an older copy was put back
    said_of_phones = {}
    if phones_known is not None:  # apps from before do not ask
        rows, upto = phones.after(db, phones_known)
        said_of_phones = {"phones": rows, "phones_upto": upto}
    labels_out, more_labels = _labels_out(db, body)
    # A cursor that went back, with nothing behind it, has a phone send and fetch everything.
    feed = events.feed_after(db, cursor, 0 if only_prove or starts_over else MOST_EVENTS_DOWN, MOST_BYTES)
    return json_answer(
        {
            "installation": installation_id(db),
            "cursor": feed.last,
            **epoch.signed_place(db, feed.last, signer),
            "more": more_labels or feed.last < events.last_n(db),
            "heads": _heads(db, device, entries),
            **proof.handed_out(db, feed.devices | ({device} if proofs.key else set())),
            "refused": receipt.refused,
            **said_of_phones,
            **labels_out,
            "photos_wanted": photos_wanted(db, session.id),
            "photos_lost": [photo._asdict() for photo in lost.listed(db.conn, MOST_PHOTOS_LOST)],
            "build": current_shell().build,
            "format": FORMAT_VERSION,
            "now": now,
        },
        written={"events": feed.text},
    )


def _labels_out(db: Database, body: dict) -> tuple[dict, bool]:
    """Returns what an answer says of labels out of use, and whether there are more than it holds.

    `labels_out_upto` asks for those behind a number; apps from before say with `labels_out` how many they
    know, and get all or none; older ones do not ask.
    """
    if body.get("labels_out_upto") is not None:
        known = whole_field(body, "labels_out_upto")
        codes, upto, more = labels.voided_after(db, known, MOST_LABELS_OUT)
        return ({"labels_out_after": codes, "labels_out_upto": upto} if codes else {}), more
    if body.get("labels_out") is None:
        return {}, False
    every = labels.voided(db, whole_field(body, "labels_out"))
    return ({} if every is None else {"labels_out": every}), False


def _bind(db: Database, device: str, session: Session, proofs: Proofs, now: int) -> None:
    """Gives the phone's key a certificate, where its device id has none: of an older app, or a new one.

    The signed end of its own chain shows that the key is the sender's.
    """
    if not proofs.key or certificates.of(db, device):
        return
    if any(head.device == device and head.is_by(proofs.key) for head in proofs.heads):
        certificates.issue(
            db,
            installation_signer(),
            Certificate(device, session.role, session.name, proofs.key, now, issuer=""),
        )


def photos_wanted(db: Database, session: int) -> list[str]:
    """Returns the photos that events of this phone name and the server does not have, then lost ones, which
    any phone may have.
    """
    rows = db.conn.execute(
        "SELECT sha256 FROM devices JOIN photos_wanted USING (device) WHERE session = ? ORDER BY n LIMIT ?",
        [session, MOST_PHOTOS_WANTED],
    )
    own = [digest for (digest,) in rows]
    # Another choice each time: the first ones may be on no phone at all.
    rows = db.conn.execute(
        "SELECT sha256 FROM photos_lost ORDER BY random() LIMIT ?", [MOST_PHOTOS_WANTED - len(own)]
    )
    return list(dict.fromkeys([*own, *(digest for (digest,) in rows)]))


def _jobs(entries: list) -> set[str]:
    """Returns the jobs that a batch names, those of entries that were not taken too."""
    events = [entry.get("event") for entry in entries if isinstance(entry, dict)]
    jobs = [event.get("job") for event in events if isinstance(event, dict)]
    return {job for job in jobs if isinstance(job, str)}


def _checked(body: dict) -> tuple[str, str, int, list]:
    if body.get("v") != SYNC_VERSION:
        raise BadRequest("v", shorten(body.get("v")), f"sync version {SYNC_VERSION}")
    device = devices.checked_id(body)
    cursor = whole_field(body, "cursor")
    entries = body.get("events")
    if not isinstance(entries, list):
        raise BadRequest("events", shorten(entries), 'a list of {"event", "hash"}')
    if len(entries) > MOST_EVENTS_UP:
        raise TooLarge("events", shorten(entries), f"at most {MOST_EVENTS_UP} at once")
    return device, text_field(body, "app", 80), cursor, entries


def _heads(db: Database, device: str, entries: list) -> dict:
    """Returns where the server stands with the sender and every device in its batch."""
    asked = {device}
    for entry in entries:
        event = entry.get("event") if isinstance(entry, dict) else None
        other = event.get("device") if isinstance(event, dict) else None
        if isinstance(other, str) and other not in asked and devices.is_id(other):
            asked.add(other)
    return {name: events.head(db, name)._asdict() for name in sorted(asked)}
