"""Goes through the certificates of phones and what they signed, and names the first that does not fit."""

import sqlite3

from server.core.messages import message
from server.log.fault import Fault
from server.log.proof import SignedHead
from server.phones.certificates import Certificate

_CERTIFICATES = (
    "SELECT device, role, name, key, since, issuer, signature FROM certificates ORDER BY device, since"
)
_HEADS = """SELECT heads.device, heads.seq, heads.hash, signature, events.hash FROM heads
    LEFT JOIN events ON events.device = heads.device AND events.seq = heads.seq
    ORDER BY heads.device, heads.seq"""


def first_fault(connection: sqlite3.Connection) -> Fault | None:
    """Returns the first fault; a log from before phones had keys has none to look at."""
    tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
    if not {"certificates", "heads"} <= tables:
        return None
    keys: dict[str, set[str]] = {}
    people: set[tuple[str, str, str]] = set()
    for row in connection.execute(_CERTIFICATES):
        certificate = Certificate(*row)
        if not certificate.is_from(certificate.issuer):
            return Fault(certificate.device, 1, message("keeping-bad-certificate"))
        keys.setdefault(certificate.device, set()).add(certificate.key)
        people.add((certificate.device, certificate.role, certificate.name))
    for row in connection.execute("SELECT device, role, name FROM phones") if "phones" in tables else ():
        if row not in people:
            return Fault(row[0], 1, message("keeping-bad-certificate"))
    for *fields, kept in connection.execute(_HEADS):
        head = SignedHead(*fields)
        if kept != head.hash:
            return Fault(head.device, head.seq, message("keeping-signed-other"))
        if not any(head.is_by(key) for key in keys.get(head.device, ())):
            return Fault(head.device, head.seq, message("keeping-bad-signature"))
    return None
