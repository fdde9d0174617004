"""A review from the store: the pages of a season, a block or a pair of either."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from tercet.language import mark, tr
from tercet.library import season
from tercet.library.review import (
    ahead,
    blocks,
    choices,
    figures,
    levels,
    middle,
    overview,
    pair,
    scope,
    volume,
    work,
)
from tercet.library.review.choices import Choices
from tercet.library.review.content import Before, Page, Review
from tercet.library.views import SeasonView
from tercet.store import queries, record_queries, season_queries
from tercet.store.database import Store

#: Pages whose numbers come from the shades of running, and so from the thresholds.
SHADED = frozenset({"pair", "differs", "line", "weeks", "blocks", "curve", "middle"})
ESTIMATED = mark("By estimated thresholds.")


def review(
    store: Store, key: str = "", today: date | None = None, units: str = "km"
) -> tuple[Review, Choices]:
    """Make a review and give the choices it was made by.

    Parameters
    ----------
    store : Store
        The runner's.
    key : str
        What it is about (see :mod:`~tercet.library.review.scope`); empty for the last season.
    today : date, optional
        Later days are still to run.
    units : {"km", "miles"}
        For distances and paces.
    """
    view = season.season(store, today)
    return of_view(store, view, key, units)


def of_view(
    store: Store, view: SeasonView, key: str = "", units: str = "km"
) -> tuple[Review, Choices]:
    """The same from a season that was read already."""
    about = scope.scope(view, key)
    chosen = choices.read(store, about.key)
    cut = about.view
    races = [
        race
        for race in queries.races(store)
        if any(block.start <= race.day <= block.end for block in cut.blocks)
    ]
    entries = queries.thresholds(store)
    kept = middle.held(store, [session.id for session in cut.sessions])
    ran = levels.results(store, cut, races)
    found = work.sets(store, cut)
    # Of two seasons each is one line; of two blocks each is one anyway.
    whole = replace(cut, blocks=tuple(s.as_one for s in about.sides)) if about.sides else cut
    pages = [
        overview.season_line(whole, units),
        overview.weeks(whole),
        blocks.build_up(cut),
        middle.intensity(cut, kept, entries, (chosen.then, chosen.now), units, about.sides),
        middle.causes(cut, kept, about.sides),
        work.repetitions(found, cut, units),
        levels.levels(cut, entries, races, ran, units),
        volume.volume(cut),
        levels.best(cut, found, ran, units),
        ahead.next_block(cut, chosen.next_lines),
    ]
    if about.sides:
        spacing = season_queries.spacing(store)
        pages[:0] = [pair.back(about.sides, cut), pair.differs(about.sides, cut, spacing)]
    pages = [_honest(page, estimated=cut.estimated) for page in pages]
    made = Review(
        runner=queries.setting(store, "runner") or tr("Runner"),
        scope=about.key,
        name=about.name,
        pages=choices.apply(pages, chosen),
        scopes=tuple(scope.choices(view)),
        before=_before(store, view, about.key),
    )
    return made, chosen


def _honest(page: Page, *, estimated: bool) -> Page:
    """A page that claims nothing without data, and says where its shades are an estimate."""
    if page.empty:
        return replace(page, title=page.name, line="", picture=None)
    if estimated and page.key in SHADED:
        return replace(page, line=" ".join([page.line, tr(ESTIMATED)]).strip())
    return page


def _before(store: Store, view: SeasonView, key: str) -> Before | None:
    """The words of the review before this one, with the day they were written."""
    found = choices.last_words(record_queries.settings_like(store, choices.PREFIX), key)
    if found is None:
        return None
    other, made = found
    try:
        day = figures.day(date.fromisoformat(made.written))
    except ValueError:
        day = ""
    return Before(scope.scope(view, other).name, day, made.next_lines)
