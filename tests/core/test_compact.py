"""What is handed over compact is what plain JSON says; what is not whole is refused by name."""

import pytest

from tests.hosts import CoreError

VALUE = {"unit": "A", "seq": 2, "heard": True, "none": None, "codes": [], "at": [{"place": "A"}, 2, [True]]}
COMPACT = {
    "scalars": ["unit", "A", "seq", 2, "heard", True, "none", None, "codes", "at", "place", "value"],
    "shapes": [[[], [11]], [[0, 2, 4, 6], [8, 9]], [[10], []]],
    "value": [0, [1, 1, 3, 5, 7, [-1], [-2, [2, 1], 3, [-1, 5]]]],
}


def test_it_stands_for_the_value(core):
    assert core("canonical", compact=COMPACT) == core("canonical", value=VALUE)


def test_no_two_objects_are_one(core):
    shapes = [[[], [0]], [[1], []]]
    twice = {"scalars": ["value", "a", 1], "shapes": shapes, "value": [0, [-2, [1, 2], [1, 2]]]}

    assert core("canonical", compact=twice)["text"] == '[{"a":1},{"a":1}]'


@pytest.mark.parametrize(
    "compact",
    [
        pytest.param({}, id="nothing"),
        pytest.param({**COMPACT, "scalars": ["value"]}, id="a text that is not there"),
        pytest.param({**COMPACT, "shapes": []}, id="a shape that is not there"),
        pytest.param({**COMPACT, "value": [0]}, id="fewer values than the shape has"),
        pytest.param({**COMPACT, "value": 1}, id="no object of arguments"),
        pytest.param([], id="a list"),
    ],
)
def test_what_is_not_whole_is_refused(core, compact):
    with pytest.raises(CoreError) as refused:
        core("canonical", compact=compact)

    assert refused.value.field == "compact"
