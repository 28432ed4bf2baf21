"""`swaptrail site`: whole or not at all, in new folders and in the place of its own earlier work only."""

import json
import re
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from server.commands import cli
from server.refusals import CommandRefused
from server.site import folder as site_folder
from server.site import make
from server.site.notes import notes
from server.web.shell import find_static
from tests.server.real_server import ROOT

PLACES = re.compile(r'(?:href|src)="([^"]+)"|: "(\./[^"]+)"')


@pytest.fixture
def static(small_static):
    """A small app whose page is as the real one's."""
    (small_static / "index.html").write_text(
        '<!doctype html><html lang="en">\n  <head>\n    <meta charset="utf-8">\n'
        '<script type="importmap">{"imports": {"x": "./app/main.js"}}</script>'
        '<script type="module" src="./app/main.js"></script></head></html>'
    )
    return small_static


def tree(folder: Path) -> dict[str, bytes]:
    return {
        file.relative_to(folder).as_posix(): file.read_bytes() for file in folder.rglob("*") if file.is_file()
    }


def builds(folder: Path) -> set[str]:
    return {one.name for one in (folder / "app").iterdir()}


def build_of(folder: Path) -> str:
    return json.loads((folder / "swaptrail-site.json").read_text())["build"]


def change(static: Path, text: str) -> None:
    (static / "styles/base.css").write_text(text)


def test_the_policy_is_the_first_thing_in_the_head_and_allows_what_stands_there(static, tmp_path):
    make.write(static, tmp_path / "site")

    for name in ("index.html", "404.html"):
        page = (tmp_path / "site" / name).read_text()
        policy = re.search(r'<head>\s*<meta http-equiv="Content-Security-Policy" content="([^"]+)">', page)
        assert policy is not None
        assert "default-src 'self'" in policy[1]
        assert "script-src 'self' 'wasm-unsafe-eval' 'sha256-" in policy[1]
        assert "frame-ancestors" not in policy[1], "a page cannot say this of itself"
    headers = (tmp_path / "site/_headers").read_text()
    for source in re.findall(r"'sha256-[^']+'", page):
        assert source in headers
    assert "frame-ancestors 'none'" in headers
    assert "nosniff" in headers


def test_every_address_is_relative_and_there(tmp_path):
    make.write(find_static(), tmp_path / "site")
    page = (tmp_path / "site/index.html").read_text()
    places = {a or b for a, b in PLACES.findall(page)}

    assert 'data-server="none"' in page
    assert f"./app/{build_of(tmp_path / 'site')}/begin.js" in places
    for place in places:
        assert place.startswith("./"), place
        assert (tmp_path / "site" / place).exists(), place
    manifest = json.loads((tmp_path / "site/manifest.webmanifest").read_text())
    assert (manifest["start_url"], manifest["scope"], "id" in manifest) == ("./", "./", False)
    # Without its icons a browser offers no home screen.
    icons = [icon["src"] for icon in manifest["icons"]]
    assert icons
    assert [icon for icon in icons if not (tmp_path / "site" / icon).is_file()] == []
    assert not [name for name in tree(tmp_path / "site") if name.endswith(".br")]
    assert "BSD" in (tmp_path / "site/LICENSES.txt").read_text()


def test_a_newer_site_takes_the_place_of_an_older_one_and_keeps_its_build_once(static, tmp_path):
    out = tmp_path / "site"
    make.write(static, out)
    first = build_of(out)
    change(static, "body { margin: 0 }")
    make.write(static, out)
    second = build_of(out)

    assert builds(out) == {first, second}
    again = tree(out)
    make.write(static, out)
    assert tree(out) == again
    change(static, "body { margin: 1px }")
    make.write(static, out)
    assert builds(out) == {second, build_of(out)}
    assert (out / "app" / second / "main.js").is_file()


@pytest.mark.parametrize("last", ["index.html", "sw.js", "swaptrail-site.json", "manifest.webmanifest"])
def test_a_site_cut_off_while_it_is_replaced_still_is_one_whole_build(static, tmp_path, monkeypatch, last):
    out = tmp_path / "site"
    make.write(static, out)
    change(static, "body { margin: 0 }")
    replace = site_folder.os.replace

    def stop(source, target):
        if Path(target).name == last:
            raise KeyboardInterrupt
        replace(source, target)

    monkeypatch.setattr(site_folder.os, "replace", stop)
    with pytest.raises(KeyboardInterrupt):
        make.write(static, out)
    monkeypatch.undo()

    named = re.search(r'src="\./(app/[0-9a-f]{16}/main\.js)"', (out / "index.html").read_text())[1]
    assert (out / named).is_file()
    worker = json.loads(re.search(r"JSON\.parse\('(.*?)'\)", (out / "sw.js").read_text())[1])
    assert (out / "app" / worker["build"] / "main.js").is_file()
    assert not [one for one in out.iterdir() if one.name.startswith(".")]
    make.write(static, out)
    assert len(builds(out)) == 2


def test_a_new_site_cut_off_leaves_nothing(static, tmp_path, monkeypatch):
    def stop(files, folder):
        (folder / "index.html").write_text("half")
        raise KeyboardInterrupt

    monkeypatch.setattr(site_folder, "_write", stop)
    with pytest.raises(KeyboardInterrupt):
        make.write(static, tmp_path / "site")

    assert not (tmp_path / "site").exists()
    assert [one.name for one in tmp_path.iterdir()] == ["static"]


def test_an_empty_folder_is_taken(static, tmp_path):
    (tmp_path / "site").mkdir()

    make.write(static, tmp_path / "site")

    assert (tmp_path / "site/index.html").is_file()


def test_the_folder_one_stands_in_is_taken_and_stays_the_same_folder(static, tmp_path, monkeypatch, capsys):
    out = tmp_path / "site"
    out.mkdir()
    before = out.stat().st_ino
    monkeypatch.chdir(out)

    assert cli.main(["site", "--out", "."]) == 0

    assert out.stat().st_ino == before
    assert (out / "index.html").is_file()
    assert {one.name for one in tmp_path.iterdir()} == {"static", "site"}


def test_in_an_empty_folder_what_names_other_files_comes_last(static, tmp_path, monkeypatch):
    out = tmp_path / "site"
    out.mkdir()
    replace, moved = site_folder.os.replace, []

    def stop_at_the_worker(source, target):
        if Path(target).name == "sw.js":
            raise KeyboardInterrupt
        moved.append(Path(target).name)
        replace(source, target)

    monkeypatch.setattr(site_folder.os, "replace", stop_at_the_worker)
    with pytest.raises(KeyboardInterrupt):
        make.write(static, out)
    monkeypatch.undo()

    assert moved[-2:] == ["manifest.webmanifest", "index.html"]
    make.write(static, out)
    assert (out / "sw.js").is_file()
    assert len(builds(out)) == 1


def test_what_is_no_build_stays_beside_the_builds(static, tmp_path):
    out, elsewhere = tmp_path / "site", tmp_path / "elsewhere"
    make.write(static, out)
    elsewhere.mkdir()
    for mine in ("mine", "0123456789ABCDEF", "0123456789abcdef0"):
        (out / "app" / mine).mkdir()
    (out / "app" / ("0" * 16)).symlink_to(elsewhere)
    (out / "app" / ("1" * 16)).mkdir()
    before = builds(out)
    change(static, "body { margin: 0 }")

    make.write(static, out)

    assert builds(out) == (before | {build_of(out)}) - {"1" * 16}
    assert elsewhere.is_dir()


def test_builds_that_lie_elsewhere_are_left_alone(static, tmp_path):
    out, elsewhere = tmp_path / "site", tmp_path / "elsewhere"
    make.write(static, out)
    (out / "app").rename(elsewhere)
    (out / "app").symlink_to(elsewhere)
    before = tree(tmp_path)
    change(static, "body { margin: 0 }")
    before["static/styles/base.css"] = b"body { margin: 0 }"

    with pytest.raises(CommandRefused, match="is no folder of this command"):
        make.write(static, out)

    assert tree(tmp_path) == before


_KILLED = """
import sys, time
from pathlib import Path
from server.site import folder, make

def stop(files, place):
    (place / "index.html").write_text("half")
    print("begun", flush=True)
    time.sleep(600)

folder._write = stop
make.write(Path(sys.argv[1]), Path(sys.argv[2]))
"""


@pytest.mark.parametrize("there", ["nothing", "an empty folder", "a site"])
def test_what_a_killed_run_left_goes_with_the_next(static, tmp_path, there):
    out = tmp_path / "site"
    if there == "an empty folder":
        out.mkdir()
    elif there == "a site":
        make.write(static, out)
        change(static, "body { margin: 0 }")
    arguments = [sys.executable, "-c", _KILLED, str(static), str(out)]
    with subprocess.Popen(arguments, cwd=ROOT, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout.readline() == "begun\n"
        process.kill()
    place = tmp_path if there == "nothing" else out
    assert [one for one in place.iterdir() if one.name.startswith(".")], "it left something"

    make.write(static, out)

    assert not list(tmp_path.rglob(".*"))
    assert (out / "index.html").read_text() != "half"


def test_a_new_site_may_be_read_by_who_serves_it(static, tmp_path):
    make.write(static, tmp_path / "site")

    assert stat.S_IMODE((tmp_path / "site").stat().st_mode) == 0o755


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("full", "holds files that are no site of this command"),
        ("file", "is no folder"),
        ("link", "is no folder"),
        ("forged", "holds files that are no site of this command"),
        ("missing/site", "there is no folder"),
    ],
)
def test_a_folder_that_is_not_its_own_is_refused_in_one_sentence_and_left_alone(
    name, sentence, tmp_path, capsys
):
    for folder in ("full", "forged", "elsewhere"):
        (tmp_path / folder).mkdir()
    (tmp_path / "full/letter.txt").write_text("mine")
    (tmp_path / "forged/swaptrail-site.json").write_text("[]")
    (tmp_path / "file").write_text("mine")
    (tmp_path / "link").symlink_to(tmp_path / "elsewhere")
    before = tree(tmp_path)

    assert cli.main(["site", "--out", str(tmp_path / name)]) == 2

    said = capsys.readouterr().err
    assert sentence in said
    assert len(said.splitlines()) == 1
    assert tree(tmp_path) == before


def test_the_command_says_what_the_host_has_to_do(tmp_path, capsys):
    assert cli.main(["site", "--out", str(tmp_path / "site")]) == 0

    said = capsys.readouterr().out
    assert notes() in said
    assert (tmp_path / "site/README.txt").read_text() == notes()
    for word in ("HTTPS", "no-cache", "immutable", "404.html", "any folder", "frame"):
        assert word in notes()


def test_it_works_from_the_wheel_too(installed, tmp_path):
    make.write(installed / "server/_static", tmp_path / "site")

    build = build_of(tmp_path / "site")
    named = tree(tmp_path / "site")
    assert f"app/{build}/styles/app.css" in named
    assert len(named) < 50
