"""What every way to the lines has in common on the page: it is edited, and gives an entry."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from tercet.domain import DatedThresholds
from tercet.engine.shades import Thresholds, check_thresholds
from tercet.ui.lines.words import problem_in_words

#: Pairs that belong together, and what stands alone.
PARTS = (
    ("lt1_speed", "lt2_speed"),
    ("lt1_hr", "lt2_hr"),
    ("hr_rest",),
    ("hr_max",),
    ("top_speed",),
    ("lt1_power", "lt2_power"),
)


def completed(
    values: Thresholds,
    interval: Mapping[str, float],
    now: DatedThresholds | None,
    start: date,
    source: str,
    *,
    estimated: bool,
) -> DatedThresholds:
    """An entry of new values; what they do not say stays as it is in force, where it fits.

    Raises
    ------
    ValueError
        If the new values alone cannot be, in words made to be shown.
    """
    try:
        check_thresholds(values)
    except ValueError as error:
        raise ValueError(problem_in_words(str(error))) from error
    found, widths = values, dict(interval)
    for names in PARTS:
        if now is None or any(getattr(found, name) is not None for name in names):
            continue
        with_these = replace(found, **{name: getattr(now.values, name) for name in names})
        try:
            check_thresholds(with_these)
        except ValueError:
            continue  # what was in force does not fit the new values
        found = with_these
        widths |= {name: now.interval[name] for name in names if name in now.interval}
    return DatedThresholds(start, found, source, estimated, widths)
