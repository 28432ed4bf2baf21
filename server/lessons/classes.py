"""The exact engine's belief on a job, as the weight of each composition of causes by class."""

from server.core.infer.belief import Belief
from server.core.infer.variations import CLASSES

_LEAST = 1e-5  # the weight of a composition below which it says nothing
_MOST = 4096  # subsets of one component


def compositions(belief: Belief) -> dict[tuple[int, ...], float]:
    """Returns composition -> weight over the suspects: how many causes of each class are present."""
    classes = [CLASSES.index(belief.model.kinds[cause]) for cause in belief.suspects]
    found: dict[tuple[int, ...], float] = {}
    for branch in belief.branches:
        partial = {_composed(classes, _bits(branch.present)): branch.share}
        for c, members in enumerate(belief.members):
            local: dict[tuple[int, ...], float] = {}
            for share, mask in branch.components[c].likeliest(_LEAST, _MOST):
                key = _composed(classes, [members[n] for n in _bits(mask)])
                local[key] = local.get(key, 0.0) + share
            partial = _together(partial, local)
        for key, share in partial.items():
            found[key] = found.get(key, 0.0) + share
    return {key: share for key, share in found.items() if share > _LEAST}


def _together(left: dict, right: dict) -> dict:
    found: dict[tuple[int, ...], float] = {}
    for one, share in left.items():
        for other, more in right.items():
            key = tuple(a + b for a, b in zip(one, other, strict=True))
            found[key] = found.get(key, 0.0) + share * more
    return found


def _composed(classes: list[int], suspects: list[int]) -> tuple[int, ...]:
    counts = [0] * len(CLASSES)
    for suspect in suspects:
        counts[classes[suspect]] += 1
    return tuple(counts)


def _bits(mask: int) -> list[int]:
    return [n for n in range(mask.bit_length()) if mask >> n & 1]
