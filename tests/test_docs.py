"""The documents are true: commands, kinds of events and set-up lines are the ones that exist."""

import gzip
import html
import re
from pathlib import Path

import click
import pytest

from server.commands.cli import command_line
from server.core.facts.kinds import ALL
from server.core.messages import message
from server.web.help_pages import INDEX
from server.web.help_pages import HelpBroken
from server.web.help_pages import help_bundle
from server.web.help_pages import help_pages
from server.words.files import languages
from tests.said import english

ROOT = Path(__file__).parents[1]
HELP = ROOT / "static" / "help" / "en"
README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")
MOST_WORDS = 1300
MOST_BYTES = 90_000
CONTEXT = click.Context(command_line)
COMMANDS = {name: command_line.get_command(CONTEXT, name) for name in command_line.list_commands(CONTEXT)}


def test_the_readme_sets_up_with_two_lines_each_alone_in_its_block():
    blocks = re.findall(r"```sh\n(.*?)```", README, re.DOTALL)
    assert len(blocks) == 2
    assert all(len(block.strip().splitlines()) == 1 for block in blocks)
    assert blocks[0].strip().endswith("swaptrail demo")
    assert "pytest" in blocks[1]


def test_ci_runs_the_second_line_of_the_readme():
    second = re.findall(r"```sh\n(.*?)\n```", README, re.DOTALL)[1]
    assert second in (ROOT / ".ci" / "run").read_text("utf-8")


def test_every_place_that_is_named_for_a_change_is_there():
    table = DEVELOPERS.partition("<!-- places:")[2].partition("\n\n")[0]
    rows = re.findall(r"^\| (.+?) \| (.+) \|$", table, re.MULTILINE)[1:]
    places = [place for _, where in rows for place in re.findall(r"`([^`]+)`", where)]
    assert len(rows) >= 20
    assert len(places) >= len(rows)
    assert [place for place in places if not (ROOT / place).exists()] == []


def test_every_test_that_is_named_for_a_point_of_security_is_there():
    table = DEVELOPERS.partition("<!-- asvs:")[2].partition("\n\n")[0]
    rows = re.findall(r"^\| (\d[\w., ]+) \| (.+) \| (.+) \|$", table, re.MULTILINE)
    assert len(rows) == len(table.splitlines()) - 3 >= 20
    named = [re.findall(r"`(tests/[\w/]+\.py)`", shown) for _, _, shown in rows]
    assert all(named)
    assert [
        path for paths in named for path in paths if "def test_" not in (ROOT / path).read_text("utf-8")
    ] == []


def test_every_kind_of_event_is_listed_as_it_is_declared():
    listed = re.findall(r"^\| `\w+` \|.*\|$", DEVELOPERS.partition("<!-- kinds:")[2], re.MULTILINE)
    assert listed == [kind_row(kind) for kind in ALL]


def kind_row(kind):
    """Returns the row of DEVELOPERS.md about a kind of event, as its declaration has it."""
    said = [f"`{field.name}`" + (" (later)" if field.later else "") for field in kind.fields]
    what = english(message("refusals-kind", kind=kind.name))
    columns = (f"`{kind.name}`", f"{what}.", ", ".join(said), kind.role, kind.job, kind.after_closing)
    return f"| {' | '.join(columns)} |"


def test_the_readme_stays_short():
    assert len(README.split()) <= MOST_WORDS


def test_every_command_is_in_the_readme_with_options_that_it_has():
    rows = re.findall(r"^\| `swaptrail ([\w-]+)([^`]*)`", README, re.MULTILINE)
    assert [name for name, _ in rows] == list(COMMANDS)
    for name, options in rows:
        assert set(re.findall(r"--[a-z-]+", options)) <= options_of(name), name


def test_every_command_and_option_is_in_the_help():
    told = (HELP / "commands.md").read_text("utf-8")
    sections = re.split(r"^## `swaptrail ", told, flags=re.MULTILINE)
    assert {section.partition("\n")[0].strip("`").split()[0] for section in sections[1:]} == set(COMMANDS)
    for section in sections[1:]:
        name = re.match(r"[\w-]+", section)[0]
        named = set(re.findall(r"--[a-z-]+", section)) | {"--data", "--help"}
        assert named >= options_of(name), name
        assert named <= options_of(name) | {"--data", "--help"}, name
    assert "`--data DIR`" in sections[0]


def options_of(command):
    options = [each for each in COMMANDS[command].get_params(CONTEXT) if isinstance(each, click.Option)]
    return {flag for option in options for flag in option.opts if flag != "-h"}


def test_every_file_that_the_documents_lead_to_is_there():
    for text in (README, DEVELOPERS):
        for target in re.findall(r"\]\(([^)]+)\)", text):
            assert target.startswith("https://") or (ROOT / target).is_file(), target
    shown = re.findall(r"!\[[^\]]{20,}\]\((static/help/en/pictures/[^)]+)\)", README)
    assert len(shown) == 3


def test_nothing_lies_at_the_top_that_the_design_does_not_name():
    allowed = {"README.md", "DEVELOPERS.md", "pyproject.toml", "server", "static", "tests", "demo_db"}
    ignored = {"build", "dist", "data"}
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert found - ignored <= allowed


def test_every_page_of_the_help_is_reached_from_its_first():
    pages = {page.name: page for page in help_pages(HELP)}
    reached, waiting = set(), [INDEX]
    while waiting:
        name = waiting.pop()
        if name not in reached:
            reached.add(name)
            waiting += pages[name].links
    assert reached == set(pages)


def test_the_help_has_the_same_pages_in_every_language():
    pages = {folder.name: {file.name for file in folder.glob("*.md")} for folder in HELP.parent.iterdir()}
    assert {language: names for language, names in pages.items() if names != pages["en"]} == {}


@pytest.mark.parametrize("language", languages())
def test_what_the_help_quotes_stands_on_a_screen(language):
    """Words in italics are those of the app, or of the page on which a phone gets to trust it."""
    told = [file.read_text("utf-8") for file in (ROOT / "server/words" / language).glob("*.ftl")]
    words = " ".join(" ".join(told).split())
    quoted = {
        (page.name, html.unescape(found).rstrip("."))
        for page in help_pages(HELP.parent / language)
        for found in re.findall(r"<em>(.*?)</em>", " ".join(page.html.split()))
    }
    assert len(quoted) > 50
    assert [(name, quote) for name, quote in sorted(quoted) if quote not in words] == []


def test_every_picture_of_the_help_is_shown_with_words_and_a_size():
    shown = re.findall(r"<img[^>]*>", "".join(page.html for page in help_pages(HELP)))
    for image in shown:
        assert re.search(r' alt="[^"]{20,}"', image), image
        assert re.search(r' width="\d+" height="\d+"', image), image
    named = {re.search(r'src="pictures/([^"]*)"', image)[1] for image in shown}
    assert named == {file.name for file in (HELP / "pictures").iterdir()}


def test_the_help_costs_a_first_visit_little():
    pictures = sum(file.stat().st_size for file in (HELP / "pictures").iterdir())
    assert pictures + len(gzip.compress(help_bundle(HELP, help_pages(HELP)))) <= MOST_BYTES


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("# A\n[b](no-such-page.md)", "no-such-page.md"),
        ("# A\n[b](http://example.org)", "http://example.org"),
        ("# A\n![b](pictures/none.webp)", "pictures/none.webp"),
        ("no heading", "README.md"),
        ("# A\n\n# B", "README.md"),
    ],
)
def test_a_page_of_the_help_that_leads_nowhere_is_refused_by_name(tmp_path, text, named):
    (tmp_path / "README.md").write_text(text)
    with pytest.raises(HelpBroken, match=re.escape(named)):
        help_pages(tmp_path)


def test_raw_html_in_the_help_is_text(tmp_path):
    (tmp_path / "README.md").write_text("# A\n\n<script>alert(1)</script>\n")
    assert "<script" not in help_pages(tmp_path)[0].html
