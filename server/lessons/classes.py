"""The exact engine's belief on a job, as the weight of each composition of causes by class.

A cause that no reading speaks for, beside others that explain all, is not counted: dirt on a faulty sensor
that was exchanged is about as likely as it was before, and says nothing of how often there is dirt. Counted,
it would be believed the more often the oftener it is believed.
"""

from server.core.infer.belief import Belief
from server.core.infer.variations import CLASSES
from server.lessons.composed import odds

_LEAST = 1e-5  # the weight of a composition below which it says nothing
_MOST = 4096  # subsets of one component
_TELLS = 3.0  # times that readings make a cause likelier from which they speak for it (Jeffreys; from memory)


def compositions(belief: Belief) -> dict[tuple[int, ...], float]:
    """Returns composition -> weight over the suspects: how many causes of each class are present."""
    classes = [CLASSES.index(belief.model.kinds[cause]) for cause in belief.suspects]
    found: dict[tuple[int, ...], float] = {}
    for branch in belief.branches:
        partial = {_composed(classes, _bits(branch.present)): branch.share}
        for c, members in enumerate(belief.members):
            local: dict[tuple[int, ...], float] = {}
            prior = [odds(belief.model.priors[belief.suspects[n]]) for n in members]
            for mask, share in _spoken_for(branch.components[c].likeliest(_LEAST, _MOST), prior).items():
                key = _composed(classes, [members[n] for n in _bits(mask)])
                local[key] = local.get(key, 0.0) + share
            partial = _together(partial, local)
        for key, share in partial.items():
            found[key] = found.get(key, 0.0) + share
    return {key: share for key, share in found.items() if share > _LEAST}


def _spoken_for(subsets: list[tuple[float, int]], prior: list[float]) -> dict[int, float]:
    """Returns subset -> share, without the causes that are hardly likelier than by their prior odds.

    What stands without such a cause takes the share of what stands with it.
    """
    found = {mask: share for share, mask in subsets}
    for share, mask in sorted(subsets, key=lambda each: (-each[1].bit_count(), each[1])):
        for n in _bits(mask):
            less = mask & ~(1 << n)
            if less and less in found and share <= found[less] * prior[n] * _TELLS:
                found[less] += found.pop(mask)
                break
    return found


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
