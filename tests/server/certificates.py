"""Certificates for tests: made here, signed by themselves, for any names and times."""

from datetime import UTC
from datetime import datetime
from datetime import timedelta
from pathlib import Path
from typing import NamedTuple

from cryptography import x509
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import BestAvailableEncryption
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.hazmat.primitives.serialization import NoEncryption
from cryptography.hazmat.primitives.serialization import PrivateFormat
from cryptography.x509.oid import NameOID


class Files(NamedTuple):
    """Where a certificate and its key lie."""

    cert: Path
    key: Path


def make_pair(folder, names=("localhost",), begins=-1, ends=30, password=None, stem="own") -> Files:
    """Writes a certificate for `names`, good from `begins` to `ends` days from now, and its key."""
    key = ec.generate_private_key(ec.SECP256R1())
    subject = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, f"test {stem}")])
    now = datetime.now(UTC)
    made = (
        x509.CertificateBuilder()
        .subject_name(subject)
        .issuer_name(subject)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now + timedelta(days=begins))
        .not_valid_after(now + timedelta(days=ends))
        .add_extension(x509.BasicConstraints(ca=True, path_length=None), critical=True)
    )
    if names:
        listed = x509.SubjectAlternativeName([x509.DNSName(name) for name in names])
        made = made.add_extension(listed, critical=False)
    lock = BestAvailableEncryption(password) if password else NoEncryption()
    files = Files(folder / f"{stem}.pem", folder / f"{stem}.key")
    files.cert.write_bytes(made.sign(key, hashes.SHA256()).public_bytes(Encoding.PEM))
    files.key.write_bytes(key.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, lock))
    return files
