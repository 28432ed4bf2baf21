"""Each sort of part there is goes from open to close in its own words, with the right verdict."""

import re

import pytest

from server.core.parts import sorts
from server.words.source import sources
from server.words.speech import Speech
from tests.core.test_another_sort import Reader

# What only a parking sensor has, is called or does.
OF_THE_FIRST_SORT = re.compile(
    r"\b(sensors?|bumper|parking aid|paint|ice|sounder|pole|walk-behind|ticks?|ticking|catches|self-test)\b",
    re.IGNORECASE,
)
SORTS = {
    "ignition-coil/row-4": ("cylinder-2", "cylinder-3"),
}


def begun(driver, layout):
    driver.open(layout=layout, part="")
    driver.tap()
    driver.tap()
    return driver


@pytest.mark.parametrize("layout", SORTS)
def test_a_fault_that_follows_goes_from_open_to_close(core, layout):
    bad, good = SORTS[layout]
    job = begun(Reader(core), layout)
    job.test(bad)
    job.photograph()
    job.exchange(**{bad: f"v1.{good}", good: f"v1.{bad}"})
    job.test(good)

    assert job.view()["reasoning"]["verdict"][0]["cause"] == f"unit:v1.{bad}"
    job.new_unit(good, part="")
    job.guided()
    while job.step()["form"] == "test":
        job.test()
    job.finish()

    assert job.view()["closed"]
    assert [said for said in job.everything() if OF_THE_FIRST_SORT.search(said)] == []


@pytest.mark.parametrize("sort", sorts.SORTS, ids=lambda sort: sort.identity)
def test_no_word_of_a_sort_is_left_unsaid(sort):
    """Ids are put together from a sort's name, so the look for words that nothing says skips them."""
    declared = set(re.findall(rf"{sort.identity}-[a-z0-9-]+", declaration(sort)))

    own = {each.id for each in sources("en") if each.area == sort.identity and "." not in each.id}
    assert own - {f"part-{sort.identity}"} == declared


def declaration(value) -> str:
    """Return all that a sort declares, as text."""
    if isinstance(value, dict):
        return " ".join(f"{key} {declaration(value[key])}" for key in value)
    if isinstance(value, list | tuple):
        return " ".join(declaration(each) for each in value)
    if callable(value):
        return declaration(value())
    return declaration(vars(value)) if hasattr(value, "__dict__") else str(value)


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("layout", SORTS)
def test_it_is_told_in_each_language_without_a_gap(layout, language):
    speech = Speech(language)
    [each] = [known for known in sorts.all_layouts() if known["id"] == layout]
    said = [speech.text(words) for words in each["called"].values()]
    assert len(set(said)) == len(each["positions"])
    assert all(speech.text(words) for words in [each["name"], *each["complaints"]])
