"""The versions that `.ci/run` installs are fixed, all of them, and no file says from where."""

import re
import tomllib
from importlib import metadata
from pathlib import Path

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from server.building.build_hook import CORE_COMPILER
from server.building.build_hook import PACKAGED_NPM

ROOT = Path(__file__).resolve().parents[1]
CONSTRAINTS = ROOT / ".ci" / "constraints.txt"


def pinned():
    """Returns name -> version; a line that is not `name==version` is refused."""
    lines = [line for line in CONSTRAINTS.read_text("utf-8").splitlines() if not line.startswith("#")]
    pins = [re.fullmatch(r"([a-z0-9.-]+)==([a-z0-9.+]+)", line) for line in lines]
    assert None not in pins, [line for line, pin in zip(lines, pins, strict=True) if pin is None]
    assert len({pin[1] for pin in pins}) == len(pins)
    return {canonicalize_name(pin[1]): pin[2] for pin in pins}


def wanted():
    """Returns what pyproject.toml and the build hook ask for."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    extras = project["project"]["optional-dependencies"].values()
    listed = [project["build-system"]["requires"], project["project"]["dependencies"], *extras]
    return [Requirement(each) for one in (*listed, [PACKAGED_NPM, CORE_COMPILER]) for each in one]


def test_what_the_project_asks_for_is_fixed_at_a_version_that_it_may_have():
    pins = pinned()
    for requirement in wanted():
        version = pins[canonicalize_name(requirement.name)]
        assert requirement.specifier.contains(version, prereleases=True), (str(requirement), version)


def test_what_that_brings_with_it_is_fixed_too():
    """Of what is installed at its fixed version; another one may ask for other things."""
    pins = pinned()
    waiting, checked = wanted(), set()
    while waiting:
        requirement = waiting.pop()
        name = canonicalize_name(requirement.name)
        assert name in pins, name
        if (name, *requirement.extras) in checked:
            continue
        checked.add((name, *requirement.extras))
        try:
            there = metadata.distribution(name)
        except metadata.PackageNotFoundError:
            continue  # wanted elsewhere: another machine, the build
        if there.version != pins[name]:
            continue
        for text in there.requires or []:
            further = Requirement(text)
            extras = ["", *requirement.extras]
            if not further.marker or any(further.marker.evaluate({"extra": extra}) for extra in extras):
                waiting.append(further)
    assert len(checked) > 40


def test_the_checks_install_these_versions():
    # Whole, for tests run pip in folders of their own.
    assert 'PIP_CONSTRAINT="$PWD/.ci/constraints.txt"' in (ROOT / ".ci" / "run").read_text("utf-8")
