"""The documents are true: commands, kinds of events and set-up lines are the ones that exist."""

import re
from pathlib import Path

import pytest

from server.cli import main
from server.core.kinds import KINDS

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")


def test_the_readme_sets_up_with_two_lines_each_alone_in_its_block():
    blocks = re.findall(r"```sh\n(.*?)```", README, re.DOTALL)
    assert len(blocks) == 2
    assert all(len(block.strip().splitlines()) == 1 for block in blocks)
    assert blocks[0].strip().endswith("swaptrail demo")
    assert "pytest" in blocks[1]


def test_ci_runs_the_second_line_of_the_readme():
    second = re.findall(r"```sh\n(.*?)\n```", README, re.DOTALL)[1]
    assert second in (ROOT / ".ci" / "run").read_text("utf-8")


def test_every_kind_of_event_is_listed_with_its_sentence():
    listed = dict(re.findall(r"^\| `(\w+)` \| (.*) \|$", DEVELOPERS, re.MULTILINE))
    assert listed == {kind: sentence for kind, (sentence, _) in KINDS.items()}


def test_every_command_is_in_the_readme(capsys):
    with pytest.raises(SystemExit):
        main(["--help"])
    commands = re.findall(r"^    ([\w-]+)  ", capsys.readouterr().out, re.MULTILINE)
    assert "demo" in commands
    assert re.findall(r"^\| `swaptrail ([\w-]+)", README, re.MULTILINE) == commands


def test_nothing_lies_at_the_top_that_the_design_does_not_name():
    allowed = {"README.md", "DEVELOPERS.md", "pyproject.toml", "server", "static", "tests", "demo_db"}
    ignored = {"build", "dist", "data"}
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert found - ignored <= allowed
