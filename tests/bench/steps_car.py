"""The cars of the counted stories: which sensor sits where in truth, and what a self-test then shows."""

from collections import namedtuple

REAR = ("left outer", "left inner", "right inner", "right outer")
BOTH = tuple(f"{bumper} {place}" for bumper in ("front", "rear") for place in REAR)
# At which tests a fault that comes and goes is there; then from the front again.
_COMES = (True, False, True, True, False)

#: What is wrong, how the layout is called on the screen, and what a person says of it.
Story = namedtuple("Story", ["name", "layout", "places", "bad_sensors", "bad_wires", "comes_and_goes"])

STORIES = {
    story.name: story
    for story in (
        Story("follows", "Rear, 4 sensors", REAR, ("right outer",), (), False),
        Story("stays", "Rear, 4 sensors", REAR, (), ("right outer",), False),
        Story("two faults", "Rear, 4 sensors", REAR, ("right outer", "left inner"), (), False),
        Story("comes and goes", "Rear, 4 sensors", REAR, ("right outer",), (), True),
        Story("eight positions", "Front and rear, 8 sensors", BOTH, ("rear right outer",), (), False),
    )
}


class Car:
    """What is true, whatever the app believes; a sensor is a number, and gets its label when it is pulled."""

    def __init__(self, story: Story):
        """Bring the car in with its faults."""
        self.story = story
        self.sits = {place: number for number, place in enumerate(story.places)}
        self._bad = {self.sits[place] for place in story.bad_sensors}
        self._wires = set(story.bad_wires)
        self._labels: dict[str, int] = {}
        self.tests = 0

    def self_test(self) -> list[str]:
        """Return the places that show a fault now."""
        shows = not self.story.comes_and_goes or _COMES[self.tests % len(_COMES)]
        self.tests += 1
        found = [place for place in self.story.places if self._is_faulty(place)]
        return found if shows else []

    def _is_faulty(self, place: str) -> bool:
        return place in self._wires or self.sits[place] is None or self.sits[place] in self._bad

    def wire_is_bad(self, place: str) -> bool:
        """Tell whether a look at the connector finds something."""
        return place in self._wires

    def repair(self, place: str) -> None:
        """Put the pin back in."""
        self._wires.discard(place)

    def pull(self, place: str, label: str) -> None:
        """Take the sensor out of its place and see that it carries this label."""
        self._labels[label] = self.sits[place]
        self.sits[place] = None

    def unpack(self, label: str) -> None:
        """Take a new sensor out of its box and label it."""
        self._labels[label] = max([len(self.story.places) - 1, *self._labels.values()]) + 1

    def fit(self, label: str, place: str) -> None:
        """Put the sensor with this label into a place."""
        self.sits[place] = self._labels[label]

    def knows(self, label: str) -> bool:
        """Tell whether a sensor carries this label already."""
        return label in self._labels
