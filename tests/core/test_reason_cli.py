"""`swaptrail reason CASE.json`: decimals out, one line and exit code 2 for bad input."""

import json

import pytest

from server.commands.reason import run
from server.core.plan.answer import reason

CASE = {
    "positions": [{"id": place, "group": "rear", "reach_minutes": 3} for place in ("p", "q")],
    "units": [{"id": "A"}, {"id": "B"}],
    "tests": [{"fitted": {"p": "A", "q": "B"}, "faulted": ["p"]}],
}


@pytest.fixture
def file(tmp_path):
    return tmp_path / "CASE.json"


def test_prints_the_published_form_in_decimals(file, capsys):
    file.write_text(json.dumps(CASE), "utf-8")

    assert run(str(file)) == 0

    answer = json.loads(capsys.readouterr().out)
    exact = reason(CASE, most=65536)
    conclusions = ["verdict", "holds", "clear", "clear_holds", "certain"]
    assert list(answer) == ["causes", "explanations", *conclusions, "ignored", "next"]
    assert answer["holds"]["lowest"] == exact["holds"]["lowest"] / 1_000_000_000
    for shown, inside in zip(answer["causes"], exact["causes"], strict=True):
        assert shown == {
            "cause": inside["cause"],
            "probability": inside["probability"] / 1_000_000_000,
        }
    best = next(move for move in answer["next"] if move["move"] == "exchange")
    assert best["fitted"] == {"p": "B", "q": "A"}
    assert best["minutes"] == 8.4  # reach 3 and 3, plug in 0.2 and 0.2, a test 2
    assert 0 < best["bits"] < 2
    assert sum(outcome["chance"] for outcome in best["outlook"]) == pytest.approx(1, abs=1e-12)


def test_a_verdict_is_printed_with_the_factors_at_which_it_breaks(file, capsys):
    follows = [
        {"fitted": {"p": "A", "q": "B"}, "faulted": ["p"]},
        {"fitted": {"p": "B", "q": "A"}, "faulted": ["q"]},
    ]
    file.write_text(json.dumps(CASE | {"tests": follows}), "utf-8")
    run(str(file))

    verdict = json.loads(capsys.readouterr().out)["verdict"]

    assert verdict["causes"] == ["unit:A"]
    assert verdict["breaks"] == {"blocked": 4.7, "circuit": 61.0}


def test_explanations_add_up_to_one(file, capsys):
    file.write_text(json.dumps(CASE), "utf-8")
    run(str(file))

    answer = json.loads(capsys.readouterr().out)

    total = sum(explanation["probability"] for explanation in answer["explanations"])
    assert total + answer.get("unlisted", 0) == pytest.approx(1, abs=1e-7)


BAD = {
    "a field out of range": (json.dumps(CASE | {"confidence": 2}), "confidence: found 2, wanted"),
    "no JSON": ("{positions", "wanted JSON"),
    "an empty file": ("", "wanted JSON"),
    "a key twice": ('{"positions": [], "positions": []}', "positions: found"),
    "a key twice within": (
        '{"positions": [{"id": "p"}], "tests": [{"fitted": {"p": "A", "p": "B"}}]}',
        "tests[0].fitted.p: found",
    ),
    "not a number": ('{"positions": [{"id": "p"}], "confidence": NaN}', "confidence: found NaN,"),
    "an infinite number": (
        '{"positions": [{"id": "p"}], "rates": {"unit": -Infinity}}',
        "rates.unit: found -Infinity,",
    ),
    "a number of 5000 digits": ('{"confidence": ' + "9" * 5000 + "}", "confidence: found"),
    "half a character": ('{"positions": [{"id": "p", "name": "\\ud800"}]}', "positions[0].name: found half"),
    "half a character in a key": ('{"\\ud800": []}', "case: found half"),
    "an object that looks like a message": (
        '{"positions": {"msg": "reasons-then-gone"}}',
        "positions: found",
    ),
    "what is no message": (
        '{"positions": [{"id": {"msg": "x", "args": {}}}]}',
        "positions[0].id: found an object with 2 keys",
    ),
    "nested without end": ("[" * 100_000, "wanted"),
    "a list": ("[]", "case: found a list of 0, wanted an object"),
    "a line break in a name": ('{"posi\\ntions": 1, "positions": [{"id": "p"}]}', "posi tions"),
}


@pytest.mark.parametrize("name", BAD)
def test_bad_input_is_one_line_and_exit_code_2(name, file, capsys):
    text, said = BAD[name]
    file.write_text(text, "utf-8")

    assert run(str(file)) == 2

    out, error = capsys.readouterr()
    assert out == ""
    assert said in error
    assert len(error.splitlines()) == 1


def test_bytes_that_are_no_text_are_bad_input(file, capsys):
    file.write_bytes(b'{"positions": "\xff"}')

    assert run(str(file)) == 2
    assert "wanted UTF-8 text" in capsys.readouterr().err


def test_a_file_that_is_not_there_is_bad_input(file, capsys):
    assert run(str(file)) == 2

    assert 'found "no such file", wanted a file that can be read' in capsys.readouterr().err
