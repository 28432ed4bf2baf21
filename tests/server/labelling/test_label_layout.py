"""Layouts: what is asked for, what is refused, and how the symbol suits the room and the distance."""

import pytest

from server.core.codes import labels
from server.core.codes.labels import address
from server.core.errors import BadInput
from server.core.printing import scan_distance
from server.core.printing.advice import refuse_unreadable
from server.core.printing.advice import summary
from server.core.printing.advice import warnings
from server.core.printing.face import ANY_CODE
from server.core.printing.face import Choice
from server.core.printing.face import choices
from server.core.printing.face import choose
from server.core.printing.layout import layout_of
from server.labelling.symbol import face_for
from server.labelling.symbol import matrix
from server.labelling.symbol import versions
from tests.said import english
from tests.said import refusing
from tests.server.phone import BASE

# ISO/IEC 18004, capacity in alphanumeric mode of versions 1 to 4 by level (facts agreed on by two
# independent encoders), and modules a side: 17 + 4 * version.
CAPACITIES = {"L": (25, 47, 77, 114), "M": (20, 38, 61, 90), "Q": (16, 29, 47, 67), "H": (10, 20, 35, 50)}


@pytest.mark.parametrize("level", CAPACITIES)
def test_the_symbol_is_the_smallest_that_the_standard_allows(level):
    for version, capacity in enumerate(CAPACITIES[level], 1):
        assert len(matrix("A" * capacity, level)) == 17 + 4 * version
        assert len(matrix("A" * (capacity + 1), level)) == 17 + 4 * (version + 1)
        room = (17 + 4 * version + 8) * 5
        assert Choice(level, version, 5) in choices(versions("A" * capacity), room)
        assert Choice(level, version + 1, 5) in choices(versions("A" * (capacity + 1)), room + 20)


def test_the_best_level_is_taken_that_leaves_modules_wide_enough():
    text = address(ANY_CODE, BASE)
    assert len(text) == 29  # H wants version 3 (37 modules with the margin), Q version 2 (33), M and L too
    found = choices(versions(text), 37 * 5)
    assert found == [Choice("H", 3, 5), Choice("Q", 2, 5), Choice("M", 2, 5), Choice("L", 2, 5)]
    assert choose(found, 5).level == "H"
    found = choices(versions(text), 37 * 5 - 1)  # H has to make do with 4 dots now
    assert choose(found, 5) == Choice("Q", 2, 5)
    assert choose(found, 6) == Choice("Q", 2, 5)  # nothing is wide enough: the widest
    long = address(ANY_CODE, "https://swaptrail.workshop.lan:48765")
    assert [choice.version for choice in choices(versions(long), 400)] == [4, 3, 3, 2]
    assert choose(choices(versions(long), 37 * 5), 5) == Choice("Q", 3, 5)
    assert choose(choices(versions(long), 33 * 6), 6) == Choice("L", 2, 6)


def test_nothing_is_drawn_where_not_even_one_dot_fits():
    assert choose(choices(versions(address(ANY_CODE, BASE)), 20), 4) is None
    with refusing(r"label: found .*8 x 8 mm.* wanted .* the address https://aaa"):
        face_for(layout_of({"roll": "8x8"}), "https://" + "a" * 250, 20)


def test_the_specimen_code_is_never_issued():
    assert len(ANY_CODE) == labels.CODE_LENGTH
    assert not labels.may_be_issued(ANY_CODE)


@pytest.mark.parametrize(
    ("options", "page", "grid"),
    [
        ({}, (2480, 3508), (7, 8)),
        ({"paper": "letter"}, (2550, 3300), (7, 7)),
        ({"paper": "letter", "dpi": "203"}, (1726, 2233), (7, 7)),
        ({"grid": "3x8"}, (2480, 3508), (3, 8)),
        ({"grid": "3X8"}, (2480, 3508), (3, 8)),  # on a phone, a keyboard begins with a capital
        ({"label": "38.1x21.2", "grid": "5x13", "gap": "2.5x0", "precut": "yes"}, (2480, 3508), (5, 13)),
        ({"label": "63,5x38,1", "gap": "2.5x0", "precut": "yes"}, (2480, 3508), (3, 7)),
        ({"roll": "30x20"}, (240, 160), (1, 1)),
        ({"roll": "50 × 30", "dpi": "300"}, (591, 354), (1, 1)),
    ],
)
def test_a_layout_is_in_whole_dots_of_the_printer(options, page, grid):
    layout = layout_of(options)
    assert (layout.page_width, layout.page_height) == page
    assert (layout.columns, layout.rows) == grid
    for place in range(layout.labels):
        x, y = layout.corner(place)
        assert 0 <= x <= page[0] - layout.width
        assert 0 <= y <= page[1] - layout.height


def test_margin_and_gaps_are_where_they_were_measured():
    asked = {"grid": "3x8", "label": "60x30", "margin": "10x12.7", "gap": "2.54x3", "dpi": "300"}
    layout = layout_of(asked)
    assert layout.corner(0) == (118, 150)  # 10 mm and 12.7 mm at 300 dots in 25.4 mm
    assert layout.corner(4) == (118 + 709 + 30, 150 + 354 + 35)


@pytest.mark.parametrize(
    ("options", "said"),
    [
        ({"paper": "a5"}, 'paper: found "a5", wanted one of a4, letter'),
        ({"grid": "0x8"}, 'grid: found "0x8", wanted columns and rows'),
        ({"grid": "7by8"}, 'grid: found "7by8", wanted columns and rows'),
        ({"grid": "2.5x8"}, 'grid: found "2.5x8", wanted columns and rows'),
        ({"grid": "40x40"}, 'grid: found "40x40", wanted few enough'),
        ({"grid": "7x8", "label": "40x30"}, '280 mm wide", wanted at most 210 mm'),
        ({"grid": "7x8", "label": "26x40"}, 'mm high", wanted at most 297 mm'),
        ({"label": "26"}, 'label: found "26", wanted two lengths in millimetres'),
        ({"label": "5x5"}, 'label: found "5x5", wanted sides of 8 to 300 mm'),
        ({"gap": "-1x0"}, 'gap: found "-1x0"'),
        ({"margin": "wide"}, 'margin: found "wide"'),
        ({"precut": "maybe"}, 'precut: found "maybe", wanted yes or no'),
        ({"dpi": "600"}, 'dpi: found "600", wanted one of 203, 300'),
        ({"roll": "30"}, 'roll: found "30"'),
        ({"roll": "30x20", "grid": "2x2"}, 'grid: found "2x2", wanted nothing beside a roll'),
    ],
)
def test_what_cannot_be_laid_out_is_refused_with_field_found_and_wanted(options, said):
    with pytest.raises(BadInput) as refused:
        layout_of(options)
    assert said in english(refused.value.message())


def test_the_distance_follows_from_pixels_and_angle():
    """By hand: 1280 pixels over 2 * tan(32.5 degrees) = 1.2741 times the distance, 3 pixels a module."""
    assert scan_distance.farthest_cm(4, 203) == int(4 * 2.54 / 203 * 1280 / (3 * 1.2741)) == 16
    assert scan_distance.wanted_dots(300, 20) == 8  # 0.597 mm are 7.05 dots
    assert scan_distance.wanted_dots(300, 5) == 4  # 0.149 mm are 1.8 dots; the printer wants 4
    assert scan_distance.wanted_dots(203, 20) == 5  # 4.77 dots


@pytest.mark.parametrize("distance", ["4", "101", "far", "-10", ""])
def test_a_distance_that_is_none_is_refused(distance):
    with refusing(r"distance: found .* wanted 5 to 100 cm"):
        scan_distance.checked_distance(distance)


@pytest.mark.parametrize(
    ("options", "distance", "said"),
    [
        ({}, 20, []),
        ({"paper": "letter"}, 20, []),
        ({"roll": "30x20"}, 15, []),
        ({"roll": "50x30"}, 20, []),
        (
            {"roll": "30x20"},
            20,
            ["Too small to scan from 20 cm: a module of 0.50 mm scans from up to 16 cm."],
        ),
        ({}, 40, ["Too small to scan from 40 cm"]),
        ({"roll": "20x20"}, 5, ["The print comes to 0.3 mm of the label's edge."]),
        (
            {"roll": "12x12"},
            20,
            ["Too fine for this printer: a module is 2 dots wide", "Too small to scan", "The print comes to"],
        ),
        ({"roll": "16x16"}, 10, ["Too fine for this printer: a module is 3 dots", "The print comes to"]),
        ({"roll": "8x40", "dpi": "300"}, 5, ["Too fine for this printer", "The code in letters is only"]),
    ],
)
def test_a_label_that_will_be_hard_to_read_is_warned_about(options, distance, said):
    layout = layout_of(options)
    found = english(warnings(layout, face_for(layout, BASE, distance), distance))
    assert len(found) == len(said), found
    for warning, start in zip(found, said, strict=True):
        assert warning.startswith(start)
    assert "scans from up to" in english(summary(layout, face_for(layout, BASE, distance)))


def test_a_precut_sheet_has_symbols_as_large_as_one_that_is_cut_by_hand():
    """Beside the symbol its own margin is white enough."""
    sheet = {"grid": "5x13", "label": "38.1x21.2", "margin": "4.7x10.7", "gap": "2.5x0"}
    precut, by_hand = layout_of({**sheet, "precut": "yes"}), layout_of(sheet)
    assert face_for(precut, BASE, 20).choice == face_for(by_hand, BASE, 20).choice
    assert warnings(precut, face_for(precut, BASE, 20), 20) == warnings(
        by_hand, face_for(by_hand, BASE, 20), 20
    )


def test_print_that_comes_nearer_to_the_edge_of_a_precut_label_is_warned_about():
    tight = layout_of({"grid": "8x24", "label": "20x10", "precut": "yes", "dpi": "203"})
    found = english(warnings(tight, face_for(tight, BASE, 5), 5))
    assert any("comes to 1.3 mm of the label's edge" in warning for warning in found), found
    by_hand = tight._replace(edge=40)
    assert not any("edge" in warning for warning in english(warnings(by_hand, face_for(by_hand, BASE, 5), 5)))


def test_modules_of_one_dot_are_refused_unless_forced():
    layout = layout_of({"roll": "8x40"})
    face = face_for(layout, BASE, 5)
    assert face.choice.dots == 1
    with refusing(
        r"label: found Roll, labels of 8 x 40 mm, 203 dpi: modules of 1 dot.*, wanted labels with 19"
    ):
        refuse_unreadable(layout, face, False)
    refuse_unreadable(layout, face, True)
    two = layout_of({"roll": "12x12"})
    refuse_unreadable(two, face_for(two, BASE, 5), False)


def test_a_warning_names_the_room_that_would_do():
    """And labels of that size do."""
    layout = layout_of({"roll": "30x20"})
    (warning,) = english(warnings(layout, face_for(layout, BASE, 20), 20))
    assert "The symbol wants 24 mm with its margin" in warning
    larger = layout_of({"roll": "30x25"})
    assert warnings(larger, face_for(larger, BASE, 20), 20) == []


def test_the_rule_names_its_sources():
    for part in ("qrcode.com", "measured", "assumed", "4 dots", "3 pixels", "1280 pixels", "65 degrees"):
        assert part in english(scan_distance.RULE)
