"""Where the pole stands at each position, and what a distance that is shown is worth.

The pole is that of ISO 17386, 75 mm thick and 1,000 mm high; its area behind a car goes to 1 m, in a grid of
0.1 m. Where in it the pole is put is ours: 60 cm off, straight out, at the ends of a bumper turned outwards
by three to four (common practice, no source). All that is typed is in whole centimetres.
"""

from ..facts import looks
from ..facts.amounts import between
from ..facts.looks import distances
from ..facts.several import DISTANCES
from ..messages import decimal
from ..messages import message
from ..messages import sentences
from ..meter import sound
from ..state.job import Job
from ..words import words

POLE_CM, AREA_CM = 60, 100
_USUAL_CM = 180  # how wide a bumper is taken to be until somebody measured it


def standing(job: Job, typed: dict) -> dict:
    """Return where to stand and what was measured, of what was typed: texts by name, "" for nothing.

    `typed` has "width", "celsius" and "at": position -> {"left", "tape", "shown"}. The answer: "problem" (a
    sentence, "" for none), "edges" to draw ([{"edge", "width", "measured", "positions": [{"id", "name", "x",
    "pole_x", "pole_y"}]}], from the left end of the bumper as one faces it), "sound", "judged" ([{"position",
    "words", "fits"}]) and "data", what is recorded of it with the walk.
    """
    figures, problem = _figures(job, typed)
    celsius = figures.get("celsius", sound.COUNTED_WITH)
    width = figures.get("width", _USUAL_CM)
    return {
        "problem": problem,
        "edges": _edges(job, width, figures),
        "sound": _sound(celsius),
        "judged": distances(figures, lambda position: words.position_name(job, position)),
        "data": {} if problem else figures,
    }


def _figures(job: Job, typed: dict) -> tuple:
    """Return (what is recorded, the first problem or "")."""
    figures, problems = {}, []

    def number(text, ends: tuple, called: dict | None):
        value = _whole(text)
        if text.strip() and (value is None or not ends[0] <= value <= ends[1]):
            problems.append(message("guide-stand-wanted", name=called, typed=text, wanted=between(ends)))
        return value

    for field in (looks.WIDTH, looks.CELSIUS):
        value = number(typed.get(field.name, ""), field.ends, field.called)
        if value is not None:
            figures[field.name] = value
    rows = []
    for position in job.positions:
        texts = typed.get("at", {}).get(position["id"], {})
        row = {"position": position["id"]}
        for name in ("left", "tape", "shown"):
            called = message(
                "guide-stand-row",
                position=words.called(job, position),
                name=message("steps-stand-" + name),
            )
            row[name] = number(texts.get(name, ""), DISTANCES[name], called) or 0
        if row["left"] or row["tape"] or row["shown"]:
            rows.append(row)
        if row["left"] > figures.get("width", _USUAL_CM):
            problems.append(message("guide-stand-beyond", position=words.called(job, position)))
    if rows:
        figures["distances"] = rows
    return figures, problems[0] if problems else ""


def _whole(text: str) -> int | None:
    """Return a typed whole number, None where it is none; the minus may be a real one."""
    plain = text.strip().replace("\u2212", "-")
    digits = plain[1:] if plain[:1] in ("-", "+") else plain
    if not digits or len(digits) > 4 or [each for each in digits if each not in "0123456789"]:
        return None
    return -int(digits) if plain[0] == "-" else int(digits)


def _edges(job: Job, width: int, figures: dict) -> list[dict]:
    left = {row["position"]: row["left"] for row in figures.get("distances", []) if row["left"]}
    rows: dict = {}
    for position in job.positions:
        rows.setdefault(position["edge"], []).append(position)
    edges = []
    for edge in sorted(rows):
        # Who faces the front of a vehicle has its left at the right hand.
        placed = rows[edge][::-1] if edge == "front" else rows[edge]
        drawn = []
        for index in range(len(placed)):
            identity = placed[index]["id"]
            # Spread evenly where nobody measured: the ends are half a gap from the corners.
            x = left.get(identity, width * (2 * index + 1) // (2 * len(placed)))
            turned = 0
            if len(placed) > 2 and index in (0, len(placed) - 1):
                turned = -1 if index == 0 else 1
            drawn.append(
                {
                    "id": identity,
                    "name": words.called(job, placed[index]),
                    "x": x,
                    # A triangle of 3, 4 and 5 for the ends, so that the pole is as far from its sensor.
                    "pole_x": x + turned * POLE_CM * 3 // 5,
                    "pole_y": POLE_CM * 4 // 5 if turned else POLE_CM,
                }
            )
        measured = "width" in figures and not [each for each in placed if each["id"] not in left]
        edges.append({"edge": edge, "width": width, "measured": measured, "positions": drawn})
    return edges


def _sound(celsius: int) -> dict:
    fast, shown = sound.speed(celsius), sound.uncorrected(AREA_CM, celsius)
    said = [
        message(
            "guide-stand-sound",
            celsius=str(celsius),
            speed=decimal((fast + 50) // 100, 1),
            echo=decimal((sound.echo(POLE_CM, celsius) + 50) // 100, 1),
            far=str(POLE_CM),
        )
    ]
    if shown != AREA_CM:
        said.append(message("guide-stand-cold", far=str(AREA_CM), shown=str(shown)))
    return sentences(said)
