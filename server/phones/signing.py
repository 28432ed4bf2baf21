"""Keys that sign: the installation's own, and what a phone without a server signs with its.

Ed25519 (RFC 8032). The key is made once, at first use, and lies in the data folder with the other
keys, readable by its owner only. A backup holds it like them: a yard that had to restore its data
still signs as the same yard. A phone has ECDSA over P-256 (FIPS 186-5), which every browser knows and keeps.
"""

import hashlib
import re
from functools import lru_cache

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ec import ECDSA
from cryptography.hazmat.primitives.asymmetric.ec import SECP256R1
from cryptography.hazmat.primitives.asymmetric.ec import EllipticCurvePublicKey
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey
from cryptography.hazmat.primitives.asymmetric.utils import encode_dss_signature
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.hazmat.primitives.serialization import NoEncryption
from cryptography.hazmat.primitives.serialization import PrivateFormat
from cryptography.hazmat.primitives.serialization import load_pem_private_key

from server.core.messages import message
from server.refusals import CommandRefused
from server.storage import DataFolder

_FILE = "signing.key"
# Of the points of P-256: SEC 2, 2.4.2, and FIPS 186-5.
_P256_ORDER = 0xFFFFFFFF00000000FFFFFFFFFFFFFFFFBCE6FAADA7179E84F3B9CAC2FC632551
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
        raise CommandRefused(message("server-key-damaged", file=str(folder.keys / _FILE)))
    return Signer(private)


def is_signed(text: str, signature: str, key: str) -> bool:
    """Tells whether `signature` over `text` was made with the private half of `key`; both in hex.

    In lower-case digits and nothing else, as a phone reads them (static/log/phone-key.js).
    """
    if not re.fullmatch("[0-9a-f]{128}", signature) or not re.fullmatch("[0-9a-f]{64}", key):
        return False
    try:
        Ed25519PublicKey.from_public_bytes(bytes.fromhex(key)).verify(bytes.fromhex(signature), text.encode())
    except (ValueError, InvalidSignature):
        return False
    return True


def is_signed_by_phone(text: str, signature: str, key: str) -> bool:
    """Tells whether a phone signed `text`: `key` is its public point, `signature` r and s, all in hex.

    Of the two s that would do, only the lower one is taken, so that a signature can be written in one way.
    """
    if not re.fullmatch("[0-9a-f]{128}", signature) or not re.fullmatch("04[0-9a-f]{128}", key):
        return False
    r, s = int(signature[:64], 16), int(signature[64:], 16)
    if not 0 < s <= _P256_ORDER // 2:
        return False
    try:
        _point(key).verify(encode_dss_signature(r, s), text.encode(), ECDSA(SHA256()))
    except (ValueError, InvalidSignature):
        return False
    return True


@lru_cache(maxsize=256)  # as many phones as may send in turn; each signs every batch with the same key
def _point(key: str) -> EllipticCurvePublicKey:
    return EllipticCurvePublicKey.from_encoded_point(SECP256R1(), bytes.fromhex(key))


def fingerprint(key: str) -> str:
    """Returns a public key in short, for two people to compare."""
    digest = hashlib.sha256(bytes.fromhex(key)).hexdigest()
    return " ".join(digest[4 * group : 4 * group + 4] for group in range(_GROUPS))


def _new_pem() -> bytes:
    return Ed25519PrivateKey.generate().private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())
