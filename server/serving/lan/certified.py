"""A certificate with its key: what the authority and the certificate of the server have in common."""

from dataclasses import dataclass
from datetime import datetime

from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.hazmat.primitives.serialization import NoEncryption
from cryptography.hazmat.primitives.serialization import PrivateFormat


@dataclass(frozen=True)
class Certified:
    """A certificate and the key that belongs to it."""

    certificate: x509.Certificate
    key: ec.EllipticCurvePrivateKey

    @property
    def begins(self) -> datetime:
        """From when it is valid."""
        return self.certificate.not_valid_before_utc

    @property
    def ends(self) -> datetime:
        """Until when it is valid."""
        return self.certificate.not_valid_after_utc

    def pem(self) -> bytes:
        """Returns key and certificate in one text: in one file neither can be there without the other."""
        key = self.key.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())
        return key + self.certificate.public_bytes(Encoding.PEM)


def key_usage(*, vouches: bool) -> x509.KeyUsage:
    """Returns what a key may be used for: to vouch for certificates, or to speak TLS."""
    return x509.KeyUsage(
        digital_signature=not vouches,
        content_commitment=False,
        key_encipherment=False,
        data_encipherment=False,
        key_agreement=False,
        key_cert_sign=vouches,
        crl_sign=vouches,
        encipher_only=False,
        decipher_only=False,
    )
