"""Counting back from race day: taper, specific, support, and the rest base, with week volumes."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from types import MappingProxyType

WEEK = timedelta(days=7)
DAY = timedelta(days=1)
#: Wanted shares of easy, moderate and hard by kind of block (common practice, no source): base at
#: least 90 % easy with almost no moderate, support and specific at least 80 % easy.
SHARES: Mapping[str, tuple[float, float, float]] = MappingProxyType(
    {
        "base": (0.90, 0.02, 0.08),
        "support": (0.80, 0.10, 0.10),
        "specific": (0.80, 0.05, 0.15),
        "taper": (0.85, 0.05, 0.10),
        "race week": (0.85, 0.05, 0.10),
        "recovery": (0.95, 0.03, 0.02),
    }
)
USUAL_SHARES = (0.80, 0.05, 0.15)
#: Kinds that prepare for a race; together they are kept short.
PREPARATION = ("support", "specific", "taper", "race week")


@dataclass(frozen=True)
class Volume:
    """How much is wanted in a block's weeks: a first week, and what becomes of it."""

    first_s: float  # [s]
    growth: float = 0.08  # from week to week, negative in a taper [unitless]
    most_s: float | None = None  # weeks grow no higher [s]
    easier_every: int = 4  # every 4th week is easier; 0 for none
    easier_share: float = 0.7  # of what the week would have been [unitless]


@dataclass(frozen=True)
class Rules:
    """Every number of the count-back (all common practice, no source, where nothing is said)."""

    most_weeks: int = 12  # taper, specific and support together; what is over shortens the first
    taper_weeks: int = 2
    specific_weeks: int = 5
    support_weeks: int = 5
    growth: float = 0.08
    most_over_today: float = 1.5  # weeks grow no higher than this many of today's [guess]
    easier_every: int = 4
    easier_share: float = 0.7
    #: Of the volume before the taper. Two weeks falling evenly to it are 41 % less on average;
    #: 41 to 60 % less helped most in L. Bosquet et al., Med. Sci. Sports Exerc. 39:1358-1365,
    #: 2007 (figure from memory).
    race_week_share: float = 0.45
    grows: tuple[str, ...] = ("base", "support")

    def __post_init__(self) -> None:
        parts = (self.taper_weeks, self.specific_weeks, self.support_weeks)
        if min(parts) < 0 or self.most_weeks < 1:
            raise ValueError("weeks must not be negative, and at least one in all")
        if not 0 <= self.growth <= 0.5:
            raise ValueError("growth must lie between 0 and 50 % a week")
        if not (0 < self.easier_share <= 1 and 0 < self.race_week_share <= 1):
            raise ValueError("shares of a week must lie above 0 and at most at 1")
        if self.easier_every < 0 or self.easier_every == 1 or self.most_over_today < 1:
            raise ValueError("every week cannot be an easier one, nor all weeks below today's")


@dataclass(frozen=True)
class Laid:
    """One block of the laid-out season, whole local days, ``end`` included.

    ``volume`` is ``None`` for what lies wholly before today.
    """

    kind: str
    start: date
    end: date
    volume: Volume | None


def taper_weeks_for(distance_m: float | None) -> int:
    """Usual weeks of taper for a race of so many metres (common practice, no source)."""
    if distance_m is None:
        return 2
    return 1 if distance_m < 12_000 else 2 if distance_m < 30_000 else 3


def week_start(day: date, first: int = 0) -> date:
    """First day of a day's week; ``first`` is the weekday that weeks begin on, 0 is Monday."""
    return day - timedelta(days=(day.weekday() - first) % 7)


def week_starts(start: date, end: date, first: int = 0) -> list[date]:
    """First days of all weeks that hold a day from ``start`` to ``end``, both included."""
    begin = week_start(start, first)
    return [begin + k * WEEK for k in range((week_start(end, first) - begin).days // 7 + 1)]


def week_volumes(volume: Volume, count: int, eased: Collection[int] = ()) -> list[float]:
    """Wanted running time of each week of a block.

    Parameters
    ----------
    volume : Volume
    count : int
        Weeks in the block.
    eased : collection of int
        Weeks, counted from 0, that are easier for another reason, such as a race in them.

    Returns
    -------
    list of float
        [s] No week is higher than ``1 + growth`` times the highest before it: a week after an
        easier one goes back to where the volume stood, and does not grow.
    """
    out: list[float] = []
    level, before_easier = volume.first_s, True
    for k in range(count):
        easier = k in eased or (bool(volume.easier_every) and (k + 1) % volume.easier_every == 0)
        if not easier:
            if not before_easier:
                level *= 1 + volume.growth
            if volume.most_s is not None:
                level = min(level, max(volume.most_s, volume.first_s))
        out.append(level * volume.easier_share if easier else level)
        before_easier = easier
    return out


def count_back(
    race: date,
    start: date,
    today: date,
    volume: float,
    rules: Rules | None = None,
    others: Sequence[date] = (),
    first: int = 0,
) -> tuple[Laid, ...]:
    """Lay a season out from its race back to its first day.

    Parameters
    ----------
    race : date
        Day of the main race.
    start : date
        The season's first day; may lie before today, then it is laid over what was run.
    today : date
        Wanted volumes begin with this day's week.
    volume : float
        What is run in a week nowadays. [s]
    rules : Rules
    others : sequence of date
        Days of lesser races; their weeks are easier ones.
    first : int
        The weekday that weeks begin on, 0 is Monday.

    Returns
    -------
    tuple of Laid
        Oldest first, without gap or overlap; the first begins on ``start``, the last ends on
        the race's day, all others begin with a week. Where there are fewer weeks than the rules
        ask for, the earliest parts are shorter or left out.

    Raises
    ------
    ValueError
        If the race is not after today and the start, or the volume is not positive.
    """
    rules = rules or Rules()
    if race < start or race < today:
        raise ValueError("the race must not lie before today or the season's first day")
    if not volume > 0:
        raise ValueError("say what is run in a week nowadays")
    weeks = week_starts(start, race, first)
    spans: list[tuple[str, int]] = []
    left, preparing = len(weeks), rules.most_weeks
    for kind, wanted in (
        ("taper", rules.taper_weeks),
        ("specific", rules.specific_weeks),
        ("support", rules.support_weeks),
        ("base", left),
    ):
        count = min(wanted, left, left if kind == "base" else preparing)
        left, preparing = left - count, preparing - count
        if count:
            spans.insert(0, (kind, count))
    laid: list[Laid] = []
    level: float | None = None
    at = 0
    for kind, count in spans:
        inside = weeks[at : at + count]
        at += count
        begin = max(inside[0], start)
        end = race if at == len(weeks) else weeks[at] - DAY
        made = None
        if end >= today:
            eased = eased_weeks(begin, end, (day for day in others if day != race), first)
            this = len(week_starts(begin, max(today, begin), first)) - 1
            if kind == "taper":
                made = _taper(volume if level is None else level, count, rules)
            else:
                made = _growing(kind, level, volume, this, eased, rules)
                level = max(week_volumes(made, count, eased))
        laid.append(Laid(kind, begin, end, made))
    return tuple(laid)


def eased_weeks(start: date, end: date, races: Iterable[date], first: int = 0) -> frozenset[int]:
    """Which weeks of a block, counted from 0, hold one of these races."""
    begin = week_start(start, first)
    return frozenset((day - begin).days // 7 for day in races if start <= day <= end)


def _growing(
    kind: str,
    level: float | None,
    volume: float,
    this: int,
    eased: Collection[int],
    rules: Rules,
) -> Volume:
    """Volume of a block so that this week, or its first, continues what was run before."""
    growth = rules.growth if kind in rules.grows else 0.0
    made = Volume(
        1.0, growth, rules.most_over_today * volume, rules.easier_every, rules.easier_share
    )
    if level is not None:
        return replace(made, first_s=min(level * (1 + growth), max(made.most_s or 0.0, level)))
    # Today may be weeks into the block: its level then is what is run nowadays.
    plain = replace(made, most_s=None, easier_share=1.0)
    return replace(made, first_s=volume / week_volumes(plain, this + 1, eased)[-1])


def _taper(level: float, count: int, rules: Rules) -> Volume:
    """Fall evenly, by one factor a week, to the race week's share."""
    factor = rules.race_week_share ** (1 / count)
    return Volume(level * factor, factor - 1, None, 0, rules.easier_share)


def preparation_weeks(blocks: Sequence[tuple[str, date, date]], race: date, first: int = 0) -> int:
    """Weeks of support, specific and taper that lead up to a race.

    Parameters
    ----------
    blocks : sequence of (kind, first day, last day)
    race : date
    first : int
        The weekday that weeks begin on, 0 is Monday.

    Returns
    -------
    int
        Weeks from the first preparing block after the last base block to the race, 0 if none.
    """
    begin: date | None = None
    for kind, start, _ in sorted((b for b in blocks if b[1] <= race), key=lambda b: b[1]):
        if kind not in PREPARATION:
            begin = None
        elif begin is None:
            begin = start
    return 0 if begin is None else len(week_starts(begin, race, first))
