"""The charts: what they reckon, what they paint, and how they answer to mouse and keys."""

from __future__ import annotations

import re
import time
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFocusEvent, QFontMetricsF, QImage, QTransform
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from tests.ui import invented

import tercet
from tercet import language
from tercet.engine.scale import Shade
from tercet.ui import theme as themes
from tercet.ui.charts import BuildUpChart, TraceChart
from tercet.ui.charts.buildup_paint import end_labels, end_words, fitting_name
from tercet.ui.charts.buildup_shape import (
    DOWN_STEPS,
    UP_STEPS,
    block_shape,
    gap,
    month_starts,
    whole_marks,
)
from tercet.ui.charts.canvas import Mapper
from tercet.ui.charts.trace_shape import (
    Range,
    columns,
    finite_runs,
    middles,
    pace_marks,
    trace_range,
)

START = date(2026, 3, 2)

#: Qt's plugin without a screen says so of every window.
pytestmark = pytest.mark.qt_log_ignore("This plugin does not support")


@pytest.fixture(autouse=True)
def light(qapp: QApplication) -> None:
    invented.plain_look(qapp)


@pytest.fixture
def build_up(qtbot: QtBot) -> BuildUpChart:
    chart = BuildUpChart()
    qtbot.addWidget(chart)
    chart.resize(526, 312)
    chart.set_data(invented.season(), invented.TODAY, invented.RACES, "time")
    chart.show()
    qtbot.waitExposed(chart)
    return chart


@pytest.fixture
def trace(qtbot: QtBot) -> TraceChart:
    chart = TraceChart()
    qtbot.addWidget(chart)
    chart.resize(900, 480)
    chart.set_data(invented.hill_session()[1])
    chart.show()
    qtbot.waitExposed(chart)
    return chart


def where(chart: BuildUpChart | TraceChart, x: float, y: float, panel: int = 0) -> QPoint:
    """Point of the widget that shows a value."""
    plot = chart._plot if isinstance(chart, BuildUpChart) else chart._panels[panel].plot
    scene = plot.vb.mapViewToScene(QPointF(x, y))
    return chart.mapFromScene(scene)


def color_at(image: QImage, point: QPoint) -> QColor:
    return image.pixelColor(point)


def near(color: QColor, role: str, apart: int = 12) -> bool:
    wanted = themes.current().color(role)
    return (
        max(
            abs(color.red() - wanted.red()),
            abs(color.green() - wanted.green()),
            abs(color.blue() - wanted.blue()),
        )
        <= apart
    )


# Reckoning the build-up -------------------------------------------------------------------


def test_target_is_share_over_rest_times_the_other_two() -> None:
    shape = block_shape(
        invented.straight("A", START, 10, (8.0, 1.0, 1.0), target=0.9), START + timedelta(30),
        "time", 3600.0,
    )  # fmt: skip
    drawn = np.isfinite(shape.target)
    assert shape.target[drawn] == pytest.approx(9.0 * (shape.moderate + shape.hard)[drawn])
    assert shape.in_hand == pytest.approx(8.0 - 9.0 * 2.0)
    assert shape.short


def test_no_target_before_two_hours_in_the_block() -> None:
    shape = block_shape(
        invented.straight("A", START, 10, (8.0, 1.0, 1.0)), START + timedelta(30), "time", 3600.0
    )
    total = shape.easy + shape.moderate + shape.hard
    assert np.isnan(shape.target[total < 2.0]).all()
    assert np.isfinite(shape.target[total >= 2.0]).all()


def test_no_block_is_short_before_two_hours() -> None:
    shape = block_shape(
        invented.straight("A", START, 3, (0.5, 0.7, 0.7)), START + timedelta(30), "time", 3600.0
    )
    assert not shape.short
    assert end_words(shape) == "26 %"


def test_days_after_today_are_not_drawn() -> None:
    today = START + timedelta(days=4)
    shape = block_shape(invented.straight("A", START, 10, (10.0, 0.0, 0.0)), today, "time", 3600.0)
    assert shape.x[-1] == today.toordinal() + 1
    assert shape.easy[-1] == pytest.approx(5.0)


def test_two_hours_are_reckoned_in_metres_too() -> None:
    season = invented.straight("A", START, 10, (8.0, 1.0, 1.0), metres=True)
    shape = block_shape(season, START + timedelta(30), "metres", 1000.0)
    by_time = block_shape(
        invented.straight("A", START, 10, (8.0, 1.0, 1.0)), START + timedelta(30), "time", 3600.0
    )
    assert np.isfinite(shape.target).tolist() == np.isfinite(by_time.target).tolist()


def test_gap_ends_where_the_lines_cross() -> None:
    season = invented.straight("A", START, 2, (8.0, 1.0, 1.0))
    first = START.toordinal()
    season = replace(
        season,
        days=(first, first + 1, first + 2),
        easy=(0.0, 4 * 3600.0, 12 * 3600.0),
        moderate=(0.0, 2 * 3600.0, 2 * 3600.0),
        hard=(0.0, 0.0, 0.0),
    )
    edges = gap(block_shape(season, START + timedelta(30), "time", 3600.0))
    assert edges is not None
    x, low, high = edges
    # Easy goes from 4 to 12 in a day and meets the target of 8 half way.
    meet = np.flatnonzero(np.isclose(x, first + 1.5, rtol=0.0))
    assert len(meet) == 1
    assert low[meet[0]] == pytest.approx(8.0)
    assert high[meet[0]] == pytest.approx(8.0)
    assert (high >= low).all()


def test_end_words() -> None:
    late = START + timedelta(60)
    good = invented.straight("A", START, 30, (27.0, 1.5, 1.5))
    assert end_words(block_shape(good, late, "time", 3600.0)) == "90 %"
    about = invented.straight("A", START, 30, (27.0, 1.5, 1.5), estimated=True)
    assert end_words(block_shape(about, late, "time", 3600.0)) == "about 90 %"
    short = invented.straight("A", START, 30, (7.5, 2.0, 0.5))
    assert end_words(block_shape(short, late, "time", 3600.0)) == "short, 75 %"
    hair = invented.straight("A", START, 30, (79.7, 20.0, 0.3))
    assert end_words(block_shape(hair, late, "time", 3600.0)) == "short, 79.7 %"
    empty = invented.straight("A", START, 30, (0.0, 0.0, 0.0))
    assert end_words(block_shape(empty, late, "time", 3600.0)) == ""


@pytest.mark.parametrize("extent", [0.4, 1.0, 3.5, 9.0, 33.0, 480.0])
def test_marks_are_whole_few_and_not_crowded(extent: float) -> None:
    ups = whole_marks(extent, 200.0, 18.0, 3, UP_STEPS)
    downs = whole_marks(extent, 60.0, 18.0, 2, DOWN_STEPS)
    assert len(ups) <= 3
    assert len(downs) <= 2
    assert all(0 < mark <= extent for mark in (*ups, *downs))
    if len(ups) > 1:
        assert (ups[1] - ups[0]) / extent * 200.0 >= 1.3 * 18.0
    assert bool(ups) == (extent >= 1.0)


def test_months_are_thinned() -> None:
    left, right = START.toordinal(), date(2026, 7, 27).toordinal()
    assert [d.month for d in month_starts(left, right, 10)] == [4, 5, 6, 7]
    assert [d.month for d in month_starts(left, right, 2)] == [5, 7]
    years = month_starts(date(2016, 5, 2).toordinal(), right, 12)
    assert {d.month for d in years} == {1}


def test_names_are_cut_after_the_first_word(qapp: QApplication) -> None:
    metrics = QFontMetricsF(themes.current().font("block"))
    name = "Hills and strides"
    room = metrics.horizontalAdvance("Hills…") + 1.0
    assert fitting_name(name, metrics.horizontalAdvance(name) + 1.0, metrics) == name
    assert fitting_name(name, room, metrics) == "Hills…"
    assert fitting_name(name, 10.0, metrics) == ""


# Painting and using the build-up ----------------------------------------------------------


@pytest.mark.parametrize("code", ["en", "de"])
@pytest.mark.parametrize("width", [260, 420, 526, 900, 1500])
def test_shares_at_the_ends_keep_clear_of_each_other(
    build_up: BuildUpChart, code: str, width: int
) -> None:
    picture, area = build_up._picture, QRectF(0.0, 0.0, width, 240.0)
    assert picture.current is not None
    first, last = picture.shapes[0].left, picture.shapes[-1].right
    along = width / (last - first)
    top = max(float(shape.easy[-1]) for shape in picture.shapes if len(shape.easy))
    mapper = Mapper(QTransform(along, 0, 0, -180.0 / top, -first * along, 220.0), area)
    metrics = QFontMetricsF(themes.current().font("small_bold"))
    language.use(code)
    try:
        placed = end_labels(mapper, picture, metrics, 5.0)
    finally:
        language.use("en")
    boxes = [box for lines in placed for box, _ in lines]
    assert boxes and all(area.contains(box) for box in boxes)
    assert not any(a.intersects(b) for k, a in enumerate(boxes) for b in boxes[:k])
    # Today's share stands on one side of today's line, never across it.
    today = mapper.x(picture.current.x[-1])
    assert all(box.right() <= today or box.left() >= today for box, _ in placed[0])


def test_easy_rises_and_the_rest_hangs_below(build_up: BuildUpChart) -> None:
    image = build_up.grab().toImage()
    threshold = build_up.shapes[2]
    day = threshold.right - 3.0
    assert near(color_at(image, where(build_up, day, threshold.easy[-4] * 0.3)), "easy")
    below = color_at(image, where(build_up, day, -threshold.moderate[-4] * 0.5))
    assert near(below, "moderate", 40)
    lowest = threshold.moderate[-4] + threshold.hard[-4] * 0.6
    assert near(color_at(image, where(build_up, day, -lowest)), "hard", 40)


def test_every_block_starts_at_zero(build_up: BuildUpChart) -> None:
    image = build_up.grab().toImage()
    for shape in build_up.shapes[1:3]:
        color = color_at(image, where(build_up, shape.left + 1.0, 12.0))
        assert not near(color, "easy")


def test_today_is_a_blue_upright(build_up: BuildUpChart) -> None:
    image = build_up.grab().toImage()
    point = where(build_up, invented.TODAY.toordinal() + 1.0, 25.0)
    colors = [color_at(image, point + QPoint(dx, 0)) for dx in (-1, 0, 1)]
    assert any(near(color, "focus") for color in colors)


def test_texture_keeps_its_pitch_at_any_size(build_up: BuildUpChart, qtbot: QtBot) -> None:
    def uprights(width: int, height: int) -> list[int]:
        build_up.resize(width, height)
        QApplication.processEvents()
        image = build_up.grab().toImage()
        shape = build_up.shapes[2]
        y = where(build_up, shape.right - 1.0, -float(shape.moderate[-2] + shape.hard[-2] / 2)).y()
        right = where(build_up, shape.right, 0.0).x()
        texture = themes.current().color("hard_texture")
        found = [
            x for x in range(right - 14, right - 1)
            if abs(image.pixelColor(x, y).green() - texture.green()) < 8
            and abs(image.pixelColor(x, y).red() - texture.red()) < 12
        ]  # fmt: skip
        return np.diff(found).tolist()

    # 4 logical pixels from line to line, however wide a day is.
    for size in ((900, 620), (1500, 620)):
        pitches = uprights(*size)
        assert pitches
        assert set(pitches) == {4}


def test_pointing_names_the_week(build_up: BuildUpChart, qtbot: QtBot) -> None:
    with qtbot.waitSignal(build_up.week_pointed) as pointed:
        qtbot.mouseMove(build_up.viewport(), where(build_up, date(2026, 4, 23).toordinal(), 5.0))
    assert pointed.args == [date(2026, 4, 20)]
    assert build_up.toolTip().startswith("Hills, week of 20 Apr")


def test_arrow_keys_step_by_week_and_stay_inside(build_up: BuildUpChart, qtbot: QtBot) -> None:
    seen: list[date | None] = []
    build_up.week_pointed.connect(seen.append)
    qtbot.keyClick(build_up, Qt.Key.Key_Left)
    qtbot.keyClick(build_up, Qt.Key.Key_Left)
    for _ in range(40):
        qtbot.keyClick(build_up, Qt.Key.Key_Right)
    qtbot.keyClick(build_up, Qt.Key.Key_Escape)
    assert seen[:2] == [date(2026, 6, 15), date(2026, 6, 8)]
    assert seen[-2] == date(2026, 7, 20)
    assert seen[-1] is None


def test_marked_week_is_painted_and_not_told_again(build_up: BuildUpChart) -> None:
    seen: list[object] = []
    build_up.week_pointed.connect(seen.append)
    build_up.mark_week(date(2026, 7, 13))
    point = where(build_up, date(2026, 7, 16).toordinal(), 17.0)
    assert near(color_at(build_up.grab().toImage(), point), "selected", 3)
    build_up.mark_week(None)
    assert not near(color_at(build_up.grab().toImage(), point), "selected", 3)
    assert seen == []


def test_neither_wheel_nor_drag_moves_the_chart(build_up: BuildUpChart, qtbot: QtBot) -> None:
    before = build_up._plot.vb.viewRange()
    middle = build_up.viewport().rect().center()
    qtbot.mousePress(build_up.viewport(), Qt.MouseButton.LeftButton, pos=middle)
    qtbot.mouseMove(build_up.viewport(), middle + QPoint(90, 40))
    qtbot.mouseRelease(build_up.viewport(), Qt.MouseButton.LeftButton, pos=middle + QPoint(90, 40))
    assert build_up._plot.vb.viewRange() == before


def test_ten_years_are_drawn_fast(build_up: BuildUpChart) -> None:
    # Wanted are 50 ms; the bound leaves room for a slow or busy computer.
    build_up.set_data(invented.years(10), invented.TODAY, (), "time")
    build_up.grab()
    times = []
    for _ in range(5):
        start = time.perf_counter()
        build_up.set_data(invented.years(10), invented.TODAY, (), "time")
        build_up.grab()
        times.append(time.perf_counter() - start)
    assert min(times) < 0.25


def test_a_season_without_blocks_is_painted(build_up: BuildUpChart) -> None:
    build_up.set_data([], invented.TODAY, (), "time")
    assert build_up.current is None
    assert not build_up.grab().isNull()


# Reckoning the trace ----------------------------------------------------------------------


def test_columns_keep_lowest_and_highest() -> None:
    rng = np.random.default_rng(1)
    x, y = np.arange(14400.0), rng.normal(3.0, 0.5, 14400)
    y[7000:9000] = np.nan
    out_x, out_y = columns(x, y, 500)
    assert len(out_x) <= 1000
    assert np.nanmin(out_y) == np.nanmin(y)
    assert np.nanmax(out_y) == np.nanmax(y)
    assert (np.diff(out_x) >= 0.0).all()
    assert np.isnan(out_y[(out_x > 7050) & (out_x < 8950)]).all()
    assert len(finite_runs(out_y)) == 2


def test_middles_lie_between_the_ends_of_their_column_and_reach_the_last_second() -> None:
    rng = np.random.default_rng(2)
    x, y = np.arange(3600.0), rng.normal(3.0, 0.5, 3600)
    y[1000:1400] = np.nan
    places, between = middles(x, y, 90)
    low, high = y.reshape(90, 40).min(axis=1), y.reshape(90, 40).max(axis=1)
    assert between == pytest.approx((low + high) / 2.0, nan_ok=True)
    assert (places[0], places[-1]) == (0.0, 3599.0)


def test_few_points_are_left_as_they_are() -> None:
    x, y = np.arange(100.0), np.arange(100.0)
    assert columns(x, y, 60)[1] is y
    assert middles(x, y, 60)[1] is y


def test_finite_runs() -> None:
    y = np.array([np.nan, 1.0, 2.0, np.nan, 3.0])
    assert finite_runs(y) == [(1, 3), (4, 5)]


def test_pace_marks_are_round_and_apart() -> None:
    marks = pace_marks(Range(2.2, 4.6), 1000.0, 300.0, 30.0)
    paces = [round(1000.0 / speed) for speed in marks]
    assert 240 in paces
    assert 300 in paces
    assert all(pace % 15 == 0 for pace in paces)
    assert (np.diff(marks) / 2.4 * 300.0 >= 30.0).all()


def test_range_holds_the_boundaries_and_leaves_out_standing() -> None:
    speed = np.concatenate((np.full(600, 3.0), np.full(300, 0.1)))
    shades = np.concatenate((np.full(600, Shade.EASY), np.full(300, Shade.NOT_RUNNING)))
    ends = trace_range(speed, shades, (3.5, 4.2), 0.07)
    assert ends.high > 4.2
    assert 2.0 < ends.low < 3.0


# Painting and using the trace -------------------------------------------------------------


def test_area_carries_the_shade(trace: TraceChart) -> None:
    image = trace.grab().toImage()
    low = trace._panels[0].plot.vb.viewRange()[1][0] + 0.1
    assert near(color_at(image, where(trace, 600.0, low)), "easy")
    assert near(color_at(image, where(trace, 1240.0, low)), "moderate", 40)
    assert near(color_at(image, where(trace, 1530.0, low)), "hard", 40)


def test_a_gap_is_a_gap(trace: TraceChart) -> None:
    image = trace.grab().toImage()
    low = trace._panels[0].plot.vb.viewRange()[1][0] + 0.1
    assert near(color_at(image, where(trace, 3390.0, low)), "pane", 3)


def test_faster_is_higher(trace: TraceChart) -> None:
    assert where(trace, 0.0, 4.0).y() < where(trace, 0.0, 3.0).y()


def test_strips_stand_under_the_trace_and_share_its_time(trace: TraceChart) -> None:
    assert len(trace._panels) == 3
    columns_at = {where(trace, 1000.0, 0.0, panel).x() for panel in range(3)}
    assert len(columns_at) == 1
    trace.set_data(invented.hill_session(heart_rate=False, altitude=False)[1])
    assert len(trace._panels) == 1


def test_without_pace_heart_rate_is_the_trace(trace: TraceChart) -> None:
    trace.set_data(invented.hill_session(speed=False, altitude=False)[1])
    assert len(trace._panels) == 1
    low, high = trace._panels[0].plot.vb.viewRange()[1]
    assert low < 158.0 < 172.0 < high


def test_power_has_a_strip_of_its_own_with_its_lines(trace: TraceChart) -> None:
    session = invented.hill_session(power=True)[1]
    trace.set_data(session)
    image = trace.grab().toImage()
    assert [panel.name for panel in trace._panels] == ["main", "heart", "power", "height"]
    low, high = trace._panels[2].plot.vb.viewRange()[1]
    assert low < 256.0 < 288.0 < high
    assert len({where(trace, 1000.0, 0.0, panel).x() for panel in range(4)}) == 1
    # Shaded as it was judged: the warm-up is easy in every strip.
    for panel, foot in ((1, session.heart_rate[600]), (2, session.power[600])):
        bottom = trace._panels[panel].plot.vb.viewRange()[1][0]
        inside = where(trace, 600.0, (bottom + foot) / 2.0, panel)
        assert near(color_at(image, inside), "easy")
    # A run without power has no such strip.
    trace.set_data(invented.hill_session()[1])
    assert "power" not in [panel.name for panel in trace._panels]


def test_without_pace_power_is_the_trace(trace: TraceChart) -> None:
    trace.set_data(invented.hill_session(speed=False, power=True)[1])
    assert [panel.name for panel in trace._panels] == ["main", "heart", "height"]
    low, high = trace._panels[0].plot.vb.viewRange()[1]
    assert low < 256.0 < 288.0 < high


def test_mouse_names_the_second(trace: TraceChart, qtbot: QtBot) -> None:
    with qtbot.waitSignal(trace.second_pointed) as pointed:
        qtbot.mouseMove(trace.viewport(), where(trace, 1500.0, 3.5))
    assert pointed.args[0] == pytest.approx(1500, abs=6)
    assert trace.second == pointed.args[0]


def test_keys_move_the_line(trace: TraceChart, qtbot: QtBot) -> None:
    seen: list[int] = []
    trace.second_pointed.connect(seen.append)
    qtbot.keyClick(trace, Qt.Key.Key_Home)
    qtbot.keyClick(trace, Qt.Key.Key_Right)
    qtbot.keyClick(trace, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(trace, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClick(trace, Qt.Key.Key_End)
    qtbot.keyClick(trace, Qt.Key.Key_Right)
    qtbot.keyClick(trace, Qt.Key.Key_Escape)
    assert seen == [0, 1, 11, 71, 4383, -1]


def test_click_and_enter_choose_a_repetition(trace: TraceChart, qtbot: QtBot) -> None:
    seen: list[int] = []
    trace.repetition_pointed.connect(seen.append)
    click = Qt.MouseButton.LeftButton
    qtbot.mouseClick(trace.viewport(), click, pos=where(trace, 2130.0, 3.0))
    assert trace.selected == 2
    qtbot.mouseClick(trace.viewport(), click, pos=where(trace, 500.0, 3.0))
    trace.point(1500)
    qtbot.keyClick(trace, Qt.Key.Key_Return)
    assert seen == [2, -1, 0]


def test_chosen_repetition_has_its_ground(trace: TraceChart) -> None:
    top = trace._panels[0].plot.vb.viewRange()[1][1]
    point = where(trace, 2360.0, top * 0.93)
    trace.mark_repetition(3)
    assert near(color_at(trace.grab().toImage(), point), "selected", 3)
    trace.mark_repetition(-1)
    assert near(color_at(trace.grab().toImage(), point), "pane", 3)


def test_dark_and_large_are_painted(trace: TraceChart, qapp: QApplication) -> None:
    themes.apply(qapp, dark=True, scale=1.5)
    qapp.processEvents()
    image = trace.grab().toImage()
    low = trace._panels[0].plot.vb.viewRange()[1][0] + 0.1
    assert near(color_at(image, where(trace, 600.0, low)), "easy")
    assert near(color_at(image, QPoint(2, 2)), "pane")


def test_an_empty_session_is_painted(trace: TraceChart, qtbot: QtBot) -> None:
    none = np.zeros(0)
    session = replace(
        invented.hill_session()[1],
        seconds=none,
        shades=np.zeros(0, dtype=np.uint8),
        level_speed=none,
        speed=none,
        heart_rate=none,
        altitude=none,
        repetitions=(),
    )
    trace.set_data(session)
    qtbot.keyClick(trace, Qt.Key.Key_Right)
    qtbot.mouseMove(trace.viewport(), QPoint(400, 200))
    assert trace.second == -1
    assert not trace.grab().isNull()


def test_four_hours_are_drawn_fast(trace: TraceChart) -> None:
    # Wanted are 50 to 150 ms; the bound leaves room for a slow or busy computer.
    n = 14400
    rng = np.random.default_rng(2)
    speed = 2.9 + 0.9 * np.sin(np.arange(n) / 70.0) + rng.normal(0.0, 0.2, n)
    shades = np.where(speed > 4.0, 2, np.where(speed > 3.56, 1, 0)).astype(np.uint8)
    long = replace(
        invented.hill_session()[1],
        seconds=np.arange(n, dtype=np.float64),
        shades=shades,
        speed=speed,
        level_speed=speed,
        heart_rate=150.0 + rng.normal(0.0, 1.0, n),
        altitude=np.arange(n) / 50.0,
    )
    trace.set_data(long)
    trace.grab()
    times = []
    for _ in range(3):
        start = time.perf_counter()
        trace.set_data(long)
        trace.grab()
        times.append(time.perf_counter() - start)
    assert min(times) < 0.6


def test_only_the_charts_know_the_plotting_library() -> None:
    root = Path(tercet.__file__).parent
    users = {
        path.relative_to(root).parts[:2]
        for path in root.rglob("*.py")
        if re.search(r"^\s*(import|from) pyqtgraph", path.read_text(encoding="utf-8"), re.M)
    }
    assert users == {("ui", "charts")}


def test_the_ring_is_there_again_after_a_menu_but_not_after_a_click(trace: TraceChart) -> None:
    reasons = Qt.FocusReason
    for kind, reason, ring in (
        (QEvent.Type.FocusIn, reasons.TabFocusReason, True),
        (QEvent.Type.FocusOut, reasons.PopupFocusReason, True),
        (QEvent.Type.FocusIn, reasons.PopupFocusReason, True),
        (QEvent.Type.FocusOut, reasons.MouseFocusReason, False),
        (QEvent.Type.FocusIn, reasons.ActiveWindowFocusReason, False),
    ):
        QApplication.sendEvent(trace, QFocusEvent(kind, reason))
        assert trace._ring is ring
