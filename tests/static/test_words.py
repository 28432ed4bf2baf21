"""Python and JavaScript say the same text, in every language: all messages by their examples, and figures."""

import logging
from datetime import UTC

import pytest

from server.words.figures import TOO_LATE
from server.words.files import languages
from server.words.files import source_of
from server.words.source import sources
from server.words.speech import Speech
from tests.odd_entries import TEXTS
from tests.static.phone_parts import open_bare

_SAY = """async ([language, text, asked]) => {
  const { Speech } = await import('/app/parts.js');
  const faults = [];
  const speech = new Speech(language, text, (fault) => faults.push(fault));
  return [asked.map((each) => speech.render(each)), faults];
}"""
COUNTS = (0, 1, 2, 3, 5, 11, 21, 100, 1000, 9999, 10_000, 1_000_000, 1_234_567)
DAY = 24 * 60 * 60 * 1000


def figure(kind, of):
    return {"figure": kind, "of": of}


def message(name, /, **args):
    return {"msg": name, "args": args}


PERCENTS = (
    0, 1, 400_000, 499_999, 500_000, 999_999, 1_000_000, 1_049_999, 1_050_000, 40_000_000, 49_499_999,
    49_500_000, 49_949_999, 49_950_000, 49_999_999, 50_000_000, 50_499_999, 54_999_999, 55_000_000,
    500_000_000, 944_499_999, 944_999_999, 945_000_000, 945_500_000, 949_499_999, 949_500_000, 949_999_999,
    950_000_000,
    950_499_999, 950_500_000, 951_000_000, 987_650_000, 998_949_999, 999_000_000, 999_400_000, 999_499_999,
    999_500_000, 999_500_001, 999_999_999, 1_000_000_000,
)  # fmt: skip
DECIMALS = (
    (0, 0), (0, 1), (5, 1), (-5, 1), (1205, 2), (-1205, 2), (100, 2), (7, 3), (1_234_567, 2), (999_999, 1),
    (12_345_678, 3), (12, 0),
)  # fmt: skip
TIMES = (
    0, 1, 999, 59_999, 60_000, DAY - 1, DAY, 951_782_400_000, 1_709_208_000_000, 1_795_824_000_000,
    # Beyond what is shown.
    -1, TOO_LATE - 1, TOO_LATE, 8_640_000_000_000_001, 2**53 - 1,
)  # fmt: skip
LISTS = (
    [], ["a"], ["a", "b"], ["a", "b", "c"], ["a", "b", "c", "d"], ["", "a", "", "b"],
    # Spanish: 'e' before the sound of i, 'u' before the sound of o.
    ["derecho", "izquierdo"], ["derecho", "Izquierdo"], ["a", "hilo"], ["a", "hierro"], ["a", "interior"],
    ["a", "imán"], ["siete", "ocho"], ["a", "otro"], ["a", "hora"], ["a", "uno"], ["a", "¿o?"], ["x", "í"],
)  # fmt: skip

FIGURES = [
    *(figure("percent", each) for each in PERCENTS),
    *(figure("decimal", list(each)) for each in DECIMALS),
    *(figure("whole", sign * each) for each in (*COUNTS, 999, 12_345, 10**12) for sign in (1, -1)),
    *(figure(kind, each) for kind in ("day", "time", "moment") for each in TIMES),
    *(figure("day", month * 30 * DAY) for month in range(13)),
    *(figure(kind, each) for kind in ("and", "or", "sentences") for each in LISTS),
    # Nested, as the core hands them out.
    {"a": [figure("and", [message("figures-minutes", count=1), figure("percent", 951_000_000)])], "n": 3},
    message("figures-moment", day=figure("day", DAY), time="09:05"),
    *(message("refusals-no-position", position=text) for text in TEXTS if "\ud83d" not in text),
]


def by_examples(language):
    """Each message with the examples of its arguments, then with each choice and count that it may meet."""
    told = {each.id: each.examples for each in sources("en")}
    for source in sources(language):
        if "." in source.id:
            continue
        args = {**dict.fromkeys(source.arguments, "7"), **told.get(source.id, {}), **source.examples}
        yield message(source.id, **args)
        for name, example in args.items():
            choices = source.choices.get(name, ())
            others = COUNTS if isinstance(example, int) else choices
            yield from (message(source.id, **{**args, name: other}) for other in others)


@pytest.fixture
def utc_page(make_context, shared_app):
    """Give a page of the app whose clock is in UTC, as the server's speech is here."""
    return open_bare(make_context(timezone_id="UTC"), shared_app.base)


@pytest.mark.parametrize("language", languages())
def test_both_sides_say_the_same(utc_page, caplog, language):
    asked = [*by_examples(language), *FIGURES]
    speech = Speech(language, UTC)
    with caplog.at_level(logging.ERROR):
        expected = [speech.render(each) for each in asked]
    assert caplog.text == ""

    said, faults = utc_page.evaluate(_SAY, [language, source_of(language), asked])

    assert faults == []
    differs = [each for each in zip(asked, said, expected, strict=True) if each[1] != each[2]]
    assert differs == []
    assert len(asked) > 700


def test_a_message_that_lacks_an_argument_shows_its_id_and_says_what_it_lacks(utc_page):
    asked = [message("you-language-lacks", tongue="x"), message("you-odd", count=1)]

    said, faults = utc_page.evaluate(_SAY, ["es", source_of("es"), asked])

    assert said == ["you-language-lacks", "you-odd"]
    assert "you-language-lacks cannot be said in es" in faults[0]
    assert "$language" in faults[0]
    assert '{"tongue":"x"}' in faults[0]
    assert faults[1] == 'Message you-odd is not there in es; arguments {"count":1}.'


def test_a_page_that_says_what_is_not_there_says_so_to_who_looks(make_context, shared_app):
    page = open_bare(make_context(), shared_app.base)
    heard = []
    page.on("console", lambda said: heard.append((said.type, said.text)))

    said = page.evaluate(
        """async () => {
          const { startWords, say } = await import('/app/parts.js');
          await startWords();
          return [say('you-odd', { count: 1 }), say('you-language-phone')];
        }"""
    )

    assert said == ["you-odd", "As the phone has it"]
    assert heard == [("error", 'Message you-odd is not there in en; arguments {"count":1}.')]
