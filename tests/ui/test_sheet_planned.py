"""Planned sessions on the season sheet: hollow, ruled, missed, in italics, spoken and kept."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

import pytest
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QApplication
from tests.ui.invented import plain_look

from tercet.library.library import Library
from tercet.library.views import ZERO, BlockView, PlannedView, SeasonView, SessionView, WeekView
from tercet.ui import glance, sheet_planned, theme
from tercet.ui.sheet import SeasonSheet
from tercet.ui.sheet_layout import Layout
from tercet.ui.sheet_model import SheetModel

MONDAY = date(2026, 6, 15)
TODAY = date(2026, 6, 17)
DAY = timedelta(days=1)
RUN = (2400.0, 0.0, 600.0, 0.0, 0.0)


def planned(number: int, day: date, state: str, run_id: int | None = None) -> PlannedView:
    return PlannedView(number, day, 0, "40 min easy, 10 min hard", RUN, ZERO, state, run_id)


def season() -> SeasonView:
    """A Monday missed, a Tuesday run as planned, a Thursday and next week still to run."""
    start = f"{MONDAY + DAY}T07:00"
    from datetime import datetime

    run = SessionView(
        7, MONDAY + DAY, datetime.fromisoformat(start), "Run", "running", "", RUN, ZERO, 3000.0,
        3000.0, 9000.0,
    )  # fmt: skip
    none: tuple[PlannedView, ...] = ()
    week = WeekView(
        MONDAY,
        ((), (run,), (), (), (), (), ()),
        (True,) * 7,
        RUN,
        ZERO,
        (
            (planned(1, MONDAY, "missed"),),
            (planned(2, MONDAY + DAY, "done", 7),),
            none,
            (planned(3, MONDAY + 3 * DAY, "to run"),),
            none,
            none,
            none,
        ),
    )
    later = WeekView(MONDAY + 7 * DAY, ((),) * 7, (True,) * 7, ZERO, ZERO, wanted=18_000.0)
    end = MONDAY + 13 * DAY
    block = BlockView(1, "Peak", "specific", MONDAY, end, 0.8, (week, later), RUN, ZERO, 0.8)
    return SeasonView((block,), (), TODAY, 1, 0, False)


@pytest.fixture
def sheet(qtbot, qapp: QApplication) -> SeasonSheet:
    plain_look(qapp)
    made = SeasonSheet()
    qtbot.addWidget(made)
    made.resize(760, 300)
    made.set_season(season())
    made.show()
    return made


def test_a_plan_is_drawn_and_said(sheet: SeasonSheet) -> None:
    model = sheet.model()
    assert isinstance(model, SheetModel)
    spoken = [model.data(model.index(1, column), 11) for column in (1, 2, 4)]
    assert "planned 40 min easy, 10 min hard, 50 minutes, missed" in spoken[0]
    assert spoken[1].endswith("done") and spoken[2].endswith("still to run")
    assert sheet.key_needs()["planned"]
    image = sheet.grab().toImage()
    outline = QColor(theme.current().hex("control")).rgb()
    seen = sum(
        image.pixel(x, y) == outline
        for x in range(0, image.width(), 1)
        for y in range(0, image.height(), 1)
    )
    assert seen > 40  # the hollow stair's outline


def test_sums_of_weeks_and_blocks() -> None:
    block = season().blocks[0]
    assert sheet_planned.week_plan_s(block, block.weeks[0]) == 9000.0
    assert sheet_planned.week_plan_s(block, block.weeks[1]) == 18_000.0
    assert sheet_planned.block_plan_s(block) == 27_000.0


def test_a_plan_is_kept_for_the_next_first_picture(tmp_path: Path) -> None:
    Library(tmp_path).close()
    kept = glance.Glance(season(), "Ines", 3600.0, 760.0, 1.0, Layout(48.0, (64,) * 7), None, None)
    glance.keep(tmp_path, kept)
    found = glance.read(tmp_path, TODAY)
    assert found is not None
    assert found.season == season()
