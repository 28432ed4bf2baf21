"""The installation's key: signs as the standard says, is made once, read by its owner only, restored."""

import re
import stat
import threading

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from server.commands.cli import main
from server.phones import signing
from server.phones.signing import Signer
from server.refusals import CommandRefused
from server.storage import DataFolder
from tests.server.signed_phone import ORDER


@pytest.fixture
def folder(tmp_path):
    folder = DataFolder(tmp_path / "data")
    folder.prepare()
    return folder


# RFC 8032, section 7.1, TEST 1 and TEST 2 (from memory): secret key, public key, message, signature.
VECTORS = [
    pytest.param(
        "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
        "",
        "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46b"
        "d25bf5f0595bbe24655141438e7a100b",
        id="test 1",
    ),
    pytest.param(
        "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
        "\x72",
        "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c"
        "387b2eaeb4302aeeb00d291612bb0c00",
        id="test 2",
    ),
]


@pytest.mark.parametrize(("secret", "public", "message", "signature"), VECTORS)
def test_signs_and_checks_as_rfc_8032_says(secret, public, message, signature):
    signer = Signer(Ed25519PrivateKey.from_private_bytes(bytes.fromhex(secret)))
    assert (signer.key, signer.sign(message)) == (public, signature)
    assert signing.is_signed(message, signature, public)
    assert not signing.is_signed(message + "x", signature, public)
    assert not signing.is_signed(
        message, signature[:-2] + "00"[: 2 * (signature[-2:] != "00")] + "01", public
    )


@pytest.mark.parametrize(("secret", "public", "message", "signature"), VECTORS)
def test_key_and_signature_are_written_in_one_way(secret, public, message, signature):
    """A phone reads no other, and would call altered what the server calls intact."""
    spaced = " ".join(re.findall("..", signature))
    for written in (spaced, signature.upper(), f"{signature} ", f"{signature}\n"):
        assert not signing.is_signed(message, written, public)
    for written in (public.upper(), f"{public}\n", f" {public}"):
        assert not signing.is_signed(message, signature, written)


# RFC 6979, A.2.5, P-256 with SHA-256 and the text "sample" (from memory): the point, r and s.
POINT = (
    "0460fed4ba255a9d31c961eb74c6356d68c049b8923b61fa6ce669622e60f29fb6"
    "7903fe1008b8bc99a41ae9e95628bc64f2f1b20c2d7e9f5177a3c294d4462299"
)
R = "efd48b2aacb6a8fd1140dd9cd45e81d69d2c877b56aaf991c34d0ea84eaf3716"
S = "f7cb1c942d657c41d436c7a1b6e29f65f3e900dbb9aff4064dc4ab2f843acda8"
LOWER_S = f"{ORDER - int(S, 16):064x}"


def test_checks_what_a_phone_signed_as_fips_186_5_says_and_takes_one_s_of_two():
    assert signing.is_signed_by_phone("sample", R + LOWER_S, POINT)
    assert not signing.is_signed_by_phone("sample", R + S, POINT)
    assert not signing.is_signed_by_phone("Sample", R + LOWER_S, POINT)


# No point, no number: nothing but a plain "no" may come of them.
@pytest.mark.parametrize(
    ("signature", "key"),
    [
        ("0" * 128, POINT),
        (R + "0" * 64, POINT),
        ("0" * 64 + LOWER_S, POINT),
        (f"{ORDER:064x}{LOWER_S}", POINT),
        (R + LOWER_S, "04" + "0" * 128),
        (R + LOWER_S, "04" + "f" * 128),
        (R + LOWER_S, POINT[:-1] + "8"),
        (R + LOWER_S, "03" + POINT[2:66]),
    ],
)
def test_what_is_no_key_or_signature_of_a_phone_signs_nothing(signature, key):
    assert not signing.is_signed_by_phone("sample", signature, key)


# SHA-256 of 'abc' and of the empty string, FIPS 180-4 examples: their beginnings are the fingerprints.
@pytest.mark.parametrize(
    ("key", "short"),
    [("616263", "ba78 16bf 8f01 cfea 4141"), ("", "e3b0 c442 98fc 1c14 9afb")],
)
def test_a_fingerprint_is_the_beginning_of_the_keys_sha_256(key, short):
    assert signing.fingerprint(key) == short


@pytest.mark.parametrize("junk", ["", "zz", "00", "0" * 64, "ab" * 64])
def test_what_is_no_key_or_signature_signs_nothing(junk):
    assert not signing.is_signed("text", junk, junk)


def test_the_key_is_made_once_and_for_its_owner_only(folder):
    key = signing.signer(folder).key
    path = folder.keys / "signing.key"
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert signing.signer(DataFolder(folder.root)).key == key
    assert [each.name for each in folder.keys.iterdir()] == ["signing.key"]


def test_two_that_make_the_key_at_once_sign_with_one(folder):
    start, keys = threading.Barrier(4), []

    def sign():
        start.wait()
        keys.append(signing.signer(folder).key)

    threads = [threading.Thread(target=sign) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(keys) == 4
    assert len(set(keys)) == 1


def test_a_damaged_key_is_named_and_never_replaced(folder):
    (folder.keys / "signing.key").write_bytes(b"no key")
    with pytest.raises(CommandRefused, match=r"signing\.key is damaged"):
        signing.signer(folder)
    assert (folder.keys / "signing.key").read_bytes() == b"no key"


def test_a_restored_installation_signs_as_the_one_that_was_backed_up(folder, tmp_path):
    key = signing.signer(folder).key
    assert main(["backup", str(tmp_path / "b.zip"), "--data", str(folder.root)]) == 0
    assert main(["restore", str(tmp_path / "b.zip"), "--data", str(tmp_path / "new")]) == 0
    restored = DataFolder(tmp_path / "new")
    assert signing.signer(restored).key == key
    assert stat.S_IMODE((restored.keys / "signing.key").stat().st_mode) == 0o600
