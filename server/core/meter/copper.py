"""The resistance of a copper wire by its size, length and temperature.

Sizes in mm² have the highest resistance that IEC 60228 allows a flexible wire at 20 °C (classes 5, 6, plain
copper). Gauges have that of solid wire at 20 °C: 18 to 22 as tabulated at
hyperphysics.phy-astr.gsu.edu/hbase/Tables/wirega.html, the others from the rule behind all such tables (ASTM
B258): a diameter of 0.127 mm times 92 to the power of (36 - n)/39, and copper of 1/58 Ω·mm²/m. Each kelvin
raises both by 0.393 % of their value at 20 °C, the temperature coefficient of annealed copper (IEC 60028).
"""

from ..messages import decimal
from ..messages import message

# Size -> micro-ohms a metre at 20 °C.
AT_20 = {
    "0.5": 39000,
    "0.75": 26000,
    "1": 19500,
    "AWG 26": 133910,
    "AWG 24": 84220,
    "AWG 22": 52953,
    "AWG 20": 33301,
    "AWG 18": 20948,
    "AWG 16": 13174,
    "AWG 10": 3277,
}
_MILLIONTHS_A_KELVIN = 3930


def resistance(size: str, millimetres: int, celsius: int) -> int:
    """Return the resistance of a wire in micro-ohms, rounded; `size` is one of AT_20."""
    at_20 = AT_20[size] * millimetres
    return (at_20 * (1000000 + _MILLIONTHS_A_KELVIN * (celsius - 20)) + 500000000) // 1000000000


def called(size: str) -> str | dict:
    """Return a size as it is written: 0.5 mm², its figure as the language has it, or AWG 20."""
    if size.startswith("AWG"):
        return size
    whole, _, part = size.partition(".")
    return message("guide-wire-square", size=decimal(int(whole + part), len(part)))
