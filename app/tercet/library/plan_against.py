"""Where the plan of the week to come goes against what that week asks for: plain sentences."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from datetime import date, timedelta

from tercet.engine import load
from tercet.language import mark, several, tr
from tercet.library.standing import hours, short_day
from tercet.library.views import PlannedView, SeasonView

#: So much more than asked for is worth a sentence (common practice, no source). [s]
OVER_S = 300.0


def planned_in(view: SeasonView, first: date, last: date) -> list[PlannedView]:
    """Planned sessions of a season from one day to another, both taken in."""
    return [item for item in view.planned if first <= item.day <= last]


def sentences(
    planned: Sequence[PlannedView],
    races: Collection[date],
    wanted: tuple[float, float, float] | None,
    not_before: date,
    spacing: int,
) -> list[str]:
    """Name planned hard days that come too early or too close, and what is planned too much of.

    Parameters
    ----------
    planned : sequence of PlannedView
        What the week holds.
    races : collection of date
        Days of races, which stay where they are.
    wanted : tuple of float, optional
        Easy, moderate, hard of the week; None where nothing says how much. [s]
    not_before : date
        The first day on which running hard is far enough from what was run.
    spacing : int
        Least days from one hard day to the next.
    """
    numbers = load.hard_days(
        [item.day.toordinal() for item in planned], [item.seconds[:3] for item in planned]
    )
    days = [date.fromordinal(number) for number in numbers]
    out = []
    early = [day for day in days if day < not_before and day not in races]
    if early:
        out.append(
            several(
                len(early),
                mark("The plan has a hard day before that: {days}. Move it, or make it easy."),
                mark("The plan has {n} hard days before that: {days}. Move or ease them."),
                days=", ".join(map(short_day, early)),
            )
        )
    out += [
        tr(
            "The plan's hard days {one} and {two} lie closer than {n} days.",
            one=short_day(date.fromordinal(a)),
            two=short_day(date.fromordinal(b)),
            n=spacing,
        )
        for a, b in load.too_close(numbers, spacing)
        if date.fromordinal(b) not in early  # that is to be moved or eased anyway
    ]
    raced = [item for item in planned if item.day not in races]
    for shade, text in (
        (1, mark("The plan holds {planned} moderate, {over} more than the week asks for.")),
        (2, mark("The plan holds {planned} hard, {over} more than the week asks for.")),
    ):
        held = sum(item.seconds[shade] for item in raced)
        if wanted is not None and held - wanted[shade] >= OVER_S:
            out.append(tr(text, planned=hours(held), over=hours(held - wanted[shade])))
    return out


def of_week(
    view: SeasonView,
    first_day: date,
    wanted: tuple[float, float, float] | None,
    not_before: date,
    spacing: int,
) -> list[str]:
    """The sentences for one week of a season."""
    planned = planned_in(view, first_day, first_day + timedelta(days=6))
    races = {race.day for race in view.races}
    return sentences(planned, races, wanted, not_before, spacing)
