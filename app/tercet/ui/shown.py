"""All that a refresh of the window shows, read from the store in one go."""

from __future__ import annotations

from contextlib import suppress
from datetime import date, datetime, timedelta
from typing import NamedTuple

from tercet.domain import DatedThresholds
from tercet.library import season
from tercet.library.views import SeasonView
from tercet.store import queries
from tercet.store.database import Store
from tercet.store.queries import FileRow

#: The strip with estimated thresholds stays away for so long once it was put away.
STRIP_AWAY = timedelta(weeks=4)


class Shown(NamedTuple):
    """The season, what judges it, and what is said around it."""

    season: SeasonView
    thresholds: list[DatedThresholds]
    problems: list[FileRow]
    runner: str
    last_import: str
    strip_left: str  # when the strip was put away, ISO 8601, or empty

    @property
    def empty(self) -> bool:
        """Whether there is nothing to show but ways to begin."""
        view = self.season
        planned = any(block.id is not None for block in view.blocks) or bool(view.races)
        return not (view.session_count or view.other_sports or planned or self.problems)

    def estimate(self, now: datetime) -> DatedThresholds | None:
        """The estimate to offer surer ways for; None if it was put away a short while ago."""
        with suppress(ValueError):
            if self.strip_left and now - datetime.fromisoformat(self.strip_left) < STRIP_AWAY:
                return None
        return next((entry for entry in self.thresholds if entry.estimated), None)


def everything(store: Store, demo: bool = False) -> Shown:
    """Read it, in the store's thread; the example season stands at its last day for good."""
    today = queries.last_day(store) if demo else None
    return Shown(
        season.season(store, today or date.today()),
        queries.thresholds(store),
        queries.files_to_look_at(store),
        queries.setting(store, "runner"),
        queries.last_taken_in(store),
        queries.setting(store, "estimate_left"),
    )
