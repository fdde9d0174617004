"""What the screens draw: plain frozen rows made from the store, no Qt and no arithmetic left."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime

Five = tuple[float, float, float, float, float]
ZERO: Five = (0.0, 0.0, 0.0, 0.0, 0.0)


@dataclass(frozen=True)
class SessionView:
    """One recorded session; ``seconds`` and ``metres`` by shade in the order of Shade."""

    id: int
    day: date
    start: datetime  # local wall clock, naive
    name: str
    sport: str
    kind: str
    seconds: Five
    metres: Five
    elapsed_s: float
    moving_s: float
    distance_m: float
    hr_mean: float | None = None
    climb_m: float | None = None
    effort: int | None = None  # session RPE, CR-10, as said by the runner
    note: str = ""
    repetitions: str = ""  # "20 x 200 m" or ""
    estimated: bool = False  # judged by thresholds that nobody has confirmed

    @property
    def running_s(self) -> float:
        """Running time: easy, moderate, hard and unjudged seconds."""
        return sum(self.seconds[:3]) + self.seconds[4]


@dataclass(frozen=True)
class RaceView:
    """A race to mark on its day."""

    id: int
    day: date
    name: str


@dataclass(frozen=True)
class WeekView:
    """A week, or the part of it that lies in one block; ``days`` has seven tuples, Monday first."""

    monday: date
    days: tuple[tuple[SessionView, ...], ...]
    inside: tuple[bool, ...]  # whether each of the seven days belongs to the block
    seconds: Five
    metres: Five


@dataclass(frozen=True)
class BlockView:
    """A block with its weeks, oldest first; ``id`` is None for an unplanned stretch."""

    id: int | None
    name: str
    kind: str
    start: date
    end: date  # included
    easy_target: float
    weeks: tuple[WeekView, ...]
    seconds: Five
    metres: Five
    easy_share: float | None  # of judged running time; None where none was run
    estimated: bool = False


@dataclass(frozen=True)
class SeasonView:
    """Everything the season sheet and the build-up chart need."""

    blocks: tuple[BlockView, ...]
    races: tuple[RaceView, ...]
    today: date
    session_count: int
    other_sports: int  # sessions of other sports, kept apart
    estimated: bool

    @property
    def sessions(self) -> tuple[SessionView, ...]:
        """All sessions, oldest first."""
        return tuple(
            session
            for block in self.blocks
            for week in block.weeks
            for day in week.days
            for session in day
        )


@dataclass(frozen=True)
class BuildUp:
    """One block's cumulative time or metres by day, starting at zero before its first day.

    ``days`` are proleptic ordinals; entry 0 is the start of the first day (all zeros), entry k
    the end of day k. Units: seconds, or metres.
    """

    block: BlockView
    days: tuple[int, ...]
    easy: tuple[float, ...]
    moderate: tuple[float, ...]
    hard: tuple[float, ...]
