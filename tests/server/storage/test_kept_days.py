"""What is fixed in days for the yard: kept over starts, told to each phone, refused where it is none."""

from contextlib import closing

import pytest

from server.app import Config
from server.app import create_app
from server.refusals import CommandRefused
from server.serving.serve import held_open
from server.storage import DataFolder
from server.storage.kept_days import Days
from tests.server.phone import BASE
from tests.server.phone import Phone


@pytest.fixture
def folder(tmp_path):
    folder = DataFolder(tmp_path / "data")
    folder.prepare()
    with closing(folder.open()):
        yield folder


def told(folder) -> tuple:
    """Return what a phone is told: days of the return window and of the warranty."""
    session = Phone(create_app(Config(folder.root, BASE))).get("/api/session").json
    return session["return_days"], session["warranty_days"]


def test_what_a_start_gives_is_kept_and_told_to_phones(folder):
    assert told(folder) == (30, 0)
    with held_open(folder, Days(of_warranty=365)):
        assert told(folder) == (30, 365)
    with held_open(folder, Days(to_return=14)):
        assert told(folder) == (14, 365)
    with held_open(folder, Days(of_warranty=0)):
        assert told(folder) == (14, 0)


@pytest.mark.parametrize("days", [-1, 3651])
@pytest.mark.parametrize(
    ("field", "option"), [("to_return", "--return-days"), ("of_warranty", "--warranty-days")]
)
def test_what_is_no_number_of_days_is_refused_by_its_option(folder, field, option, days):
    before = told(folder)
    with pytest.raises(CommandRefused) as refused, held_open(folder, Days(**{field: days})):
        pass
    assert f"{option} {days} " in str(refused.value)
    assert told(folder) == before
