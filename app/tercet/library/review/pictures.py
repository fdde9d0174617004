"""What the pictures of a review show: lengths to draw, and labels already written."""

from __future__ import annotations

from dataclasses import dataclass

Three = tuple[float, float, float]


@dataclass(frozen=True)
class Value:
    """A big number and the word below it."""

    number: str
    word: str


@dataclass(frozen=True)
class LinePart:
    """A block in the line of the season; seconds by shade."""

    name: str
    seconds: Three
    words: str  # its hours
    share: str
    row: int  # of the page's table
    estimated: bool = False


@dataclass(frozen=True)
class SeasonLine:
    """The season as one line of stairs on one hour scale, with big numbers above."""

    values: tuple[Value, ...]
    parts: tuple[LinePart, ...]
    races: tuple[tuple[int, float, str], ...] = ()  # part, place in it from 0 to 1, name
    all_row: int = 0  # of the page's table: all blocks together


@dataclass(frozen=True)
class WeekRow:
    """A week: seven days, each with the seconds by shade of its sessions."""

    days: tuple[tuple[Three, ...], ...]
    race: tuple[bool, ...]
    month: str  # at the first week of a month


@dataclass(frozen=True)
class WeekBlock:
    """A block of the sheet."""

    name: str
    words: str
    weeks: tuple[WeekRow, ...]


@dataclass(frozen=True)
class Weeks:
    """The season sheet without its gutters."""

    blocks: tuple[WeekBlock, ...]
    day_names: tuple[str, ...]


@dataclass(frozen=True)
class BuildUpPart:
    """A block's cumulative hours by day; the target is None before it is drawn."""

    name: str
    left: float  # ordinals of its edges
    right: float
    days: tuple[float, ...]
    easy: tuple[float, ...]
    moderate: tuple[float, ...]
    hard: tuple[float, ...]
    target: tuple[float | None, ...]
    label: str
    wanted: tuple[str, ...] = ()  # what it was for, in words and in fewer


@dataclass(frozen=True)
class BuildUpPicture:
    """Build-up by block: easy rises, moderate and hard hang below."""

    parts: tuple[BuildUpPart, ...]
    months: tuple[tuple[float, str], ...]
    today: float | None
    spans: tuple[tuple[float, float], ...] = ()  # stretches without a cut in time


@dataclass(frozen=True)
class Curve:
    """A density of time over intensity, with its name and three shares in words."""

    name: str
    density: tuple[float, ...]
    shares: tuple[str, str, str]


@dataclass(frozen=True)
class CurvePicture:
    """The intensity curve then (dashed) and now (filled).

    ``at`` is level speed as a share of LT1 speed, so that the boundaries lie at 1 and ``lt2``.
    """

    at: tuple[float, ...]
    lt2: float
    now: Curve
    then: Curve | None
    bounds: tuple[str, str]  # the two boundaries in words
    row: int  # of now, in the page's table


@dataclass(frozen=True)
class Bar:
    """One row of bars: its label, its length, the words after it, and whether it was meant."""

    label: str
    amount: float
    words: str
    meant: bool = False


@dataclass(frozen=True)
class BarPicture:
    """Rows of moderate time, longest first."""

    bars: tuple[Bar, ...]


@dataclass(frozen=True)
class Dots:
    """Repetitions of one session: when, how fast each was [m/s], and their mean in words."""

    day: float
    speeds: tuple[float, ...]
    mean: float
    words: str
    row: int


@dataclass(frozen=True)
class DotPicture:
    """Repetitions of one kind across the season: faster is higher."""

    sessions: tuple[Dots, ...]
    marks: tuple[tuple[float, str], ...]  # speeds with their paces
    blocks: tuple[tuple[float, float, str], ...]  # left, right, name


@dataclass(frozen=True)
class Level:
    """A boundary over time: steps of day, speed and words, with its name."""

    name: str
    steps: tuple[tuple[float, float, str], ...]


@dataclass(frozen=True)
class LevelPicture:
    """Thresholds as flat steps over time, races on their days."""

    left: float
    right: float
    levels: tuple[Level, ...]
    races: tuple[tuple[float, float | None, str, str, int], ...]  # day, speed, name, time, row
    months: tuple[tuple[float, str], ...]


@dataclass(frozen=True)
class Column:
    """A week's running time, its longest run and what was planned [s]."""

    seconds: Three
    longest: float
    planned: float = 0.0


@dataclass(frozen=True)
class VolumePicture:
    """Weeks as columns with the longest run marked, blocks named, gaps in words."""

    columns: tuple[Column, ...]
    blocks: tuple[tuple[int, int, str], ...]  # first and last column, name
    gaps: tuple[tuple[float, str], ...]  # place in columns, words
    labels: tuple[tuple[int, str], ...]  # column and the words over it


@dataclass(frozen=True)
class BackWeek:
    """A week of one side: seconds by shade, its hours in words, and whether a race was run."""

    seconds: Three
    words: str
    race: bool = False


@dataclass(frozen=True)
class BackSide:
    """One of two seasons or blocks: its name, its sums in words, its weeks and its blocks."""

    name: str
    words: str
    weeks: tuple[BackWeek, ...]
    blocks: tuple[tuple[int, int, str], ...]  # first and last row, name


@dataclass(frozen=True)
class BackPicture:
    """Two sides with their weeks in rows, counted back; stairs grow outward from the middle."""

    to_go: tuple[str, ...]
    sides: tuple[BackSide, BackSide]


@dataclass(frozen=True)
class Facts:
    """Rows of a number, what it is, and when."""

    rows: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True)
class Lines:
    """Sentences; ``own`` tells which are the coach's. ``cautions`` stand below a rule."""

    lines: tuple[str, ...]
    own: bool
    cautions: tuple[str, ...]


Picture = (
    SeasonLine
    | Weeks
    | BuildUpPicture
    | CurvePicture
    | BarPicture
    | DotPicture
    | LevelPicture
    | VolumePicture
    | BackPicture
    | Facts
    | Lines
)
