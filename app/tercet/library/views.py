"""What the screens draw: plain frozen rows made from the store, no Qt and no arithmetic left."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from functools import cached_property
from typing import NamedTuple

from tercet.engine.countback import USUAL_SHARES, Volume

Three = tuple[float, float, float]
Five = tuple[float, float, float, float, float]
ZERO: Five = (0.0, 0.0, 0.0, 0.0, 0.0)


class SessionView(NamedTuple):
    """One recorded session; ``seconds`` and ``metres`` by shade in the order of Shade.

    A named tuple, because there are thousands and these are made in a third of the time.
    """

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
    clock: str = ""  # "day", "am" or "pm" where nobody wrote when on its day it began

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
    distance_m: float | None = None
    goal_s: float | None = None
    main: bool = False  # the one the season is counted back from


class PlannedView(NamedTuple):
    """A planned session, understood by the thresholds of its day, beside what became of it.

    ``seconds`` and ``metres`` by shade in the order of Shade; pieces that are not understood add
    nothing and are ``unclear``.
    """

    id: int
    day: date
    place: int
    notation: str
    seconds: Five
    metres: Five
    state: str  # "to run", "done", "missed", "rest"
    run_id: int | None = None  # the session that was run for it
    unclear: tuple[str, ...] = ()  # words that are not understood
    note: str = ""

    @property
    def running_s(self) -> float:
        """Running time: easy, moderate, hard and unjudged seconds."""
        return sum(self.seconds[:3]) + self.seconds[4]


@dataclass(frozen=True)
class WeekView:
    """A week, or the part of it that lies in one block; ``days`` has seven tuples, in its order."""

    first_day: date
    days: tuple[tuple[SessionView, ...], ...]
    inside: tuple[bool, ...]  # whether each of the seven days belongs to the block
    seconds: Five
    metres: Five
    planned: tuple[tuple[PlannedView, ...], ...] = ((),) * 7
    wanted: float | None = None  # in the block's measure [s or m]

    @property
    def planned_s(self) -> float:
        """Running time of all that is planned in the week [s]."""
        return sum(item.running_s for day in self.planned for item in day)


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
    shares: Three = USUAL_SHARES  # wanted easy, moderate, hard; they add up to 1
    measure: str = "time"  # what the shares and the volume are of: time, metres
    volume: Volume | None = None
    longest: float | None = None  # longest single run wanted [s or m]


@dataclass(frozen=True)
class SeasonView:
    """Everything the season sheet and the build-up chart need."""

    blocks: tuple[BlockView, ...]
    races: tuple[RaceView, ...]
    today: date
    session_count: int
    other_sports: int  # sessions of other sports, kept apart
    estimated: bool

    @cached_property
    def sessions(self) -> tuple[SessionView, ...]:
        """All sessions, oldest first."""
        return tuple(
            session
            for block in self.blocks
            for week in block.weeks
            for day in week.days
            for session in day
        )

    @cached_property
    def planned(self) -> tuple[PlannedView, ...]:
        """All planned sessions, by blocks and weeks."""
        return tuple(
            item
            for block in self.blocks
            for week in block.weeks
            for day in week.planned
            for item in day
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
    easy_ahead: tuple[tuple[int, float], ...] = ()  # planned from today on: ordinal, sum
