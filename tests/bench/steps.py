"""What a job costs at the phone: taps, typed characters, screens and the words on them, story by story.

    python -m tests.bench.steps                      all stories
    python -m tests.bench.steps follows              one of them
    python -m tests.bench.steps follows --by-hand    labels written by hand, none printed
    python -m tests.bench.steps follows --screens    screen by screen

A practised person's finger in a real browser, from the list of jobs to the closed job. A tap is a touch of
any control, a field to be typed into as well. A screen is a view whose step or heading is another than
before, or over which something opened. Words are those that can be read on it, buttons and what repeats
included, at its fullest. Figures, never asserted.
"""

import argparse
import sys
import tempfile
from pathlib import Path

from server.web.shell import find_static
from tests.bench.steps_car import STORIES
from tests.bench.steps_car import Car
from tests.bench.steps_car import Story
from tests.bench.steps_count import Seen
from tests.bench.steps_finger import Finger
from tests.browser.phone import Phone
from tests.static.app_server import AppServer


def walk(story: Story, *, by_hand: bool = False) -> list[Seen]:
    """Do one story on a phone of its own and return what each screen cost."""
    with tempfile.TemporaryDirectory() as folder:
        server = AppServer(Path(folder) / "data", find_static())
        phone = Phone(Path(folder) / "phone", server.base)
        finger = Finger(phone, Car(story), by_hand=by_hand)
        try:
            phone.visit(server.link())
            finger.does_the_job()
            assert not phone.complaints.heard, phone.complaints.heard
        finally:
            phone.close()
            server.close()
    return finger.count.screens


def _row(name: str, screens: list[Seen]) -> str:
    taps, characters, words = (sum(each) for each in list(zip(*screens, strict=True))[2:])
    return f"{name:28}{taps:6}{characters:12}{len(screens):9}{words:8}"


def main() -> int:
    """Print the figures of the stories that were asked for."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("stories", nargs="*", metavar="STORY", help=", ".join(STORIES))
    parser.add_argument("--by-hand", action="store_true", help="labels written by hand")
    parser.add_argument("--screens", action="store_true", help="screen by screen")
    asked = parser.parse_args()
    print(f"{'story':28}{'taps':>6}{'characters':>12}{'screens':>9}{'words':>8}")
    for name in asked.stories or STORIES:
        screens = walk(STORIES[name], by_hand=asked.by_hand)
        print(_row(name + (", by hand" if asked.by_hand else ""), screens), flush=True)
        if asked.screens:
            for each in screens:
                spent = f"{each.taps:3} taps {each.characters:3} typed {each.words:4} words"
                print(f"    {spent}  {each.step}: {each.heading}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
