"""The certificate that the server shows: short-lived, for the installation's name and present addresses.

What phones ask of it (Apple, support.apple.com/103769, and the browsers' own verifiers) is put in and
then read back: a desktop browser takes certificates that a phone refuses, so a look with one proves nothing.
"""

from collections.abc import Iterable
from datetime import datetime
from datetime import timedelta
from ipaddress import IPv4Address
from ipaddress import IPv6Address

from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.x509.oid import ExtendedKeyUsageOID
from cryptography.x509.oid import NameOID

from server.serving.lan import naming
from server.serving.lan.authority import BACKDATED
from server.serving.lan.authority import Authority
from server.serving.lan.certified import Certified
from server.serving.lan.certified import key_usage

LONGEST_LIFE = timedelta(days=397)

Address = IPv4Address | IPv6Address


class Leaf(Certified):
    """A certificate of the server with its key."""


def new_leaf(authority: Authority, addresses: Iterable[Address], now: datetime) -> Leaf:
    """Returns a new certificate for the authority's host and the private ones among `addresses`."""
    key = ec.generate_private_key(ec.SECP256R1())
    names = wanted_names(authority.host, addresses)
    begins = now - BACKDATED
    issuer = authority.certificate
    certificate = (
        x509.CertificateBuilder()
        .subject_name(x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "Swaptrail server")]))
        .issuer_name(issuer.subject)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(begins)
        .not_valid_after(min(begins + LONGEST_LIFE, authority.ends))
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(key_usage(vouches=False), critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(x509.SubjectAlternativeName(names), critical=False)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), critical=False)
        .add_extension(_issued_by(issuer), critical=False)
        .sign(authority.key, SHA256())
    )
    _check(certificate, authority, names, now)
    return Leaf(certificate, key)


def wanted_names(host: str, addresses: Iterable[Address]) -> list[x509.GeneralName]:
    """Returns the names that a certificate for this host has to carry now, in a fixed order."""
    own = naming.as_ip(host)
    numbers = {address for address in addresses if naming.is_private(address)}
    if own is not None:
        numbers.add(own)
    ordered = sorted(numbers, key=lambda address: (address.version, int(address)))
    names: list[x509.GeneralName] = [] if own is not None else [x509.DNSName(host)]
    return [*names, *(x509.IPAddress(address) for address in ordered)]


def names_of(certificate: x509.Certificate) -> list[x509.GeneralName]:
    """Returns the names that a certificate carries."""
    return list(certificate.extensions.get_extension_for_class(x509.SubjectAlternativeName).value)


def _check(
    certificate: x509.Certificate, authority: Authority, names: list[x509.GeneralName], now: datetime
) -> None:
    """Asserts of a finished certificate all that phones ask for; none that fails may be served."""
    issuer, extensions = authority.certificate, certificate.extensions
    certificate.verify_directly_issued_by(issuer)
    must = {
        "P-256": isinstance(certificate.public_key(), ec.EllipticCurvePublicKey)
        and certificate.public_key().curve.name == "secp256r1",  # type: ignore[union-attr]
        "SHA-256": isinstance(certificate.signature_hash_algorithm, SHA256),
        "names": names_of(certificate) == names,
        "server authentication": ExtendedKeyUsageOID.SERVER_AUTH
        in extensions.get_extension_for_class(x509.ExtendedKeyUsage).value,
        "life": certificate.not_valid_after_utc - certificate.not_valid_before_utc <= LONGEST_LIFE,
        "valid now": certificate.not_valid_before_utc < now < certificate.not_valid_after_utc,
        "no authority": not extensions.get_extension_for_class(x509.BasicConstraints).value.ca,
        "issuer's key": extensions.get_extension_for_class(x509.AuthorityKeyIdentifier).value
        == _issued_by(issuer),
    }
    failed = [what for what, holds in must.items() if not holds]
    if failed:
        raise AssertionError(f"the new certificate fails on: {', '.join(failed)}")


def _issued_by(issuer: x509.Certificate) -> x509.AuthorityKeyIdentifier:
    own = issuer.extensions.get_extension_for_class(x509.SubjectKeyIdentifier).value
    return x509.AuthorityKeyIdentifier.from_issuer_subject_key_identifier(own)
