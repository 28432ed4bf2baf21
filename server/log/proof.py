"""What proves whose an entry is: its phone's certificate, and its signature over the end of its chain.

Each entry holds the hash of the one before, so who signs the last one signs all before it. A phone signs

    {"app":"swaptrail-head","v":1,"device":…,"seq":…,"hash":…}        canonical, with its own key

and sends {"device", "seq", "hash", "signature"} with each batch; phones keep the latest one of each other
phone beside its certificate, and pass both on with what they pass on.
"""

import json
from collections.abc import Iterable
from typing import NamedTuple

from sqlite_utils import Database

from server.core.errors import shorten
from server.core.record.signed import head_text
from server.phones import certificates
from server.phones.certificates import Certificate
from server.phones.signing import is_signed_by_phone
from server.web.errors import BadRequest

MOST = 500  # as many phones as one batch may speak of


class SignedHead(NamedTuple):
    """The end of a chain, and its phone's signature over it."""

    device: str
    seq: int
    hash: str
    signature: str

    def is_by(self, key: str) -> bool:
        """Tells whether the phone with this public key signed it."""
        return is_signed_by_phone(head_text(self.device, self.seq, self.hash), self.signature, key)


class Proofs(NamedTuple):
    """What comes with a batch to prove its entries; nothing of it is trusted before it was looked at.

    `issuer` is the public key of this installation, `key` that of the phone which sends, "" without one.
    """

    certificates: list[Certificate] = []  # noqa: RUF012  a default that nobody adds to
    heads: list[SignedHead] = []  # noqa: RUF012
    issuer: str = ""
    key: str = ""


class Link(NamedTuple):
    """An entry as a member of its chain."""

    seq: int
    hash: str
    prev: str


class Standing(NamedTuple):
    """How a device id stands when entries of it come in.

    `certificates` are those that hold, `has_ended` says that its phone was put out or has another task,
    `heads` are those that it signed, `proven` the hashes of all entries that these cover.
    """

    certificates: list[Certificate]
    has_ended: bool
    heads: list[SignedHead]
    proven: set[str]

    @property
    def role(self) -> str:
        """Returns the role that is proven, "" where none is."""
        return self.certificates[0].role if self.certificates else ""


def read(body: dict, issuer: str) -> Proofs:
    """Returns what a request, or the first line of a phone's file, brings as proof; refuses bad form."""
    brought = _list(body, "certificates")
    held = [certificate for each in brought if (certificate := certificates.read(each))]
    heads = [head for each in _list(body, "signed_heads") if (head := read_head(each))]
    key = body.get("key", "")
    if key != "" and not certificates.is_key(key):
        raise BadRequest("key", shorten(key), "a point of P-256 in hex")
    return Proofs(held, heads, issuer, key)


def read_head(value: object) -> SignedHead | None:
    """Returns a signed head that somebody brings, its signature not looked at; None where it is none."""
    if not isinstance(value, dict) or set(value) != set(SignedHead._fields):
        return None
    device, seq, digest, signature = (value[name] for name in SignedHead._fields)
    texts = (device, digest, signature)
    if not all(isinstance(each, str) and each.isascii() for each in texts):
        return None
    if isinstance(seq, bool) or not isinstance(seq, int) or not 0 <= seq < 2**53:
        return None
    return SignedHead(device, seq, digest, signature)


def standing(db: Database, device: str, proofs: Proofs, chain: Iterable[Link]) -> Standing:
    """Returns how a device id stands, given the entries of it in this batch."""
    held = certificates.of(db, device)
    if not held and certificates.has_ended(db, device):
        return Standing([], True, [], set())
    known = {(each.role, each.key) for each in held}
    for each in proofs.certificates:
        # One role a device: what says another than what is known here is none of ours.
        fits = all(each.role == other.role for other in held)
        if (
            each.device == device
            and (each.role, each.key) not in known
            and fits
            and each.is_from(proofs.issuer)
        ):
            certificates.keep(db, each)
            held = certificates.of(db, device)
    if not held and certificates.has_ended(db, device):  # by what came of a later task of its phone
        return Standing([], True, [], set())
    heads = [
        head
        for head in proofs.heads
        if head.device == device and any(head.is_by(key) for key in {each.key for each in held})
    ]
    return Standing(held, False, heads, covered(heads, chain) if heads else set())


def keep_heads(db: Database, heads: Iterable[SignedHead]) -> None:
    """Keeps signed heads of entries that are in the log."""
    db.conn.executemany(
        "INSERT OR IGNORE INTO heads (device, seq, hash, signature) "
        "SELECT ?1, ?2, ?3, ?4 "
        "WHERE EXISTS (SELECT 1 FROM events WHERE device = ?1 AND seq = ?2 AND hash = ?3)",
        heads,
    )


def handed_out(db: Database, phones: Iterable[str]) -> dict[str, list[dict]]:
    """Returns the certificates and the latest signed heads of phones, as any phone may pass them on."""
    devices = sorted(phones)
    # All of them at once: each sync of a phone asks this of every phone that it hears of.
    heads = db.conn.execute(
        "SELECT device, seq, hash, signature FROM json_each(?) AS asked JOIN heads ON device = asked.value "
        "AND seq = (SELECT max(seq) FROM heads WHERE device = asked.value) ORDER BY device",
        [json.dumps(devices)],
    )
    return {
        "certificates": newest_certificates(db, devices),
        "signed_heads": [SignedHead(*row)._asdict() for row in heads],
    }


def newest_certificates(db: Database, devices: Iterable[str], *, ended: bool = False) -> list[dict]:
    """Returns the certificate of each of these phones that has one, the newest, as it is handed out."""
    return [each.written() for each in certificates.newest(db, devices, ended=ended)]


def covered(heads: list[SignedHead], chain: Iterable[Link]) -> set[str]:
    """Returns the hashes of the entries that signed heads cover: each head's own, and so on back."""
    by_hash = {link.hash: link for link in chain}
    covered: set[str] = set()
    for head in heads:
        link = by_hash.get(head.hash)
        if link and link.seq != head.seq:
            continue
        while link and link.hash not in covered:
            covered.add(link.hash)
            link = by_hash.get(link.prev)
    return covered


def _list(body: dict, name: str) -> list:
    value = body.get(name, [])
    if not isinstance(value, list) or len(value) > MOST:
        raise BadRequest(name, shorten(value), f"a list of at most {MOST}")
    return value
