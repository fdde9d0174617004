"""A session's page wherever it stands: what it shows of a run, and where what is said goes."""

from __future__ import annotations

from collections.abc import Callable

from tercet.language import mark, tr
from tercet.library import corrections
from tercet.library.season import SessionDetail
from tercet.library.views import SeasonView, SessionView
from tercet.ui import words
from tercet.ui.made_from import made_from_words
from tercet.ui.session_page import SessionPage
from tercet.ui.stretch_menu import stretch_words
from tercet.ui.user_actions import Actions
from tercet.ui.why import why

#: What is said of a mend, by its name in the store: samples, seconds or metres.
MENDS = {
    "values that cannot be, left out": mark("values that cannot be, left out: {n}"),
    "positions that leap away and back, left out": mark(
        "positions that leap away and back, left out: {n}"
    ),
    "metres of leaps that nobody runs, left out": mark(
        "leaps of the way that nobody runs, left out: {n} m"
    ),
    "speed spikes, left out": mark("speed spikes, left out: {n}"),
    "seconds without signal, run on by the distance": mark(
        "seconds without signal, run on by the distance: {n} s"
    ),
    "heart rate outside what a heart does, left out": mark(
        "heart rate outside what a heart does, left out: {n} s"
    ),
    "wild heart rate, left out": mark("wild heart rate, left out: {n} s"),
    "heart-rate spikes, left out": mark("heart-rate spikes, left out: {n} s"),
    "heart rate frozen, left out": mark("heart rate frozen, left out: {n} s"),
    "heart rate following the steps, left out": mark(
        "heart rate following the steps, left out: {n} s"
    ),
    "heart rate of a false start, left out": mark("heart rate of a false start, left out: {n} s"),
    "heart rate missing for moments, bridged": mark(
        "heart rate missing for moments, bridged: {n} s"
    ),
    "heart rate far from what the pace asks, left out": mark(
        "heart rate far from what the pace asks, left out: {n} s"
    ),
}


def keep_what_is_said(
    page: SessionPage, acts: Actions, find: Callable[[int], SessionView | None]
) -> None:
    """Let everything that a page says of its run reach the store."""

    def shade(run: int, start: float, end: float, letter: str) -> None:
        session = find(run)
        whole = session is not None and start <= 0.0 and end > session.elapsed_s
        where = "" if whole else stretch_words(start, end)
        acts.do(corrections.shade_stretch, run, start, end, letter, where)

    def repetition(run: int, start: float, end: float) -> None:
        acts.do(corrections.make_repetition, run, start, end, stretch_words(start, end))

    page.note_changed.connect(acts.set_note)
    page.effort_changed.connect(acts.set_effort)
    page.kind_changed.connect(acts.set_kind)
    page.shade_said.connect(shade)
    page.repetition_said.connect(repetition)
    page.belt_said.connect(
        lambda run, length, speed: acts.do(corrections.set_belt_speed, run, speed, 0.0, length)
    )
    page.said_taken_back.connect(lambda run: acts.do(corrections.take_back, run))


def show_run(
    page: SessionPage,
    view: SeasonView,
    session: SessionView,
    detail: SessionDetail,
    units: words.Units,
    *,
    among: tuple[int, int],
) -> None:
    """Show a run on a page; ``among`` are the first and the last one that can be gone to."""
    block, week = _place(view, session)
    uncounted = session.sport != "running"
    page.words.show_run(session.id, detail.typed)
    page.show_session(
        session,
        detail.trace,
        block_name=block,
        week_number=week,
        made_from=made_from_words(session, detail),
        mends=[mend_words(name, count) for name, count in detail.mends.items()],
        has_previous=among[0] != session.id,
        has_next=among[1] != session.id,
        why=lambda second: _uncounted(second) if uncounted else why(detail, second, units),
        units=units,
    )


def mend_words(name: str, count: int) -> str:
    """What was mended in a recording, by its name in the store, and how much of it."""
    return tr(MENDS[name], n=count) if name in MENDS else f"{name}: {count}"


def _uncounted(second: int) -> str:
    """Say of a second of another sport why it has no shade."""
    at = words.duration(float(second))
    return tr("{at}: no shade, for this is not counted as running.", at=at)


def _place(view: SeasonView, session: SessionView) -> tuple[str, int]:
    """Name of the block and number of the week that hold a session."""
    for block in view.blocks:
        for number, week in enumerate(block.weeks, 1):
            if any(held.id == session.id for day in week.days for held in day):
                return block.name, number
    return "", 0
