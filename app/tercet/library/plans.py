"""The plan as the screens show it: planned sessions understood, what became of them, volumes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING

from tercet import week_days
from tercet.domain import Block
from tercet.engine.allowance import Allowance, allowance
from tercet.engine.countback import SHARES, USUAL_SHARES, eased_weeks, week_starts, week_volumes
from tercet.engine.matching import Amount, amount_of
from tercet.engine.shades import Shade, Thresholds
from tercet.library.views import (
    ZERO,
    BlockView,
    Five,
    SeasonView,
    Three,
    WeekView,
)

if TYPE_CHECKING:
    from tercet.formats.paper import Unclear

DAY = timedelta(days=1)
#: What is run in a week nowadays is the mean of so many whole weeks (common practice, no source).
NOWADAYS_WEEKS = 4


@dataclass(frozen=True)
class Understood:
    """What one line of a plan comes to for a runner."""

    seconds: Five = ZERO
    metres: Five = ZERO
    unclear: tuple[Unclear, ...] = ()
    rest: bool = False

    @cached_property
    def amount(self) -> Amount:
        """How much it is, for finding its run."""
        return amount_of(self.seconds)

    @property
    def running_s(self) -> float:
        """Running time: easy, moderate, hard and unjudged seconds."""
        return sum(self.seconds[:3]) + self.seconds[4]


@lru_cache(maxsize=8192)
def understand(notation: str, values: Thresholds | None) -> Understood:
    """Turn a line into seconds and metres by shade; what is unclear adds nothing."""
    # Only whoever plans waits for the parser and the arrays.
    from tercet.engine.notation import stretches
    from tercet.formats.paper import is_rest, parse_session

    if is_rest(notation):
        return Understood(rest=True)
    session = parse_session(notation)
    seconds, metres = [0.0] * 5, [0.0] * 5
    for item in stretches(session.pieces, values):
        shade = Shade.UNJUDGED if item.shade > Shade.UNJUDGED else item.shade
        seconds[shade] += item.seconds or 0.0
        metres[shade] += item.metres or 0.0
    return Understood(_five(seconds), _five(metres), session.unclear)


def _five(values: Sequence[float]) -> Five:
    a, b, c, d, e = values
    return a, b, c, d, e


def shares_of(block: Block) -> Three:
    """Wanted easy, moderate and hard of a block; where only easy was said, the rest as usual."""
    if block.moderate_target is not None and block.hard_target is not None:
        return block.easy_target, block.moderate_target, block.hard_target
    _, moderate, hard = SHARES.get(block.kind, USUAL_SHARES)
    rest = 1.0 - block.easy_target
    return block.easy_target, rest * moderate / (moderate + hard), rest * hard / (moderate + hard)


def wanted_weeks(block: Block, races: Sequence[date]) -> list[tuple[date, float | None]]:
    """First days of a block's weeks with what is wanted in each, cut weeks by their days.

    Volumes go by the weeks that the block was laid in; where those shown begin on another
    weekday, what is wanted is shared out by days, so that a block's sum stays what it is.
    """
    shown = week_days.starts(block.start, block.end)
    if block.volume is None:
        return [(start, None) for start in shown]
    first = block.start.weekday()
    if first not in (week_days.MONDAY, week_days.SATURDAY, week_days.SUNDAY):
        first = week_days.first_weekday()
    own = week_starts(block.start, block.end, first)
    # The race that ends a block is what its volume leads to; others make their week easier.
    lesser = [day for day in races if day != block.end]
    eased = eased_weeks(block.start, block.end, lesser, first)
    volumes = week_volumes(block.volume, len(own), eased)
    wanted: list[tuple[date, float]] = [
        (start, volume * _days_of_volume(start, block) / 7)
        for start, volume in zip(own, volumes, strict=True)
    ]
    if own == shown:
        return list(wanted)
    return _shared_out(wanted, shown, block)


def _days_of_volume(start: date, block: Block) -> int:
    # A race week is a whole one, on whatever day the race is.
    whole = block.end < start + 6 * DAY and block.start <= start
    return 7 if whole else _days_inside(start, block)


def _days_inside(start: date, block: Block) -> int:
    return (min(start + 6 * DAY, block.end) - max(start, block.start)).days + 1


def _shared_out(
    wanted: Sequence[tuple[date, float]], shown: Sequence[date], block: Block
) -> list[tuple[date, float | None]]:
    sums = dict.fromkeys(shown, 0.0)
    for start, amount in wanted:
        count = _days_inside(start, block)
        for k in range(count):
            sums[week_days.start_of(max(start, block.start) + k * DAY)] += amount / count
    return list(sums.items())


def week_allowance(block: BlockView, week: WeekView) -> Allowance | None:
    """What a week still allows, in its block's measure; None where no volume is wanted."""
    if week.wanted is None:
        return None
    run = week.seconds if block.measure == "time" else week.metres
    return allowance(week.wanted, block.shares, run)


def easy_ahead(
    block: BlockView, today: date, unit: str, so_far: float
) -> tuple[tuple[int, float], ...]:
    """Planned easy running from today to a block's end, for the build-up's dotted line.

    Parameters
    ----------
    block : BlockView
    today : date
    unit : {"time", "metres"}
    so_far : float
        Easy run in the block up to today. [s or m]

    Returns
    -------
    tuple of (ordinal, float)
        Ends of today and of each later week, with the sum reached then [s or m]: of what is
        still to run where sessions are planned, else of the block's volume. Empty where a week
        to come has neither, or the volume is in the other unit.
    """
    if block.end <= today:
        return ()
    start = max(today, block.start - DAY)
    points = [(start.toordinal() + 1, so_far)]
    for week in block.weeks:
        last = min(week.first_day + 6 * DAY, block.end)
        if last <= today:
            continue
        ahead = [item for day in week.planned for item in day if item.state == "to run"]
        if ahead or week.planned_s:
            so_far += sum((i.seconds if unit == "time" else i.metres)[0] for i in ahead)
        elif week.wanted is not None and block.measure == unit:
            run = (week.seconds if unit == "time" else week.metres)[0]
            so_far += max(block.shares[0] * week.wanted - run, 0.0)
        else:
            return ()
        points.append((last.toordinal() + 1, so_far))
    return tuple(points)


def nowadays(view: SeasonView) -> float:
    """Running time of a week nowadays [s]: the mean of the last whole weeks, 0 without runs."""
    this = week_days.start_of(view.today)
    total = sum(
        session.running_s
        for session in view.sessions
        if session.sport == "running" and this - 7 * NOWADAYS_WEEKS * DAY <= session.day < this
    )
    return total / NOWADAYS_WEEKS
