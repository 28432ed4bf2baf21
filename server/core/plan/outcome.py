"""One possible result of a move, in a list of likely hypotheses."""


class Outcome:
    """What is believed after one possible result: hypotheses that weigh `total` with the unknown."""

    def __init__(self):
        self.total = 0.0
        # (mask, weight) with no cause beyond the suspects; what is missing to `total` is the
        # weight of something new, which no verdict can name yet.
        self.hypotheses = []
        # Worked out once by `remaining`, for the state that it leads to: how it stands, and what testing
        # again and again would show.
        self.standing = None
        self.retested = None
