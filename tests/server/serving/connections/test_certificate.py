"""The certificate that a server is given: what is refused, and that a changed one is taken up."""

import errno
import os
import shutil
import ssl
from pathlib import Path

import pytest

from server.refusals import CommandRefused
from server.serving.connections import CertificateFiles
from tests.server.certificates import Files
from tests.server.certificates import make_pair


@pytest.fixture
def pair(tmp_path):
    return make_pair(tmp_path, ["shop.example"])


def broken(folder, kind):
    """Returns a pair of files that is not fit, in one way."""
    files = make_pair(folder, ["shop.example"])
    other = make_pair(folder, ["other.example"], stem="other")
    if kind == "expired":
        return make_pair(folder, ["shop.example"], begins=-900, ends=-500)
    if kind == "not yet":
        return make_pair(folder, ["shop.example"], begins=900, ends=1200)
    if kind == "another key":
        return Files(files.cert, other.key)
    if kind == "another name":
        return other
    if kind == "no name":
        return make_pair(folder, [])
    if kind == "locked":
        return make_pair(folder, ["shop.example"], password=b"secret")
    if kind == "no file":
        return Files(folder / "none.pem", files.key)
    if kind == "no key file":
        return Files(files.cert, folder / "none.key")
    if kind == "a folder":
        return Files(folder, files.key)
    if kind == "the wrong way round":
        return Files(files.key, files.cert)
    files.key.write_text("nothing of the kind")
    return files


REFUSED = {
    "expired": "ran out on 20",
    "not yet": "this machine's clock says 20",
    "another key": "does not belong to the certificate",
    "another name": "is for other.example, and phones ask for shop.example",
    "no name": "is for no name at all",
    "locked": "locked with a password",
    "no file": "none.pem: there is no such file",
    "no key file": "none.key: there is no such file",
    "a folder": "cannot be read: Is a directory",
    "the wrong way round": "holds no certificate that can be read",
    "no key": "holds no private key that can be read",
}


@pytest.mark.parametrize("kind", REFUSED)
def test_a_pair_that_is_not_fit_is_refused_in_one_sentence_and_what_to_do(tmp_path, kind):
    with pytest.raises(CommandRefused) as refused:
        CertificateFiles(*broken(tmp_path, kind), name="shop.example")

    sentence = str(refused.value)
    assert REFUSED[kind] in sentence
    assert "\n" not in sentence
    assert sentence.count(". ") >= 1, "what was found, then what to do"


@pytest.mark.parametrize("name", ["shop.example", "SHOP.example", None])
def test_a_fit_pair_is_served_with_tls_1_2_and_later(pair, name):
    context = CertificateFiles(*pair, name=name).context()

    assert context.minimum_version == ssl.TLSVersion.TLSv1_2


@pytest.mark.parametrize(
    ("name", "covered"), [("a.example", True), ("b.a.example", False), ("example", False)]
)
def test_a_star_stands_for_one_label(tmp_path, name, covered):
    files = make_pair(tmp_path, ["*.example"])
    if covered:
        assert CertificateFiles(*files, name=name).context()
    else:
        with pytest.raises(CommandRefused):
            CertificateFiles(*files, name=name)


def test_changed_files_are_taken_up_and_an_unfit_pair_is_not(tmp_path, pair, caplog):
    now = [0.0]
    files = CertificateFiles(*pair, name="shop.example", clock=lambda: now[0])
    first = files.context()
    newer = make_pair(tmp_path, ["shop.example"], stem="newer")

    shutil.copy(newer.cert, pair.cert)  # half of a renewal: the key is still the old one
    now[0] += 2
    assert files.context() is first
    assert "does not belong" in caplog.text

    os.replace(newer.key, pair.key)
    assert files.context() is first, "looked at no more than once a second"
    now[0] += 2
    second = files.context()
    assert second is not first
    now[0] += 2
    assert files.context() is second


def test_a_pair_that_becomes_fit_later_is_taken_up_and_complained_of_once(
    tmp_path, pair, caplog, monkeypatch
):
    now, opens = [0.0], []
    files = CertificateFiles(*pair, name="shop.example", clock=lambda: now[0])
    first = files.context()
    newer = make_pair(tmp_path, ["shop.example"], stem="newer")
    shutil.copy(newer.cert, pair.cert)
    shutil.copy(newer.key, pair.key)
    monkeypatch.setattr(Path, "read_bytes", lambda path: opens.append(path) or deny())

    for _ in range(3):
        now[0] += 2
        assert files.context() is first
    monkeypatch.undo()  # as when somebody lets the server's user read it
    now[0] += 2

    assert files.context() is not first
    assert len(opens) == 3
    assert caplog.text.count("cannot be read: Permission denied") == 1


def deny():
    raise PermissionError(errno.EACCES, "Permission denied")
