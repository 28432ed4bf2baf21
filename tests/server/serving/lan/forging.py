"""A certificate as a thief of the authority's key would make it: for any name at all."""

from datetime import UTC
from datetime import datetime

from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.hashes import SHA256

from server.serving.lan.leaf import Leaf
from server.serving.lan.leaf import new_leaf


def forged(authority, name):
    """Return a leaf for `name` that is like the server's own in everything else."""
    key = ec.generate_private_key(ec.SECP256R1())
    model = new_leaf(authority, [], datetime.now(UTC)).certificate
    builder = (
        x509.CertificateBuilder()
        .subject_name(model.subject)
        .issuer_name(model.issuer)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(model.not_valid_before_utc)
        .not_valid_after(model.not_valid_after_utc)
        .add_extension(x509.SubjectAlternativeName([name]), critical=False)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), critical=False)
    )
    for kind in (x509.BasicConstraints, x509.KeyUsage, x509.ExtendedKeyUsage, x509.AuthorityKeyIdentifier):
        found = model.extensions.get_extension_for_class(kind)
        builder = builder.add_extension(found.value, critical=found.critical)
    return Leaf(builder.sign(authority.key, SHA256()), key)
