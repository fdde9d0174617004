"""What distances and paces are written in, kilometres or miles, asked by all that writes them."""

from __future__ import annotations

from typing import Literal

from tercet.language import mark, number, tr

Units = Literal["km", "miles"]

#: Metres in each unit; the mile is exact by definition. Then words after a distance, and a pace.
METRES: dict[str, float] = {"km": 1000.0, "miles": 1609.344}
WORDS: dict[str, str] = {"km": mark("km"), "miles": mark("mi")}
PACE_WORDS: dict[str, str] = {"km": mark("/km"), "miles": mark("/mile")}

_chosen: Units = "km"


def use(units: Units) -> None:
    """Write in a unit from here on; what is shown must be written anew."""
    global _chosen
    _chosen = units


def chosen() -> Units:
    """The unit that is written in."""
    return _chosen


def metres() -> float:
    """Metres in that unit."""
    return METRES[_chosen]


def word() -> str:
    """What stands after a distance: ``km`` or ``mi``."""
    return tr(WORDS[_chosen])


def pace_word() -> str:
    """What stands after a pace: ``/km`` or ``/mile``."""
    return tr(PACE_WORDS[_chosen])


def distance(metres_run: float, decimals: int = 1) -> str:
    """Write a distance in a sentence: ``14.2 km``."""
    return f"{number(metres_run / METRES[_chosen], decimals)} {word()}"
