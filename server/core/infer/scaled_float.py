"""Numbers with a float's precision and no limit to their size.

Hundreds of readings that contradict each other multiply to less than the smallest float. The same
code then runs once more on these, so that an answer is never cut short.
"""

import math


class ScaledFloat:
    """value * 2**exponent, with value kept between a half and one (or zero)."""

    def __init__(self, value: float, exponent: int):
        if value == 0:
            self.value = 0.0
            self.exponent = 0
        else:
            self.value, extra = math.frexp(value)
            self.exponent = exponent + extra

    def __mul__(self, other):
        if not isinstance(other, ScaledFloat):
            return ScaledFloat(self.value * other, self.exponent)
        return ScaledFloat(self.value * other.value, self.exponent + other.exponent)

    def __add__(self, other):
        if not isinstance(other, ScaledFloat):
            other = ScaledFloat(other, 0)
        big, small = (self, other) if self._above(other) else (other, self)
        gap = big.exponent - small.exponent
        # Beyond this gap the smaller one is less than half of the last bit.
        if small.value == 0 or gap > 60:
            return big
        return ScaledFloat(big.value + math.ldexp(small.value, -gap), big.exponent)

    def __truediv__(self, other):
        """Return an ordinary float; only ratios leave the reasoning."""
        ratio = self.value / other.value
        shift = self.exponent - other.exponent
        if shift < -1000:
            return 0.0
        return math.ldexp(ratio, shift)

    def __eq__(self, other):
        return self.value == 0 and other == 0

    def __lt__(self, other):
        """Compare with an ordinary float; nothing else is asked for."""
        return not self._above(ScaledFloat(other, 0))

    def _above(self, other) -> bool:
        if self.value == 0 or other.value == 0:
            return other.value == 0
        return self.exponent >= other.exponent


SCALED_ONE = ScaledFloat(1.0, 0)
