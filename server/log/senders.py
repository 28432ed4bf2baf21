"""Whose the entries of a batch are: its sender's own, or another phone's, with proof or without.

own         not marked as passed on: claims the sender's session; signed where a key speaks for its device id
passed on   counts in the role that its phone's certificate and signature prove; else it is kept apart
"""

from typing import NamedTuple

from sqlite_utils import Database

from server.log import intake
from server.log import proof
from server.log import unproven
from server.log.proof import Link
from server.log.proof import Proofs
from server.log.proof import Standing
from server.phones.devices import claim
from server.phones.devices import note


class Incoming(NamedTuple):
    """One entry of a batch: its event, read and hashed, or what is wrong with it."""

    event: dict
    claimed: object
    is_relayed: bool
    body: str = ""
    digest: str = ""
    problem: object = None


class Senders:
    """Whose entries a batch brings, device by device."""

    def __init__(
        self, db: Database, batch: list[Incoming], session: int | None, now: int, proofs: Proofs | None
    ):
        self._db = db
        self._session = session
        self._now = now
        self._standings: dict[str, Standing] = {}
        self._claims: dict[str, bool] = {}
        self._asks_for_proof = proofs is not None and (
            session is not None or any(each.is_relayed for each in batch)
        )
        chains: dict[str, list[Link]] = {}
        for each in batch:
            if each.problem is None:
                event = each.event
                chains.setdefault(event["device"], []).append(Link(event["seq"], each.digest, event["prev"]))
        if proofs is not None and self._asks_for_proof:
            for device, chain in chains.items():
                self._standings[device] = proof.standing(db, device, proofs, chain)

    def judge(self, each: Incoming, handling: intake.Handling, role: str) -> tuple[intake.Handling, str]:
        """Returns what to do with an entry for whose it is, and the role that it is judged by."""
        if handling.action == "repeat" or not self._asks_for_proof:
            return handling, role
        device = each.event["device"]
        standing = self._standings[device]
        is_proven = each.digest in standing.proven
        if self._is_own(each):
            if not self._claims[device]:
                return intake.NOT_YOURS, role
            if handling.action == "refuse" or is_proven or not standing.certificates:
                return handling, role
            return (intake.BAD_SIGNATURE if standing.heads else intake.UNSIGNED), role
        if handling.code == "changed":
            return handling, role
        if is_proven or unproven.is_proven(self._db, each.event, each.digest, standing.heads):
            return handling, standing.role
        if self._session is None and not standing.certificates and not standing.has_ended:
            # Whoever runs the server takes it in, and answers for a phone that has no key to prove it by.
            return handling, role
        return (intake.UNPROVEN if handling.code != "forked" else handling), role

    def _is_own(self, each: Incoming) -> bool:
        """Tells whether the sender says, or is known, to be the phone of an entry; then it claims its id."""
        device = each.event["device"]
        if not each.is_relayed and device not in self._claims:
            self._claims[device] = claim(self._db, device, self._session, self._now)
        return not each.is_relayed

    def signed_upto(self, device: str) -> int:
        """Returns up to which of its entries a phone has signed its chain, as this batch shows; else 0."""
        standing = self._standings.get(device)
        return max((head.seq for head in standing.heads), default=0) if standing else 0

    def note(self, device: str) -> None:
        """Makes the device of an entry that is stored known."""
        if device not in self._claims:
            note(self._db, device, self._now)

    def keep_heads(self) -> None:
        """Keeps what was signed of the chains that are in the log by now."""
        for standing in self._standings.values():
            proof.keep_heads(self._db, standing.heads)


def incoming(entry: object) -> Incoming:
    """Reads an entry; an empty event where there is none."""
    if not isinstance(entry, dict):
        entry = {}
    event = entry.get("event")
    event = event if isinstance(event, dict) else {}
    is_relayed = entry.get("relayed") is True
    try:
        body = intake.read(event)
    except intake.Malformed as error:
        return Incoming(event, None, is_relayed, problem=error.message)
    return Incoming(event, entry.get("hash"), is_relayed, body, intake.hash_of(body))
