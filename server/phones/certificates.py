"""Whose key a device id is bound to, and the certificate by which any phone can prove it to others.

A certificate says in whose name and in which role a phone records: device, role, name, the phone's public
key, since when; signed with the key of the installation. A device id has one role for good. Its certificate
ends when the phone is put out or paired for another task, and with it the id: nobody comes in under it again.

    {"app":"swaptrail-certificate","v":1,"device":…,"role":…,"name":…,"key":"04…","since":ms,"issuer":…,"signature":…}

`signature` is over the canonical text of all the others.
"""

import json
import re
from collections.abc import Iterable
from typing import NamedTuple

from sqlite_utils import Database

from server.core.errors import BadInput
from server.core.log import canon
from server.core.record.signed import CERTIFICATE_APP
from server.core.record.signed import VERSION
from server.phones.people import note_owner
from server.phones.signing import Signer
from server.phones.signing import is_signed
from server.phones.signing import is_signed_by_phone

PAIRING_APP = "swaptrail-pairing"
_KEY = re.compile("04[0-9a-f]{128}")


class Certificate(NamedTuple):
    """A device id, whose it is, and the key that speaks for it; `signature` is the installation's."""

    device: str
    role: str
    name: str
    key: str
    since: int
    issuer: str
    signature: str = ""

    def written(self) -> dict:
        """Returns it as it is handed out."""
        return {**self._body(), "signature": self.signature}

    def text(self) -> str:
        """Returns what is signed."""
        return canon.dumps(self._body())

    def is_from(self, issuer: str) -> bool:
        """Tells whether the installation whose public key this is has issued it."""
        return self.issuer == issuer and is_signed(self.text(), self.signature, issuer)

    def _body(self) -> dict:
        fields = self._asdict()
        del fields["signature"]
        return {"app": CERTIFICATE_APP, "v": VERSION, **fields}


def read(value: object) -> Certificate | None:
    """Returns a certificate that somebody brings, its signature not looked at; None where it is none."""
    if not isinstance(value, dict) or value.get("app") != CERTIFICATE_APP or value.get("v") != VERSION:
        return None
    fields = {name: value.get(name) for name in Certificate._fields}
    since = fields.pop("since")
    texts = all(isinstance(each, str) for each in fields.values())
    if not isinstance(since, int) or not texts or len(value) != len(Certificate._fields) + 2:
        return None
    certificate = Certificate(since=since, **{name: str(each) for name, each in fields.items()})
    try:
        certificate.text()
    except BadInput:  # half a character, or a number that no phone can hold
        return None
    return certificate


def is_key(key: object) -> bool:
    """Tells whether this has the form of a phone's public key."""
    return isinstance(key, str) and _KEY.fullmatch(key) is not None


def issue(db: Database, signer: Signer, certificate: Certificate) -> Certificate:
    """Signs a certificate and keeps it; called inside a transaction."""
    (last,) = db.conn.execute(
        "SELECT coalesce(max(since), 0) FROM certificates WHERE key = ?", [certificate.key]
    ).fetchone()
    # Of two the newer one tells the task, also where the clock was set back between them.
    signed = certificate._replace(issuer=signer.key, since=max(certificate.since, last + 1))
    signed = signed._replace(signature=signer.sign(signed.text()))
    keep(db, signed)
    return signed


def keep(db: Database, certificate: Certificate) -> None:
    """Keeps a certificate, also one that came back from a phone after the data was restored."""
    kept = db.conn.execute(
        "INSERT OR IGNORE INTO certificates (device, role, name, key, since, issuer, signature) "
        "VALUES (?, ?, ?, ?, ?, ?, ?)",
        list(certificate),
    )
    if kept.rowcount:
        note_owner(db, certificate.device, certificate.role, certificate.name)
        _end_earlier_task(db, certificate.key)


def _end_earlier_task(db: Database, key: str) -> None:
    """Ends what speaks for a phone in another task than that of its newest certificate.

    It still has the key, so only a person can tell what it recorded before from what it made up since.
    """
    role, since = db.conn.execute(
        "SELECT role, since FROM certificates WHERE key = ? ORDER BY since DESC LIMIT 1", [key]
    ).fetchone()
    ended = db.conn.execute(
        "UPDATE certificates SET ended_at = ? WHERE key = ? AND role <> ? AND ended_at IS NULL "
        "RETURNING device",
        [since, key, role],
    ).fetchall()
    for (device,) in ended:
        of_device = "IN (SELECT session FROM devices WHERE device = ?)"
        db.conn.execute(
            f"UPDATE sessions SET revoked_at = ? WHERE revoked_at IS NULL AND id {of_device}", [since, device]
        )
        db.conn.execute(f"DELETE FROM pairings WHERE made_by {of_device}", [device])


def of(db: Database, device: str) -> list[Certificate]:
    """Returns the certificates of a device id that have not ended, the newest first."""
    rows = db.conn.execute(
        "SELECT device, role, name, key, since, issuer, signature FROM certificates "
        "WHERE device = ? AND ended_at IS NULL ORDER BY since DESC",
        [device],
    )
    return [Certificate(*row) for row in rows]


def newest(db: Database, devices: Iterable[str], *, ended: bool = False) -> list[Certificate]:
    """Returns the newest certificate of each of these device ids that has one, `ended` ones only if asked."""
    rows = db.conn.execute(
        "SELECT device, role, name, certificates.key, since, issuer, signature FROM json_each(?1) AS asked "
        "JOIN certificates ON device = asked.value AND since = "
        "(SELECT max(since) FROM certificates WHERE device = asked.value AND (?2 OR ended_at IS NULL)) "
        "WHERE ?2 OR ended_at IS NULL ORDER BY device",
        [json.dumps(sorted(devices)), ended],
    )
    return [Certificate(*row) for row in rows]


def has_ended(db: Database, device: str) -> bool:
    """Tells whether the phone of a device id was put out, which ends the id."""
    row = db.conn.execute(
        "SELECT 1 FROM certificates WHERE device = ? AND ended_at IS NOT NULL LIMIT 1", [device]
    ).fetchone()
    return row is not None


def are_known(db: Database, device: str) -> bool:
    """Tells whether a key speaks for a device id, or did until its phone was put out."""
    row = db.conn.execute("SELECT 1 FROM certificates WHERE device = ? LIMIT 1", [device]).fetchone()
    return row is not None


def end(db: Database, session: int, now: int) -> None:
    """Ends the certificates of all device ids of a session; called inside a transaction."""
    db.conn.execute(
        "UPDATE certificates SET ended_at = ? WHERE ended_at IS NULL "
        "AND device IN (SELECT device FROM devices WHERE session = ?)",
        [now, session],
    )


def signs_pairing(device: str, token: str, signature: str, key: str) -> bool:
    """Tells whether a phone shows by its key that it is the one to be paired under this device id."""
    text = canon.dumps({"app": PAIRING_APP, "v": 1, "device": device, "token": token})
    return is_signed_by_phone(text, signature, key)
