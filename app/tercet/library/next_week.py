"""What to do next week: a few sentences from the block, its allowance, spacing and length."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from tercet import units, week_days
from tercet.engine import load
from tercet.language import mark, tr
from tercet.library import plan_against, plans
from tercet.library.standing import hours, short_day
from tercet.library.views import BlockView, SeasonView, SessionView

#: Nothing is said when nothing was run for so long. [days]
LATELY = 28
WEEK = timedelta(days=7)
#: So much of the wanted time is told as it is; less than this is nothing. [s]
LEAST_S = 60.0
#: Hard running grows by no more than this over the most of late, from a few minutes on
#: (common practice, no source). [s]
MORE, FIRST_HARD_S = 1.1, 300.0
#: After a race a day without hard running for each mile raced, and in the week after one of at
#: least so many metres half of the usual running (common practice, no source).
DAY_M, LONG_RACE_M, AFTER_RACE = 1609.344, 10_000.0, 0.5


@dataclass(frozen=True)
class Amounts:
    """What a week asks for by shade [s]; nothing hard before ``not_before``."""

    first_day: date
    easy: float
    moderate: float
    hard: float
    not_before: date


@dataclass(frozen=True)
class NextWeek:
    """Sentences for the week from ``first_day``; empty where there is nothing to go by."""

    first_day: date
    lines: tuple[str, ...]
    amounts: Amounts | None = None


def next_week(view: SeasonView, record: tuple[SessionView, ...], spacing: int) -> NextWeek:
    """Say what next week asks for.

    Parameters
    ----------
    view : SeasonView
    record : tuple of SessionView
        All running, oldest first.
    spacing : int
        Least days from one hard day to the next.
    """
    first_day = week_days.start_of(view.today) + WEEK
    lately = [run for run in record if 0 <= (view.today - run.day).days < LATELY]
    if not lately:
        return NextWeek(first_day, ())
    planned = [block for block in view.blocks if block.id is not None]
    block = next((b for b in planned if b.start <= first_day <= b.end), None)
    raced = _raced(view, lately)
    rested = raced is not None and raced.free > first_day + timedelta(days=6)
    after_race = raced is not None and raced.slow and first_day - raced.day <= WEEK
    if block is None and raced is not None and after_race:
        told, (easy, moderate, hard) = _after(view, raced)
    else:
        told, (easy, moderate, hard) = _volume(view, block, first_day, lately, rested=rested)
    free = _free_from(lately, spacing) or first_day
    if raced is not None and raced.free > max(free, first_day):
        free = raced.free
        lines = [*told, raced.words]
    else:
        lines = [*told, *_spaced(lately, spacing, first_day)]
    amounts = Amounts(first_day, easy, moderate, hard, free)
    known = (easy, moderate, hard) if block is not None or after_race else None
    lines += plan_against.of_week(view, first_day, known, free, spacing)
    longest = max(run.distance_m for run in lately)
    if longest > 0:
        lines.append(
            tr(
                "No single run over {most}: the longest of the last four weeks was {longest}.",
                most=units.distance(1.1 * longest),
                longest=units.distance(longest),
            )
        )
    return NextWeek(first_day, tuple(lines), amounts if easy >= LEAST_S else None)


@dataclass(frozen=True)
class _Raced:
    """The last race run lately: nothing hard before ``free``; ``slow`` if the week after is so."""

    name: str
    day: date
    free: date
    slow: bool

    @property
    def words(self) -> str:
        return tr(
            "Nothing hard before {free}, {n} days after {race}: a day for each mile raced "
            "(common practice, no source).",
            free=short_day(self.free),
            n=(self.free - self.day).days,
            race=self.name,
        )


def _raced(view: SeasonView, lately: list[SessionView]) -> _Raced | None:
    """The race of late after which hard running is free again last."""
    found = []
    for race in view.races:
        run = max((run.distance_m for run in lately if run.day == race.day), default=0.0)
        metres = min(race.distance_m or run, run)
        if race.day <= view.today and metres > 0:
            free = race.day + timedelta(days=round(metres / DAY_M))
            found.append(_Raced(race.name, race.day, free, metres >= LONG_RACE_M))
    return max(found, key=lambda raced: raced.free, default=None)


def _after(view: SeasonView, raced: _Raced) -> tuple[list[str], tuple[float, float, float]]:
    """The week after a race, where no block is planned for it: less, and easy."""
    easy = AFTER_RACE * plans.nowadays(view)
    said = tr(
        "About half of lately, {time}, all of it easy: the week after {race} (common practice, "
        "no source); no block is planned for it.",
        time=hours(easy),
        race=raced.name,
    )
    return [said], (easy, 0.0, 0.0)


def _volume(
    view: SeasonView,
    block: BlockView | None,
    first_day: date,
    lately: list[SessionView],
    *,
    rested: bool,
) -> tuple[list[str], tuple[float, float, float]]:
    """Give the sentences of the volume, and the seconds by shade that they tell."""
    usual = plans.nowadays(view)
    week = next((w for w in block.weeks if w.first_day == first_day), None) if block else None
    if block is None and usual < LEAST_S:
        return [], (0.0, 0.0, 0.0)
    if block is None:
        said = tr("As much as lately, about {time}; no block is planned for it.", time=hours(usual))
        return [said], (usual, 0.0, 0.0)
    wanted = week.wanted if week is not None and block.measure == "time" else None
    total = wanted or usual
    if total < LEAST_S:
        return [], (0.0, 0.0, 0.0)
    easy, moderate, hard = (share * total for share in block.shares)
    if rested:
        easy, moderate, hard = total, 0.0, 0.0
    run = sum(block.seconds[:3])
    short = block.shares[0] * run - block.seconds[0]
    lines = []
    if run > 7200 and short > LEAST_S:
        left_out = min(moderate, short)
        easy, moderate = easy + left_out, moderate - left_out
        lines.append(
            tr(
                "{block} is {short} short of easy: make up {part} of it by leaving moderate out.",
                block=block.name,
                short=hours(short),
                part=hours(left_out),
            )
        )
    # Shares alone could ask for far more hard running than the runner is used to.
    by_week: dict[date, float] = {}
    for item in lately:
        week_of = week_days.start_of(item.day)
        by_week[week_of] = by_week.get(week_of, 0.0) + item.seconds[2]
    most = max(FIRST_HARD_S, MORE * max(by_week.values(), default=0.0))
    if hard > most:
        easy, hard = easy + hard - most, most
        lines.append(tr("No more hard running than a tenth over the most of the last four weeks."))
    parts = [tr("{time} easy", time=hours(easy))]
    parts += [
        tr("{time} moderate", time=hours(moderate))
        if moderate >= LEAST_S
        else tr("nothing moderate")
    ]
    parts += [tr("at most {time} hard", time=hours(hard))] if hard >= LEAST_S else []
    source = mark("About {time} (planned): {parts}.")
    if not wanted:
        source = mark("About {time} (as lately): {parts}.")
    told = tr(source, time=hours(total), parts=", ".join(parts))
    return [told, *lines], (easy, moderate, hard)


def _free_from(lately: list[SessionView], spacing: int) -> date | None:
    """The first day on which running hard is far enough from the last hard day."""
    hard = load.hard_days(
        [run.day.toordinal() for run in lately], [run.seconds[:3] for run in lately]
    )
    return date.fromordinal(hard[-1] + spacing) if hard else None


def _spaced(lately: list[SessionView], spacing: int, first_day: date) -> list[str]:
    free = _free_from(lately, spacing)
    if free is None:
        return []
    if free <= first_day:
        return [tr("Hard days at least {n} days apart.", n=spacing)] if spacing > 1 else []
    last = free - timedelta(days=spacing)
    return [
        tr(
            "The next hard day not before {free}: the last was {last}.",
            free=short_day(free),
            last=short_day(last),
        )
    ]
