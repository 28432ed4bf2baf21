"""The certificate authority of an installation: made once, good for its own name and private addresses alone.

A phone that trusts it trusts whoever holds its key, so it is limited as far as certificates allow: it
signs for one host name and the private address ranges (critical name constraints, RFC 5280, 4.2.1.10),
no further authority below it (path length 0), and its key never leaves the data folder. Another name
gets another authority.
"""

from dataclasses import dataclass
from datetime import datetime
from datetime import timedelta
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.hazmat.primitives.serialization import load_pem_private_key
from cryptography.x509.oid import NameOID

from server.core.messages import message
from server.refusals import CommandRefused
from server.serving.lan import naming
from server.serving.lan.certified import Certified
from server.serving.lan.certified import key_usage
from server.serving.lan.instants import readable
from server.storage import DataFolder

YEARS = 10
LIFE = timedelta(days=365 * YEARS)
# Phones whose clock is a little behind must not find a certificate that is not valid yet.
BACKDATED = timedelta(days=1)
# Nothing was made here before; a clock that says so was never set (many start at 1970).
EARLIEST = datetime.fromisoformat("2025-01-01T00:00:00+00:00")
_LATEST = EARLIEST + timedelta(days=365 * 50)
_LONGEST_COMMON_NAME = 64  # ub-common-name, RFC 5280, appendix A
# With only addresses permitted every DNS name would pass, so a name that nobody can own is permitted
# beside them (RFC 6761, 6.4).
_NO_NAME = "invalid"


@dataclass(frozen=True)
class Authority(Certified):
    """Certificate and key of the authority for one host."""

    host: str

    @property
    def fingerprint(self) -> str:
        """SHA-256 of the certificate, as phones and browsers show it: pairs of capitals."""
        return self.certificate.fingerprint(SHA256()).hex(":").upper()

    @property
    def common_name(self) -> str:
        """Under which name phones list it."""
        return common_name(self.host)

    def der(self) -> bytes:
        """Returns the certificate alone, as phones take it in."""
        return self.certificate.public_bytes(Encoding.DER)


def kept_authority(folder: DataFolder, host: str, now: datetime) -> Authority:
    """Returns the authority for a host, made now if there is none; refuses a clock that cannot be right."""
    check_clock(now)
    authority = _read(_path(folder, host), folder.kept_key(_path(folder, host).name, lambda: _new(host, now)))
    if now < authority.begins:
        raise CommandRefused(
            message(
                "serving-clock-before",
                clock=readable(now),
                folder=str(folder.root),
                begins=readable(authority.begins),
            )
        )
    if now >= authority.ends:
        raise CommandRefused(
            message(
                "serving-clock-after",
                clock=readable(now),
                folder=str(folder.root),
                ends=readable(authority.ends),
                file=str(_path(folder, host)),
            )
        )
    return authority


def existing_authority(folder: DataFolder, host: str) -> Authority | None:
    """Returns the authority for a host, or None where none was made; for looking at it alone."""
    path = _path(folder, host)
    return _read(path, path.read_bytes()) if path.is_file() else None


def common_name(host: str) -> str:
    """Returns the name of the authority for a host; phones list it by this."""
    return f"Swaptrail {host}"[:_LONGEST_COMMON_NAME]


def check_clock(now: datetime) -> None:
    """Refuses a clock that was never set: phones would trust nothing that is made by it."""
    if not EARLIEST <= now < _LATEST:
        raise CommandRefused(message("serving-clock-wrong", clock=readable(now)))


def new_authority(host: str, now: datetime) -> Authority:
    """Returns a new authority for a host, valid from a day before `now`."""
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, common_name(host))])
    public = x509.SubjectKeyIdentifier.from_public_key(key.public_key())
    begins = now - BACKDATED
    certificate = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(begins)
        .not_valid_after(begins + LIFE)
        .add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
        .add_extension(key_usage(vouches=True), critical=True)
        .add_extension(_constraints(host), critical=True)
        .add_extension(public, critical=False)
        .sign(key, SHA256())
    )
    return Authority(host=host, certificate=certificate, key=key)


def _constraints(host: str) -> x509.NameConstraints:
    # No leading dot: Android's own verifier takes one for part of the name.
    named = _NO_NAME if naming.as_ip(host) is not None else host
    networks = [x509.IPAddress(network) for network in naming.PRIVATE_NETWORKS]
    return x509.NameConstraints(permitted_subtrees=[x509.DNSName(named), *networks], excluded_subtrees=None)


def _path(folder: DataFolder, host: str) -> Path:
    return folder.keys / f"authority-{host.replace(':', '_')}.pem"


def _new(host: str, now: datetime) -> bytes:
    return new_authority(host, now).pem()


def _read(path: Path, pem: bytes) -> Authority:
    host = path.stem.removeprefix("authority-").replace("_", ":")
    try:
        key = load_pem_private_key(pem, password=None)
        certificate = x509.load_pem_x509_certificate(pem)
    except ValueError:
        raise _damaged(path) from None
    if not isinstance(key, ec.EllipticCurvePrivateKey) or key.public_key() != certificate.public_key():
        raise _damaged(path)
    return Authority(host=host, certificate=certificate, key=key)


def _damaged(path: Path) -> CommandRefused:
    return CommandRefused(message("serving-damaged", file=str(path)))
