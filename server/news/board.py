"""Who looks at what, and who waits to hear of it. Kept in memory alone: a new start begins with nobody.

A phone at a job hears of that job at once. Elsewhere entries may pile up for a moment, for each costs every
phone a sync: a list of jobs is a second or two behind, another job a little more.
"""

import hashlib
import json
import threading
import time
from collections.abc import Callable
from collections.abc import Iterable
from typing import NamedTuple
from typing import Protocol

from flask import Flask
from flask import current_app

from server.core.facts.roles import BENCH
from server.serving.connections.hold import Hold

LIST_SECONDS = 1.5  # so far behind is whoever is at no job
ELSEWHERE_SECONDS = 10.0  # and whoever is at another one
LINGERS_SECONDS = 90.0  # a phone in a pocket is still at its step
ALONE_SECONDS = 300.0  # without another phone for so long, a phone is alone
MOST_TOLD = 8
MOST_WINDOWS = 4  # of one phone that wait at the same time


class Session(Protocol):
    """A paired phone, as far as the others may know it."""

    @property
    def id(self) -> int:
        """Tells it from every other."""

    @property
    def name(self) -> str:
        """Whoever it belongs to."""

    @property
    def role(self) -> str:
        """What it is for."""


class Place(NamedTuple):
    """Where a phone is: at a step of a job, or at none ("")."""

    job: str = ""
    doing: str = ""
    positions: tuple[str, ...] = ()


class Standing(NamedTuple):
    """The others at a phone's job, as JSON would have them, and by what they are compared."""

    others: list[dict]
    stamp: str


class _Seen(NamedTuple):
    session: Session
    place: Place
    at: float


class _Waiting(NamedTuple):
    session: Session
    window: str
    job: str
    hold: Hold


class Board:
    """Places and holds; safe for the server's threads."""

    def __init__(self, clock: Callable[[], float] = time.monotonic):
        self._clock = clock
        self._lock = threading.Lock()
        self._seen: dict[int, _Seen] = {}
        self._waiting: list[_Waiting] = []
        self._turn = 0

    def turn(self) -> int:
        """Returns a number that grows with all that happens; asked for before the log is looked at."""
        with self._lock:
            return self._turn

    def arrive(self, session: Session, place: Place) -> Standing:
        """Notes where a phone is, tells those whom it concerns, and returns who else is there."""
        now = self._clock()
        with self._lock:
            self._forget_past(now)
            before = self._seen.get(session.id)
            self._seen[session.id] = _Seen(session, place, now)
            left = before.place if before else Place()
            if left != place and session.role == BENCH:
                self._presence_changed({left.job, place.job}, session.id)
            return self._standing(session, place.job)

    def leave(self, session_id: int) -> None:
        """Forgets a phone at once: it was put out."""
        with self._lock:
            gone = self._seen.pop(session_id, None)
            for waiting in self._waiting:
                if waiting.session.id == session_id:
                    waiting.hold.release()
            if gone:
                self._presence_changed({gone.place.job}, session_id)

    def entries_came(self, jobs: Iterable[str], session_id: int | None) -> None:
        """Tells those who wait that entries of `jobs` came in; whoever sent them has them."""
        named = set(jobs)
        with self._lock:
            self._turn += 1
            for waiting in self._waiting:
                if waiting.session.id == session_id:
                    continue
                if waiting.job in named and waiting.job:
                    waiting.hold.release()
                else:
                    waiting.hold.release(ELSEWHERE_SECONDS if waiting.job else LIST_SECONDS)

    def wait(self, session: Session, window: str, place: Place, hold: Hold, turn: int, stamp: str) -> None:
        """Has an answer kept back until something happens; `turn` and `stamp` say since when nothing did."""
        with self._lock:
            mine = [each for each in self._waiting if each.session.id == session.id]
            for each in mine:
                if each.window == window:
                    each.hold.release()
            if (
                turn != self._turn
                or stamp != self._standing(session, place.job).stamp
                or len(mine) >= MOST_WINDOWS
            ):
                hold.release()
                return
            waiting = _Waiting(session, window, place.job, hold)
            self._waiting.append(waiting)
        hold.when_ended(lambda: self._ended(waiting))

    def is_alone(self, session_id: int) -> bool:
        """Tells whether no other phone has looked for a while."""
        oldest = self._clock() - ALONE_SECONDS
        with self._lock:
            return not any(
                each.at >= oldest for identity, each in self._seen.items() if identity != session_id
            )

    def waiting(self) -> int:
        """Returns how many answers are kept back."""
        with self._lock:
            return len(self._waiting)

    def _ended(self, waiting: _Waiting) -> None:
        with self._lock:
            self._waiting = [each for each in self._waiting if each is not waiting]

    def _presence_changed(self, jobs: set[str], session_id: int) -> None:
        for waiting in self._waiting:
            if waiting.job and waiting.job in jobs and waiting.session.id != session_id:
                waiting.hold.release()

    def _standing(self, session: Session, job: str) -> Standing:
        """Returns the phones of the bench at a job, in the order in which they were paired."""
        others: list[dict] = []
        if job and session.role == BENCH:
            recent = self._clock() - LINGERS_SECONDS
            others = [
                {"name": each.session.name, "doing": each.place.doing, "positions": [*each.place.positions]}
                for identity, each in sorted(self._seen.items())
                if identity != session.id
                and each.place.job == job
                and each.session.role == BENCH
                and each.at >= recent
            ][:MOST_TOLD]
        text = json.dumps(others, separators=(",", ":"))
        return Standing(others, hashlib.sha256(text.encode()).hexdigest()[:16])

    def _forget_past(self, now: float) -> None:
        oldest = now - max(LINGERS_SECONDS, ALONE_SECONDS)
        self._seen = {identity: each for identity, each in self._seen.items() if each.at >= oldest}


def init_app(app: Flask) -> None:
    """Gives an app its board."""
    app.extensions["news_board"] = Board()


def board() -> Board:
    """Returns the running app's board."""
    kept: Board = current_app.extensions["news_board"]
    return kept
