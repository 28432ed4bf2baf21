"""How fast sound goes in air by its temperature, and what an ultrasonic distance makes of that.

Dry air: 331.3 m/s at 0 °C (published: 331.2 to 331.6), with the square root of the absolute temperature.
Other forms differ by 0.1 %, damp air by up to 0.5 %. A control unit that does not know how cold it is counts
with one temperature, here 20 °C (common practice, no source): its distances are then long in the cold.
"""

_AT_ZERO = 331300  # mm/s
_ZERO = 27315  # hundredths of a kelvin
COUNTED_WITH = 20
COLDEST, HOTTEST = -40, 60
# What a distance in steps may be off: a cell of the grid of ISO 17386, 0.1 m.
STEP_CM = 10
FITS, BY_TEMPERATURE, OFF = "fits", "temperature", "off"


def speed(celsius: int) -> int:
    """Return the speed of sound in mm/s, rounded."""
    return _root(_AT_ZERO * _AT_ZERO * (_ZERO + 100 * celsius) // _ZERO)


def echo(centimetres: int, celsius: int) -> int:
    """Return after how many microseconds an echo is back from a distance."""
    fast = speed(celsius)
    return (2 * centimetres * 10 * 1000000 + fast // 2) // fast


def uncorrected(centimetres: int, celsius: int) -> int:
    """Return the distance in cm that is shown of a true one where the temperature is not counted in."""
    fast = speed(celsius)
    return (centimetres * speed(COUNTED_WITH) + fast // 2) // fast


def judged(tape: int, shown: int, celsius: int) -> str:
    """Return how a distance that is shown stands to the tape: FITS, BY_TEMPERATURE or OFF; both in cm."""
    if tape - STEP_CM <= shown <= tape + STEP_CM:
        return FITS
    cold = uncorrected(tape, celsius)
    return BY_TEMPERATURE if cold - STEP_CM <= shown <= cold + STEP_CM else OFF


def _root(number: int) -> int:
    """Return the square root, rounded: by Newton's way, in integers alone."""
    root = number
    better = (root + 1) // 2
    while better < root:
        root, better = better, (better + number // better) // 2
    return root + 1 if number - root * root > root else root
