"""The authority and the server's certificates: every field, and what other verifiers say of them."""

import ipaddress
import ssl
import stat
import subprocess
from datetime import UTC
from datetime import datetime
from datetime import timedelta

import pytest
from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.x509.oid import ExtendedKeyUsageOID
from cryptography.x509.oid import ExtensionOID
from cryptography.x509.oid import NameOID
from cryptography.x509.verification import PolicyBuilder
from cryptography.x509.verification import Store
from cryptography.x509.verification import VerificationError

from server.refusals import CommandRefused
from server.serving.lan.authority import common_name
from server.serving.lan.authority import existing_authority
from server.serving.lan.authority import kept_authority
from server.serving.lan.authority import new_authority
from server.serving.lan.leaf import new_leaf
from server.storage import DataFolder
from tests.server.serving.lan.forging import forged

HOST = "swaptrail-k7f3.local"
NOW = datetime.now(UTC).replace(microsecond=0)
DAY = timedelta(days=1)
YARD = ipaddress.ip_address("192.168.1.20")
YARD_6 = ipaddress.ip_address("fd12:3456:789a::20")
PUBLIC = ipaddress.ip_address("8.8.8.8")
# RFC 1918 and RFC 4193
PRIVATE = ["10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "fc00::/7"]


@pytest.fixture(scope="module")
def authority():
    return new_authority(HOST, NOW)


@pytest.fixture
def folder(tmp_path):
    folder = DataFolder(tmp_path / "data")
    folder.prepare()
    return folder


def extension(certificate, oid):
    found = certificate.extensions.get_extension_for_oid(oid)
    return found.critical, found.value


def test_every_field_of_the_authority(authority):
    root = authority.certificate
    assert root.version is x509.Version.v3
    assert root.subject == root.issuer
    assert root.subject.get_attributes_for_oid(NameOID.COMMON_NAME)[0].value == f"Swaptrail {HOST}"
    assert isinstance(root.public_key(), ec.EllipticCurvePublicKey)
    assert root.public_key().curve.name == "secp256r1"
    assert isinstance(root.signature_hash_algorithm, SHA256)
    assert root.not_valid_before_utc == NOW - DAY
    assert root.not_valid_after_utc == NOW - DAY + timedelta(days=3650)
    assert {found.oid for found in root.extensions} == {
        ExtensionOID.BASIC_CONSTRAINTS,
        ExtensionOID.KEY_USAGE,
        ExtensionOID.NAME_CONSTRAINTS,
        ExtensionOID.SUBJECT_KEY_IDENTIFIER,
    }
    assert extension(root, ExtensionOID.BASIC_CONSTRAINTS) == (True, x509.BasicConstraints(True, 0))
    critical, usage = extension(root, ExtensionOID.KEY_USAGE)
    assert critical
    assert (usage.key_cert_sign, usage.crl_sign) == (True, True)
    assert not any((usage.digital_signature, usage.key_agreement, usage.key_encipherment))
    critical, limits = extension(root, ExtensionOID.NAME_CONSTRAINTS)
    assert critical
    assert limits.excluded_subtrees is None
    assert limits.permitted_subtrees == [
        x509.DNSName(HOST),
        *(x509.IPAddress(ipaddress.ip_network(network)) for network in PRIVATE),
    ]
    root.verify_directly_issued_by(root)


def test_every_field_of_a_leaf(authority):
    leaf = new_leaf(authority, [YARD, YARD_6, PUBLIC], NOW).certificate
    root = authority.certificate
    assert leaf.version is x509.Version.v3
    assert leaf.issuer == root.subject
    assert leaf.serial_number != root.serial_number
    assert leaf.public_key().curve.name == "secp256r1"
    assert isinstance(leaf.signature_hash_algorithm, SHA256)
    assert leaf.not_valid_before_utc == NOW - DAY
    assert leaf.not_valid_after_utc - leaf.not_valid_before_utc == timedelta(days=397)
    assert {found.oid for found in leaf.extensions} == {
        ExtensionOID.BASIC_CONSTRAINTS,
        ExtensionOID.KEY_USAGE,
        ExtensionOID.EXTENDED_KEY_USAGE,
        ExtensionOID.SUBJECT_ALTERNATIVE_NAME,
        ExtensionOID.SUBJECT_KEY_IDENTIFIER,
        ExtensionOID.AUTHORITY_KEY_IDENTIFIER,
    }
    assert extension(leaf, ExtensionOID.BASIC_CONSTRAINTS) == (True, x509.BasicConstraints(False, None))
    critical, usage = extension(leaf, ExtensionOID.KEY_USAGE)
    assert critical
    assert usage.digital_signature
    assert not usage.key_cert_sign
    _, purposes = extension(leaf, ExtensionOID.EXTENDED_KEY_USAGE)
    assert list(purposes) == [ExtendedKeyUsageOID.SERVER_AUTH]
    _, names = extension(leaf, ExtensionOID.SUBJECT_ALTERNATIVE_NAME)
    assert list(names) == [x509.DNSName(HOST), x509.IPAddress(YARD), x509.IPAddress(YARD_6)]
    _, own = extension(root, ExtensionOID.SUBJECT_KEY_IDENTIFIER)
    _, issued_by = extension(leaf, ExtensionOID.AUTHORITY_KEY_IDENTIFIER)
    assert issued_by.key_identifier == own.digest


def dns(name):
    return x509.DNSName(name)


def ip(text):
    return x509.IPAddress(ipaddress.ip_address(text))


FILES = ["-CAfile", "root.pem", "leaf.pem"]
NAMES = [
    pytest.param(HOST, dns(HOST), True, id="its own name"),
    pytest.param(HOST, ip("192.168.7.7"), True, id="a private address"),
    pytest.param(HOST, ip("fd00::1"), True, id="a private IPv6 address"),
    pytest.param(HOST, dns("swaptrail-aaaa.local"), False, id="another name of the kind"),
    pytest.param(HOST, dns("example.org"), False, id="a public name"),
    pytest.param(HOST, dns("localhost"), False, id="the machine itself"),
    pytest.param(HOST, ip("8.8.8.8"), False, id="a public address"),
    pytest.param(HOST, ip("2606:4700::1111"), False, id="a public IPv6 address"),
    pytest.param("yard.example.org", dns("yard.example.org"), True, id="a DNS name of one's own"),
    pytest.param("yard.example.org", dns("example.org"), False, id="the domain above it"),
    pytest.param("192.168.1.20", ip("192.168.1.20"), True, id="an address as the choice"),
    pytest.param("192.168.1.20", dns("example.org"), False, id="a public name of an address's authority"),
    pytest.param("192.168.1.20", ip("8.8.8.8"), False, id="a public address of an address's authority"),
]


@pytest.mark.parametrize(("host", "name", "good"), NAMES)
def test_openssl_takes_the_chain_for_its_own_names_alone(tmp_path, host, name, good):
    authority = new_authority(host, NOW)
    (tmp_path / "root.pem").write_bytes(authority.certificate.public_bytes(Encoding.PEM))
    (tmp_path / "leaf.pem").write_bytes(forged(authority, name).certificate.public_bytes(Encoding.PEM))
    is_ip = isinstance(name, x509.IPAddress)
    wanted = ["-verify_ip", str(name.value)] if is_ip else ["-verify_hostname", name.value]

    verified = subprocess.run(
        [
            "openssl",
            "verify",
            "-purpose",
            "sslserver",
            "-x509_strict",
            *wanted,
            "-CAfile",
            "root.pem",
            "leaf.pem",
        ],
        cwd=tmp_path,
        capture_output=True,
        text=True,
    )

    assert (verified.returncode == 0) is good, verified.stdout + verified.stderr
    if not good:
        assert "permitted subtree violation" in verified.stdout + verified.stderr


@pytest.mark.parametrize(("host", "name", "good"), NAMES)
def test_a_second_verifier_says_the_same(host, name, good):
    authority = new_authority(host, NOW)
    subject = x509.IPAddress(name.value) if isinstance(name, x509.IPAddress) else x509.DNSName(name.value)
    verifier = PolicyBuilder().store(Store([authority.certificate])).time(NOW).build_server_verifier(subject)
    leaf = forged(authority, name).certificate
    if good:
        assert verifier.verify(leaf, []) == [leaf, authority.certificate]
    else:
        with pytest.raises(VerificationError):
            verifier.verify(leaf, [])


def test_what_the_server_shows_passes_both_verifiers(tmp_path, authority):
    leaf = new_leaf(authority, [YARD], NOW)
    (tmp_path / "leaf.pem").write_bytes(leaf.pem())
    ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER).load_cert_chain(tmp_path / "leaf.pem")
    for subject in (dns(HOST), x509.IPAddress(YARD)):
        PolicyBuilder().store(Store([authority.certificate])).time(NOW).build_server_verifier(subject).verify(
            leaf.certificate, []
        )


def test_a_further_authority_below_it_is_refused(tmp_path, authority):
    key = ec.generate_private_key(ec.SECP256R1())
    model = authority.certificate
    below = (
        x509.CertificateBuilder()
        .subject_name(x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "below")]))
        .issuer_name(model.subject)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(model.not_valid_before_utc)
        .not_valid_after(model.not_valid_after_utc)
        .add_extension(x509.BasicConstraints(True, None), critical=True)
        .add_extension(model.extensions.get_extension_for_class(x509.KeyUsage).value, critical=True)
        .sign(authority.key, SHA256())
    )
    leaf = new_leaf(authority, [], NOW).certificate
    under_it = (
        x509.CertificateBuilder(subject_name=leaf.subject, issuer_name=below.subject)
        .public_key(leaf.public_key())
        .serial_number(1)
        .not_valid_before(leaf.not_valid_before_utc)
        .not_valid_after(leaf.not_valid_after_utc)
        .add_extension(x509.SubjectAlternativeName([dns(HOST)]), critical=False)
        .sign(key, SHA256())
    )
    for name, certificate in {"root": model, "below": below, "leaf": under_it}.items():
        (tmp_path / f"{name}.pem").write_bytes(certificate.public_bytes(Encoding.PEM))
    verified = subprocess.run(
        ["openssl", "verify", "-CAfile", "root.pem", "-untrusted", "below.pem", "leaf.pem"],
        cwd=tmp_path,
        capture_output=True,
        text=True,
    )
    assert verified.returncode != 0
    assert "path length constraint exceeded" in verified.stdout + verified.stderr


def test_the_authority_is_made_once_and_read_by_its_owner_only(folder):
    first = kept_authority(folder, HOST, NOW)
    again = kept_authority(folder, HOST, NOW + 100 * DAY)
    assert again.certificate == first.certificate
    (file,) = folder.keys.glob("authority-*")
    assert stat.S_IMODE(file.stat().st_mode) == 0o600
    assert existing_authority(folder, HOST).fingerprint == first.fingerprint
    # As `openssl x509 -fingerprint -sha256` prints it.
    assert first.fingerprint.count(":") == 31
    assert first.fingerprint == first.fingerprint.upper()


def test_another_name_gets_another_authority(folder):
    one, other = (kept_authority(folder, host, NOW) for host in (HOST, "fd00::1"))
    assert one.certificate != other.certificate
    assert other.host == "fd00::1"
    assert existing_authority(folder, "other.local") is None


def test_a_common_name_stays_within_what_certificates_hold():
    assert len(common_name("a" * 60 + ".example.org")) == 64  # ub-common-name, RFC 5280


@pytest.mark.parametrize(
    ("clock", "words"),
    [
        pytest.param(datetime(1970, 1, 1, tzinfo=UTC), "says 1970-01-01, which cannot", id="never set"),
        pytest.param(datetime(2101, 1, 1, tzinfo=UTC), "says 2101-01-01, which cannot", id="far ahead"),
        pytest.param(NOW - 400 * DAY, "was made", id="before the authority was made"),
        pytest.param(NOW + 3700 * DAY, "ended on", id="after its end"),
    ],
)
def test_a_clock_that_cannot_be_right_is_refused(folder, clock, words):
    kept_authority(folder, HOST, NOW)
    with pytest.raises(CommandRefused, match=words) as refusal:
        kept_authority(folder, HOST, clock)
    assert "Set the clock" in str(refusal.value)


def test_no_authority_is_made_by_a_clock_that_was_never_set(folder):
    with pytest.raises(CommandRefused):
        kept_authority(folder, HOST, datetime(1970, 1, 1, tzinfo=UTC))
    assert list(folder.keys.glob("authority-*")) == []


def test_a_damaged_authority_is_not_replaced(folder):
    kept_authority(folder, HOST, NOW)
    (file,) = folder.keys.glob("authority-*")
    file.write_bytes(file.read_bytes()[:200])
    with pytest.raises(CommandRefused, match="is damaged"):
        kept_authority(folder, HOST, NOW)
