"""The installation's own key: what it signs can be told from what anybody else wrote.

Ed25519 (RFC 8032). The key is made once, at first use, and lies in the data folder with the other
keys, readable by its owner only. A backup holds it like them: a yard that had to restore its data
still signs as the same yard.
"""

import hashlib

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.hazmat.primitives.serialization import NoEncryption
from cryptography.hazmat.primitives.serialization import PrivateFormat
from cryptography.hazmat.primitives.serialization import load_pem_private_key

from server.refusals import CommandRefused
from server.storage import DataFolder

_FILE = "signing.key"
_GROUPS = 5  # of four hex digits: 80 bits, few enough to read out over the phone


class Signer:
    """Signs as one installation; `key` is its public key in hex."""

    def __init__(self, private: Ed25519PrivateKey):
        """Keeps the key in memory."""
        self._private = private
        self.key = private.public_key().public_bytes_raw().hex()

    def sign(self, text: str) -> str:
        """Returns the signature of a text's UTF-8 bytes, in hex."""
        return self._private.sign(text.encode()).hex()


def signer(folder: DataFolder) -> Signer:
    """Returns the signer of an installation, with a key made now if it has none."""
    pem = folder.kept_key(_FILE, _new_pem)
    try:
        private = load_pem_private_key(pem, password=None)
    except ValueError:
        private = None
    if not isinstance(private, Ed25519PrivateKey):
        raise CommandRefused(f"{folder.keys / _FILE} is damaged. Take the one from a backup.")
    return Signer(private)


def is_signed(text: str, signature: str, key: str) -> bool:
    """Tells whether `signature` over `text` was made with the private half of `key`; both in hex."""
    try:
        Ed25519PublicKey.from_public_bytes(bytes.fromhex(key)).verify(bytes.fromhex(signature), text.encode())
    except (ValueError, InvalidSignature):
        return False
    return True


def fingerprint(key: str) -> str:
    """Returns a public key in short, for two people to compare."""
    digest = hashlib.sha256(bytes.fromhex(key)).hexdigest()
    return " ".join(digest[4 * group : 4 * group + 4] for group in range(_GROUPS))


def _new_pem() -> bytes:
    return Ed25519PrivateKey.generate().private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())
