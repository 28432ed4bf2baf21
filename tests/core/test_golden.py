"""Ten jobs word by word, in both hosts: whoever changes a sentence reads where it is said.

When the change is meant, `python -m tests.core.scenarios --renew` writes the files afresh.
"""

import pytest

from tests.core.scenarios import GOLDEN
from tests.core.scenarios import told

FILES = sorted(GOLDEN.glob("*.txt"))


@pytest.mark.parametrize("file", FILES, ids=[file.stem for file in FILES])
def test_the_job_is_told_as_agreed(core, file):
    assert told(core, file.stem) == file.read_text("utf-8")


@pytest.mark.parametrize("file", FILES, ids=[file.stem for file in FILES])
def test_the_compiled_core_tells_it_to_the_byte(compiled_core, file):
    assert told(compiled_core, file.stem) == file.read_text("utf-8")


def test_there_are_ten():
    assert len(FILES) == 10
