"""The seal of a record: the digest of every part of it, signed with the installation's key.

Part by part, so that what was changed can be named: each field of `record.json` has a digest of its
own, each other member one over its bytes.
"""

import hashlib
import json
from collections.abc import Mapping
from typing import NamedTuple

from server.core import canon
from server.core.errors import BadInput
from server.signing import Signer
from server.signing import is_signed

APP, VERSION = "swaptrail seal", 1
FIELD = "record.json/"  # before the name of a field


class Seal(NamedTuple):
    """Whose seal it is, and the digest of each part by its name."""

    key: str
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
    body = {"app": APP, "v": VERSION, "key": signer.key, "digests": digests}
    return canon.dumps({**body, "signature": signer.sign(canon.dumps(body))})


def opened(text: str) -> Seal:
    """Returns a seal whose signature is right; raises Unsealed."""
    try:
        seal = json.loads(text)
        body = {name: seal[name] for name in ("app", "v", "key", "digests")}
        if canon.dumps({**body, "signature": seal["signature"]}) != text or body["app"] != APP:
            raise Unsealed("it is not written as a seal is")
        if not is_signed(canon.dumps(body), seal["signature"], body["key"]):
            raise Unsealed("its signature does not fit")
        return Seal(body["key"], {str(name): str(digest) for name, digest in body["digests"].items()})
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError, BadInput):
        raise Unsealed("it is not written as a seal is") from None
