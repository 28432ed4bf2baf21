"""The seal of a record: the digest of every part of it, signed by an installation or by a phone.

Part by part, so that what was changed can be named: each field of `record.json` has a digest of its
own, each other member one over its bytes.
"""

import hashlib
import json
from collections.abc import Mapping
from typing import NamedTuple

from server.core import canon
from server.core.errors import BadInput
from server.core.record_file import FIELD
from server.core.record_file import PHONE_SEAL_APP
from server.core.record_file import SEAL_APP
from server.core.record_file import SEAL_VERSION
from server.signing import Signer
from server.signing import is_signed
from server.signing import is_signed_by_phone

INSTALLATION, PHONE = "installation", "phone"  # who seals

_SEALED_BY = {SEAL_APP: (INSTALLATION, is_signed), PHONE_SEAL_APP: (PHONE, is_signed_by_phone)}


class Seal(NamedTuple):
    """Whose seal it is, what kind of maker that is, and the digest of each part by its name."""

    key: str
    by: str
    digests: dict[str, str]


class Unsealed(Exception):
    """The seal itself is not as it was made; the text says what is wrong."""


def digests(record: dict, members: Mapping[str, bytes]) -> dict[str, str]:
    """Returns the digest of each field of a record and of each other member."""
    found = {FIELD + name: canon.sha256_hex(canon.dumps(value)) for name, value in record.items()}
    found.update((name, hashlib.sha256(content).hexdigest()) for name, content in members.items())
    return found


def sealed(digests: dict[str, str], signer: Signer) -> str:
    """Returns the seal as the file that goes into the record."""
    body = {"app": SEAL_APP, "v": SEAL_VERSION, "key": signer.key, "digests": digests}
    return canon.dumps({**body, "signature": signer.sign(canon.dumps(body))})


def opened(text: str) -> Seal:
    """Returns a seal whose signature is right; raises Unsealed."""
    try:
        seal = json.loads(text)
        body = {name: seal[name] for name in ("app", "v", "key", "digests")}
        if canon.dumps({**body, "signature": seal["signature"]}) != text or body["app"] not in _SEALED_BY:
            raise Unsealed("it is not written as a seal is")
        by, fits = _SEALED_BY[body["app"]]
        if not fits(canon.dumps(body), seal["signature"], body["key"]):
            raise Unsealed("its signature does not fit")
        return Seal(body["key"], by, {str(name): str(digest) for name, digest in body["digests"].items()})
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError, BadInput):
        raise Unsealed("it is not written as a seal is") from None
