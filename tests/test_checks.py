"""Lint, format and types are part of the one test run, so that nobody has to remember them."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]


@pytest.mark.parametrize(
    "arguments",
    [
        pytest.param(["ruff", "check", "."], id="lint"),
        pytest.param(["ruff", "format", "--check", "."], id="format"),
        pytest.param(["mypy"], id="types"),
    ],
)
def test_the_code_passes(arguments):
    answer = subprocess.run(
        [sys.executable, "-m", *arguments], cwd=ROOT, capture_output=True, text=True, timeout=300
    )

    assert answer.returncode == 0, answer.stdout + answer.stderr
