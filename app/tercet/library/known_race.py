"""The race that a runner's other race paces are reckoned from, and saying which it was."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from tercet.domain import RaceResult
from tercet.language import mark, tr
from tercet.library.paper_words import clock, length

#: An older result says little of the day. [guess]
WITHIN = timedelta(days=183)
BY_MODEL = mark(
    "Race paces are reckoned from LT2 speed, taken for the pace of one hour, by Riegel's power law."
)


def known_race(results: Sequence[RaceResult], day: date) -> RaceResult | None:
    """The last result up to a day, if it is of the half year before it."""
    found = [item for item in results if day - WITHIN <= item.day <= day]
    return max(found, key=lambda item: item.day) if found else None


def pair_of(race: RaceResult | None) -> tuple[float, float] | None:
    """Seconds and metres, as the engine takes them."""
    return None if race is None else (race.seconds, race.metres)


def basis(race: tuple[float, float] | None) -> str:
    """Say what race paces are reckoned from."""
    if race is None:
        return tr(BY_MODEL)
    return tr(
        "Race paces are reckoned from {distance} in {time}, by the power law.",
        distance=length(race[1]),
        time=clock(race[0]),
    )
