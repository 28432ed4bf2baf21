"""The phone app's scripts pass the type checker in its strict form."""

import re

import pytest

from tests.static.typescript import STATIC
from tests.static.typescript import check_types


@pytest.fixture(scope="session")
def checker(request):
    return request.config.cache.mkdir("typescript")


@pytest.mark.parametrize("config", ["tsconfig.json", "tsconfig.worker.json"])
def test_the_scripts_pass_the_type_checker(checker, config):
    assert check_types(checker, config) == ""


def test_every_script_is_checked():
    """A file without the comment is left out by an editor, and `@ts-nocheck` would hide it here."""
    scripts = [
        file
        for file in STATIC.rglob("*.js")
        if not {"vendor", "node_modules"} & set(file.relative_to(STATIC).parts)
    ]
    ours = {file.relative_to(STATIC).as_posix(): file.read_text("utf-8") for file in scripts}

    assert [name for name, text in ours.items() if not text.startswith("// @ts-check\n")] == []
    assert [name for name, text in ours.items() if re.search("@ts-(nocheck|ignore|expect-error)", text)] == []


def test_what_is_wrong_is_found(checker):
    """The checker really reads the scripts: a call that does not fit is said, with its place."""
    wrong = "import { linkTo } from './screens/frame/router.js';\nlinkTo(3);\n"

    said = check_types(checker, beside={"wrong.js": wrong})

    assert re.search(r"^app/wrong\.js\(2,8\): error TS2345", said)
