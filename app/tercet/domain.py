"""What the parts of the program hand to each other: recordings, laps, failures, season rows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from types import MappingProxyType
from typing import TYPE_CHECKING

from tercet.engine.countback import Volume
from tercet.engine.shades import Thresholds

if TYPE_CHECKING:
    from tercet.engine.scale import Floats

#: The streams a recording may carry, with their units inside the program.
STREAM_UNITS = MappingProxyType(
    {
        "heart_rate": "beats/min",
        "speed": "m/s",
        "distance": "m",
        "latitude": "degrees",
        "longitude": "degrees",
        "altitude": "m",
        "cadence": "steps/min",
        "power": "W",
        "temperature": "degrees C",
    }
)


@dataclass(frozen=True, eq=False)
class Stream:
    """One channel with its own clock: ``time`` in seconds from the start, rising; finite values."""

    time: Floats
    values: Floats


@dataclass(frozen=True)
class Lap:
    """A lap as the watch kept it; times in seconds from the recording's start."""

    start_s: float
    duration_s: float
    distance_m: float | None = None
    pressed: bool = False  # by the runner, as far as the file tells


@dataclass(frozen=True, eq=False)
class Recording:
    """One activity from one file, in SI units, its clock in UTC.

    ``start`` is the time of the first sample, aware, in UTC. ``utc_offset_s`` is the local
    clock's offset if the file says so, else ``None``. ``time`` holds the time of every sample
    read (seconds from ``start``, not falling), so ``len(time)`` is the number of records and
    ``time[-1]`` the elapsed time. ``stops`` are the spans during which the timer stood still.
    ``damage`` is a plain sentence if only part of the file could be read.
    """

    start: datetime
    time: Floats
    streams: Mapping[str, Stream]
    format: str  # "FIT", "TCX", "GPX"
    sport: str = "unknown"  # "running", "walking", "cycling", ..., "unknown"
    kind: str = ""  # of running: "", "treadmill", "trail", "track", "race"
    utc_offset_s: int | None = None
    device: str = ""
    name: str = ""
    laps: tuple[Lap, ...] = ()
    stops: tuple[tuple[float, float], ...] = ()
    damage: str = ""

    @property
    def records(self) -> int:
        """Number of samples read."""
        return len(self.time)

    @property
    def elapsed_s(self) -> float:
        """Last minus first time [s]."""
        return float(self.time[-1] - self.time[0]) if len(self.time) else 0.0


@dataclass(frozen=True)
class Failed:
    """Why a file gave no recording: a plain sentence, and where in the file if known.

    ``status`` is "refused" (damaged or not understood) or "passed over" (sound, but no run in
    it: settings, a course, another kind of file).
    """

    reason: str
    status: str = "refused"
    format: str = ""
    offset: int | None = None


@dataclass(frozen=True)
class DatedThresholds:
    """Thresholds in force from a local day on, with where they came from."""

    start: date
    values: Thresholds
    source: str = "typed"
    estimated: bool = False
    #: Half-widths of the 90 % intervals by field name, where known.
    interval: Mapping[str, float] = field(default_factory=dict)
    id: int | None = None
    #: How they are reached from those before: at once ("step") or day by day ("linear").
    change: str = "step"
    #: The day they were found on, where they were put in force for runs before it too.
    found: date | None = None

    @property
    def age_from(self) -> date:
        """The day from which their age counts."""
        return self.found or self.start


@dataclass(frozen=True)
class Block:
    """A stretch of the season with what it is for; whole local days, ``end`` included."""

    start: date
    end: date
    name: str
    kind: str = "base"  # base, support, specific, taper, race week, recovery
    easy_target: float = 0.8
    id: int | None = None
    moderate_target: float | None = None  # None for what is usual with this kind and easy target
    hard_target: float | None = None
    measure: str = "time"  # what the targets are shares of: time, metres
    volume: Volume | None = None  # of its weeks, in seconds or metres
    longest: float | None = None  # longest single run wanted [s or m]


@dataclass(frozen=True)
class Race:
    """A race on a local day."""

    day: date
    name: str
    distance_m: float | None = None
    id: int | None = None
    goal_s: float | None = None
    main: bool = False  # the one the season is counted back from


@dataclass(frozen=True)
class RaceResult:
    """What a runner ran in a race: seconds and metres."""

    day: date
    seconds: float
    metres: float
    name: str = ""


@dataclass(frozen=True)
class Planned:
    """A session still to run, or once planned: one line in the notation of paper logs."""

    day: date
    notation: str
    place: int = 0  # order within its day
    note: str = ""
    id: int | None = None


@dataclass(frozen=True)
class Changes:
    """What kinds of thing an action changed, so that screens know what to draw anew."""

    runs: bool = False
    thresholds: bool = False
    plan: bool = False
    files: bool = False
    settings: bool = False
    step: str = ""

    def __or__(self, other: Changes) -> Changes:
        return Changes(
            self.runs or other.runs,
            self.thresholds or other.thresholds,
            self.plan or other.plan,
            self.files or other.files,
            self.settings or other.settings,
            other.step or self.step,
        )
