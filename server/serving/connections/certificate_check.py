"""Whether a certificate and its key can serve a name; each refusal is one sentence that says what to do."""

import ssl
from datetime import UTC
from datetime import datetime
from pathlib import Path
from typing import NamedTuple

from cryptography import x509
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.hazmat.primitives.serialization import PublicFormat
from cryptography.hazmat.primitives.serialization import load_pem_private_key

from server.core.messages import message
from server.refusals import CommandRefused


class Pair(NamedTuple):
    """Where a certificate (with its chain behind it) and its key lie, both as PEM."""

    certificate: Path
    key: Path


def checked_context(pair: Pair, name: str | None, now: datetime | None = None) -> ssl.SSLContext:
    """Returns a context that serves the pair; refuses one that a phone would not take for `name`.

    None leaves the name unchecked. `now` is the machine's clock unless given.
    """
    leaf = _leaf(pair.certificate)
    _check_key(pair, leaf)
    _check_time(pair.certificate, leaf, now or datetime.now(UTC))
    if name is not None:
        _check_name(pair.certificate, leaf, name)
    return _context(pair)


def _leaf(path: Path) -> x509.Certificate:
    data = _read(path, "--cert")
    try:
        return x509.load_pem_x509_certificates(data)[0]
    except ValueError:
        raise CommandRefused(message("serving-no-certificate", file=str(path))) from None


def _check_key(pair: Pair, leaf: x509.Certificate) -> None:
    data = _read(pair.key, "--key")
    try:
        key = load_pem_private_key(data, password=None)
    except TypeError:
        raise CommandRefused(message("serving-key-locked", file=str(pair.key))) from None
    except ValueError:
        raise CommandRefused(message("serving-no-key", file=str(pair.key))) from None
    ours = key.public_key().public_bytes(Encoding.DER, PublicFormat.SubjectPublicKeyInfo)
    theirs = leaf.public_key().public_bytes(Encoding.DER, PublicFormat.SubjectPublicKeyInfo)
    if ours != theirs:
        raise CommandRefused(
            message("serving-not-a-pair", key=str(pair.key), certificate=str(pair.certificate))
        )


def _check_time(path: Path, leaf: x509.Certificate, now: datetime) -> None:
    if now > leaf.not_valid_after_utc:
        raise CommandRefused(
            message(
                "serving-ran-out",
                file=str(path),
                ended=f"{leaf.not_valid_after_utc:%Y-%m-%d}",
                clock=f"{now:%Y-%m-%d}",
            )
        )
    if now < leaf.not_valid_before_utc:
        raise CommandRefused(
            message(
                "serving-not-yet",
                file=str(path),
                begins=f"{leaf.not_valid_before_utc:%Y-%m-%d}",
                clock=f"{now:%Y-%m-%d}",
            )
        )


def _check_name(path: Path, leaf: x509.Certificate, name: str) -> None:
    try:
        names = leaf.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
        hosts = names.get_values_for_type(x509.DNSName)
        hosts += [str(address) for address in names.get_values_for_type(x509.IPAddress)]
    except x509.ExtensionNotFound:
        hosts = []
    if not any(_covers(host.lower(), name.lower()) for host in hosts):
        names_in_it = ", ".join(hosts) or message("serving-no-name-at-all")
        told = message("serving-other-name", file=str(path), names=names_in_it, name=name)
        raise CommandRefused(told)


def _covers(pattern: str, name: str) -> bool:
    """Tells whether a certificate's name covers `name`; a * is one whole first label (RFC 6125, 6.4.3)."""
    if pattern.startswith("*."):
        return pattern[2:] == name.partition(".")[2]
    return pattern == name


def _context(pair: Pair) -> ssl.SSLContext:
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.minimum_version = ssl.TLSVersion.TLSv1_2
    context.options |= ssl.OP_NO_RENEGOTIATION
    context.set_alpn_protocols(["http/1.1"])
    try:
        context.load_cert_chain(pair.certificate, pair.key)
    except (ssl.SSLError, OSError) as error:
        why = getattr(error, "reason", None) or error
        raise CommandRefused(
            message("serving-no-pair", certificate=str(pair.certificate), key=str(pair.key), why=str(why))
        ) from None
    return context


def _read(path: Path, option: str) -> bytes:
    try:
        return path.read_bytes()
    except FileNotFoundError:
        raise CommandRefused(message("serving-no-such-file", option=option, file=str(path))) from None
    except OSError as error:
        raise CommandRefused(
            message("serving-unreadable", option=option, file=str(path), error=str(error.strerror))
        ) from None
