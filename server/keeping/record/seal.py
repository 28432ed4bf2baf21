"""The seal of a record: the digest of every part of it, signed with the installation's key.

Part by part, so that what was changed can be named: each field of `record.json` has a digest of its
own, each other member one over its bytes.
"""

import hashlib
from collections.abc import Mapping

from server.core.log import canon
from server.core.record.file import FIELD
from server.core.record.file import SEAL_APP
from server.core.record.file import SEAL_VERSION
from server.phones.signing import Signer


def digests(record: dict, members: Mapping[str, bytes]) -> dict[str, str]:
    """Returns the digest of each field of a record and of each other member."""
    by_name = {FIELD + name: canon.sha256_hex(canon.dumps(value)) for name, value in record.items()}
    by_name.update((name, hashlib.sha256(content).hexdigest()) for name, content in members.items())
    return by_name


def sealed(digests: dict[str, str], signer: Signer) -> str:
    """Returns the seal as the file that goes into the record."""
    body = {"app": SEAL_APP, "v": SEAL_VERSION, "key": signer.key, "digests": digests}
    return canon.dumps({**body, "signature": signer.sign(canon.dumps(body))})
