"""Values for canonical JSON, the same for every host: the core in both of its hosts, the phone's own code."""

import random

import pytest

# github.com/cyberphone/json-canonicalization, testdata/: the vectors without floats, by digest
VECTORS = [
    pytest.param(
        '[56,{"1":[],"10":null,"d":true}]',
        "099601b171cafed97c333f8878d68e7f8c8f795412adb34b2fdcf0e7c7beac42",
        id="arrays",
    ),
    pytest.param(
        '{"Unnormalized Unicode":"A\\u030a"}',
        "0d99aad92a125196ff887876643fd3206786a84ddce2cee52ba4ad256d2381d3",
        id="unicode",
    ),
    pytest.param(
        '{"peach":"This sorting order","p\\u00e9ch\\u00e9":"is wrong according to French",'
        '"p\\u00eache":"but canonicalization MUST","sin":"ignore locale"}',
        "d99d0ebdcb0033cb858cfa830ae46bc0fb3309413b271f1da828c89901a27ed5",
        id="french",
    ),
    pytest.param("{}", "44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a", id="empty"),
]

CHARACTERS = 'aZ09 "\\/\b\f\n\r\t\x00\x1f\x7f\u0080äß€\u2028\u2029\ufeff\ufffd😀𝄞'
LARGEST = 2**53 - 1


def random_value(source, depth=0):
    """Return a value of the narrow set."""
    kind = source.randrange(8 if depth < 4 else 6)
    if kind < 3:
        return [None, True, False][kind]
    if kind == 3:
        return source.choice([0, 1, -1, LARGEST, -LARGEST, source.randrange(-(10**9), 10**9)])
    if kind < 6:
        return "".join(source.choices(CHARACTERS, k=source.randrange(8)))
    if kind == 6:
        return [random_value(source, depth + 1) for _ in range(source.randrange(5))]
    keys = ["".join(source.choices("abzAZ09_.$~ \t", k=source.randrange(5))) for _ in range(5)]
    return {key: random_value(source, depth + 1) for key in keys}


def random_values(count: int) -> list:
    """Return so many values of the narrow set, the same at each call."""
    source = random.Random(8785)
    return [random_value(source) for _ in range(count)]


def in_our_set(value) -> bool:
    """Tell whether all keys are ASCII, as we want them; RFC 8785 takes others too."""
    if isinstance(value, dict):
        return all(key.isascii() and in_our_set(inner) for key, inner in value.items())
    return not isinstance(value, list) or all(map(in_our_set, value))
