"""Puts the answer together: everything of section 6, as integers."""

from ..infer import explanations
from ..infer import holds
from ..infer.belief import Belief
from ..infer.case_form import read
from ..infer.figures import WHOLE
from ..infer.figures import parts
from ..infer.model import Model
from ..infer.variations import Variations
from .planner import next_moves

# A phone shows a handful; the command line asks for as many as there are.
MOST_EXPLANATIONS = 128


def reason(raw: dict, most: int = MOST_EXPLANATIONS, plan: bool = True) -> dict:
    """Return what a case says: causes, explanations, verdict, clear, and what to do next.

    Without `plan` nothing is looked ahead, which is what takes long, and `next` is empty.

    At most `most` explanations are listed, the likeliest, each exact; when there are more,
    `unlisted` holds their probability together. One that rounds to nothing is never listed.
    """
    belief = Belief(Model(read(raw)))
    return concluded(belief, explanations.likeliest(belief, most), Variations(belief), most, plan)


def concluded(belief, entries: list, variations, most: int, plan: bool) -> dict:
    """Return what a belief, or a mixture of several, says with its likeliest `entries`."""
    model = belief.model
    causes = _causes(belief)
    listed = explanations.named(belief, entries)
    answer = {
        "causes": causes,
        "explanations": listed,
        "clear": parts(belief.absent(model.live())),
        "ignored": [{"test": n, "reason": why} for n, why in model.ignored],
        "next": [],
    }
    answer.update(holds.judged(answer, variations, model.case, _live_suspects(belief)))
    if plan:
        answer["next"] = next_moves(belief, entries, answer, variations)
    without = model.case.sort.without
    answer["causes"] = [each for each in causes if _kind(each["cause"]) not in without]
    if len(entries) == most:
        total = 0.0
        for chance, _ in entries:
            total = total + chance
        answer["unlisted"] = max(0, WHOLE - parts(total))
    return answer


def _live_suspects(belief) -> list:
    """Return the names of the suspects that would act in a test made now."""
    live = belief.model.live()
    return [belief.model.names[cause] for cause in belief.suspects if live[cause]]


def _kind(cause: str) -> str:
    """Return the kind of a cause by name, of what came after a repair too."""
    return cause.partition(":")[0].partition("#")[0]


def _causes(belief) -> list:
    rows = []
    for cause, chance in enumerate(belief.marginals()):
        rows.append((-parts(chance), belief.model.names[cause]))
    return [{"cause": name, "probability": -less} for less, name in sorted(rows)]
