"""The thresholds page, by hand: found, previewed, used, taken back, flagged, kept."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import QDate, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QDialog, QPushButton
from tests.library.test_lines import held, made
from tests.ui import fit

from tercet import resources
from tercet.domain import DatedThresholds
from tercet.engine import Thresholds
from tercet.engine.efforts import Effort
from tercet.library import lines, operations, season
from tercet.library.library import Library
from tercet.store import queries
from tercet.ui import theme
from tercet.ui.lines.page import ThresholdsPage
from tercet.ui.lines.race import equal_races
from tercet.ui.thresholds_pages import FieldError, TypedPage
from tercet.ui.window import MainWindow

LEFT = Qt.MouseButton.LeftButton
VALUES = Thresholds(147, 168, 3.0, 3.7, 47, 186)
MARCH = date(2026, 3, 1)
TABLE = "speed hr lactate\n" + "\n".join(
    f"{speed}\t{beats}\t{value}"
    for speed, beats, value in (
        (10, 128, 1.1), (11, 137, 1.0), (12, 146, 1.3), (13, 155, 1.8), (14, 164, 2.9),
        (15, 172, 4.9), (16, 180, 8.4),
    )
)  # fmt: skip


@pytest.fixture
def page(qtbot, open_window: Callable, library: Library) -> Iterator[ThresholdsPage]:
    """The page over three runs and thresholds of March."""
    names = ("2026-04-14-1843.fit", "2026-05-02-0845.tcx", "2026-05-08-1855.gpx")
    library.take_in([resources.samples() / name for name in names])
    preview = library.preview(
        [DatedThresholds(MARCH, VALUES, "10 km race", False, {"lt1_speed": 0.1, "lt2_speed": 0.1})]
    )
    library.use(preview, "Set thresholds")
    window = open_window()
    window.show_view("thresholds")
    found = window.further.current
    assert isinstance(found, ThresholdsPage)
    qtbot.waitUntil(lambda: "10 km race" in found.standing.source.text(), timeout=5_000)
    qtbot.waitUntil(lambda: bool(found.ways.recorded.summary.text()), timeout=5_000)
    yield found
    if window.further.current is found:
        found.close_quietly()


def press(qtbot, button: QPushButton) -> None:
    assert button.isVisible() and button.isEnabled()
    qtbot.mouseClick(button, LEFT)


def previewed(qtbot, page: ThresholdsPage) -> None:
    press(qtbot, page.ways.ask)
    qtbot.waitUntil(page.change.use.isVisible, timeout=20_000)


def sources(library: Library) -> list[str]:
    return [entry.source for entry in library.call(queries.thresholds)]


def test_what_is_in_force_is_said_with_its_interval(page: ThresholdsPage) -> None:
    value, interval = page.standing.cells["lt2_speed"]
    assert value.text() == "4:30 /km"
    assert interval.text() == "4:23 to 4:38"
    assert page.standing.ends.text() == "Resting 47 /min. Highest 186 /min."
    assert "4:30" in page.history.chart.accessibleDescription()
    assert page.history.twin.text.splitlines()[1].startswith("1 Mar 2026\t5:33\t4:30\t147\t168")


def test_a_race_is_previewed_used_and_taken_back(qtbot, page: ThresholdsPage, library) -> None:
    page.ways.tabs.setCurrentWidget(page.ways.race)
    qtbot.keyClicks(page.ways.race.race.time, "44:10")
    page.ways.start.setDate(QDate(2026, 5, 1))
    previewed(qtbot, page)
    assert sources(library) == ["10 km race"], "a preview changes nothing"
    assert "of 3," in page.change.words.text() and "LT2 4:30 /km" in page.change.lines.text()
    press(qtbot, page.change.use)
    qtbot.waitUntil(lambda: len(sources(library)) == 2, timeout=10_000)
    assert sources(library)[1] == "10 km in 44:10"
    qtbot.waitUntil(lambda: "10 km in 44:10" in page.standing.source.text(), timeout=5_000)
    library.call(operations.undo)
    assert sources(library) == ["10 km race"]


def test_what_is_typed_after_a_preview_takes_it_away(qtbot, page: ThresholdsPage) -> None:
    page.ways.tabs.setCurrentWidget(page.ways.race)
    qtbot.keyClicks(page.ways.race.race.time, "44:10")
    previewed(qtbot, page)
    qtbot.keyClicks(page.ways.race.race.time, "0")
    assert not page.change.isVisible()


def test_lines_of_a_ventilation_test_and_a_top_speed_are_typed(
    qtbot, page: ThresholdsPage, library: Library
) -> None:
    typed = page.ways.typed
    page.ways.tabs.setCurrentWidget(typed)
    assert typed.lt2_pace.text() == "4:30", "what is in force stands there to be changed"
    typed.top_pace.setText("5:00")
    press(qtbot, page.ways.ask)
    assert "LT2 pace must be below top speed" in page.ways.error.text()
    typed.top_pace.setText("2:30")
    typed.lt1_power.setValue(236)
    press(qtbot, page.ways.ask)
    assert "LT1 power and LT2 power belong together" in page.ways.error.text()
    typed.lt2_power.setValue(289)
    typed.source.setCurrentIndex(1)
    previewed(qtbot, page)
    press(qtbot, page.change.use)
    qtbot.waitUntil(lambda: len(sources(library)) == 2, timeout=10_000)
    entry = library.call(queries.thresholds)[1]
    assert entry.source == "step test by ventilation"
    assert entry.values.top_speed == pytest.approx(1000 / 150)
    assert (entry.values.lt1_power, entry.values.lt2_power) == (236, 289)


def test_lines_are_typed_in_watts_alone_shown_over_time_and_edited(
    qtbot, page: ThresholdsPage, library: Library
) -> None:
    typed, history = page.ways.typed, page.history
    assert [history.quantity.text(), "W" in history.twin.text] == ["Heart rate", False]
    page.ways.tabs.setCurrentWidget(typed)
    typed.show_values(Thresholds(lt1_power=236))
    page.ways.start.setDate(QDate(2026, 5, 1))
    press(qtbot, page.ways.ask)
    assert "belong together" in page.ways.error.text() and "LT2 283 W" in page.ways.error.text()
    assert typed.lt2_power.property("wrong") is True
    typed.lt2_power.setValue(289)
    previewed(qtbot, page)
    assert "LT1 5:33 /km to –, 147 /min to –, – to 236 W" in page.change.lines.text()
    press(qtbot, page.change.use)
    qtbot.waitUntil(lambda: len(sources(library)) == 2, timeout=10_000)
    entry = library.call(queries.thresholds)[1]
    assert entry.values == Thresholds(lt1_power=236, lt2_power=289)
    cell = page.standing.cells["lt2_speed"][0]
    qtbot.waitUntil(lambda: cell.text() == "289 W", timeout=5_000)
    assert history.twin.text.splitlines()[2].startswith("1 May 2026\t–\t–\t–\t–\t236\t289\tstep")
    for asked, said in (("Heart rate", "– and –"), ("Running power", "236 and 289")):
        assert history.quantity.text() == asked
        press(qtbot, history.quantity)
        assert f"LT1 and LT2 {said}" in history.chart.accessibleDescription()
    assert history.quantity.text() == "Pace"
    typed.lt1_power.setValue(240)
    previewed(qtbot, page)
    press(qtbot, page.change.use)
    qtbot.waitUntil(
        lambda: library.call(queries.thresholds)[1].values.lt1_power == 240, timeout=10_000
    )


def test_a_pasted_step_test_is_drawn_chosen_from_and_kept(
    qtbot, page: ThresholdsPage, library: Library
) -> None:
    page.ways.tabs.setCurrentWidget(page.ways.steps)
    QGuiApplication.clipboard().setText(TABLE)
    steps = page.ways.steps
    press(qtbot, steps.paste)
    assert steps.table.item(0, 0).text() == "10" and steps.table.item(6, 2).text() == "8.4"
    assert steps.chart.isVisible() and not steps.error.isVisible()
    offered = steps.chart.choice("LT2")
    assert offered is not None and offered.method == "modified Dmax"
    steps.chart.radios["fixed 4.0"].click()
    chosen = steps.chart.choice("LT2")
    assert chosen is not None and chosen.method == "fixed 4.0"
    qtbot.waitUntil(lambda: len(library.call(lines.stored).tests) == 1, timeout=5_000)
    qtbot.waitUntil(lambda: steps.test_id is not None, timeout=5_000)
    previewed(qtbot, page)
    press(qtbot, page.change.use)
    qtbot.waitUntil(lambda: len(sources(library)) == 2, timeout=10_000)
    entry = library.call(queries.thresholds)[1]
    assert entry.source.endswith("fixed 4.0") and not entry.estimated
    assert entry.values.lt2_speed == pytest.approx(chosen.speed)
    assert entry.values.hr_rest == 47, "what a step test does not say stays"


def test_a_cell_that_cannot_be_read_is_named(qtbot, page: ThresholdsPage) -> None:
    page.ways.tabs.setCurrentWidget(page.ways.steps)
    steps = page.ways.steps
    steps.fill([["10", "128", "1.1", ""], ["quick", "", "1.2", ""]], "")
    assert 'Step 2: "quick" is no speed' in steps.error.text()
    press(qtbot, page.ways.ask)
    assert "Step 2" in page.ways.error.text() and not page.change.isVisible()


def test_a_table_is_opened_from_a_file(page: ThresholdsPage, tmp_path: Path) -> None:
    page.ways.tabs.setCurrentWidget(page.ways.steps)
    (tmp_path / "test.txt").write_text(TABLE, encoding="utf-8")
    page.ways.steps.read_file(tmp_path / "test.txt")
    assert page.ways.steps.chart.isVisible()
    (tmp_path / "empty.txt").write_text("no table", encoding="utf-8")
    page.ways.steps.read_file(tmp_path / "empty.txt")
    assert "no table in empty.txt" in page.ways.steps.error.text()
    page.ways.steps.read_file(tmp_path / "none.txt")
    assert "cannot be read" in page.ways.steps.error.text()


def test_the_way_between_two_tests_is_previewed_and_used(
    qtbot, page: ThresholdsPage, library: Library
) -> None:
    first = library.call(queries.thresholds)[0]
    later = DatedThresholds(
        date(2026, 6, 1), replace(VALUES, lt1_speed=3.3, lt2_speed=4.0), "typed"
    )
    library.use(library.preview([first, later]), "Change thresholds")
    page.refresh(page._view)
    qtbot.waitUntil(page.history.linear.isEnabled, timeout=5_000)
    qtbot.mouseClick(page.history.linear, LEFT)
    qtbot.waitUntil(page.change.use.isVisible, timeout=20_000)
    press(qtbot, page.change.use)
    qtbot.waitUntil(
        lambda: [e.change for e in library.call(queries.thresholds)] == ["step", "linear"],
        timeout=10_000,
    )
    library.call(operations.undo)
    assert [e.change for e in library.call(queries.thresholds)] == ["step", "step"]


def test_a_run_without_a_test_in_it_says_so(
    qtbot, page: ThresholdsPage, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ThresholdsPage, "_today", date(2026, 6, 1))
    page.refresh(page._view)
    qtbot.waitUntil(lambda: page.ways.pointed.run.count() == 3, timeout=5_000)
    page.ways.tabs.setCurrentWidget(page.ways.pointed)
    page.ways.pointed.run.setFocus()
    qtbot.keyClick(page.ways.pointed.run, Qt.Key.Key_Down)
    assert page.ways.start.day == page.ways.pointed.day
    press(qtbot, page.ways.ask)
    qtbot.waitUntil(lambda: "No field test" in page.ways.error.text(), timeout=20_000)
    assert not page.change.isVisible() and page.ways.ask.isEnabled()


def test_recordings_that_tell_the_lines_are_shown_and_used(qtbot, page: ThresholdsPage) -> None:
    efforts = ((180.0, 920.0), (420.0, 1880.0), (900.0, 3800.0))
    hard = [
        made(10 * k + 2, k, efforts=(Effort(s, m, 0.6, 180.0),))
        for k, (s, m) in enumerate(efforts, 1)
    ]
    today = date(2026, 6, 12)
    found = held(*hard)
    own = lines.own(found, today)
    page.ways.recorded.show_own(own, found.entries[0])
    texts = [cells[1].text() for cells in page.ways.recorded.cells]
    assert texts[0] == "about 4:10 /km" and texts[1] == "about 200 m"
    assert "3:00 at" in page.ways.recorded.efforts.text()
    page.ceiling.show_own(own)
    assert "Keep easy runs slower than about" in page.ceiling.sentence.text()
    page.ways.tabs.setCurrentWidget(page.ways.recorded)
    previewed(qtbot, page)
    assert page.change.lines.text().startswith("About: ")


def test_a_flag_is_shown_with_its_reason_and_left(
    qtbot, page: ThresholdsPage, library: Library, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ThresholdsPage, "_today", date(2026, 5, 20))
    page.refresh(page._view)
    qtbot.waitUntil(lambda: bool(page.look.findChildren(QPushButton)), timeout=5_000)
    offer, leave = page.look.findChildren(QPushButton)[-2:]
    assert "weeks ago" in page.look.rows[0].accessibleName()
    qtbot.waitUntil(offer.isVisible, timeout=5_000)
    press(qtbot, offer)
    assert page.ways.tabs.currentWidget() is page.ways.recorded
    press(qtbot, leave)
    qtbot.waitUntil(lambda: bool(library.call(lines.stored).left), timeout=5_000)
    assert sources(library) == ["10 km race"], "nothing is changed by a flag"


def test_the_guide_gives_its_cautions(qtbot, page: ThresholdsPage) -> None:
    press(qtbot, page.ways.guide)
    (dialog,) = page.findChildren(QDialog)
    words = " ".join(label.text() for label in fit.in_view(dialog) if hasattr(label, "text"))
    for part in ("talk test", "0 to 10", "chest pain", "doctor first"):
        assert part in words
    assert not fit.faults(dialog)
    dialog.reject()


def test_equal_races_stay_within_the_models_ranges() -> None:
    rows = {row[0]: row for row in equal_races(5000, 1200)}
    # published-values dossier: 41:41.9 by the power law, 41:27.9 by the oxygen cost
    assert rows["10 km"][1] == "41:42" and rows["10 km"][3] == "41:28"
    slow = {row[0]: row for row in equal_races(42_195, 3.8 * 3600)}
    assert slow["Marathon"][3] != "–" and slow["1 mile"][1] != "–"
    assert {row[0]: row for row in equal_races(10_000, 4000)}["Marathon"][1] == "–"


@pytest.mark.parametrize(
    ("width", "height", "scale", "dark"),
    [(1366, 768, 1.0, False), (1920, 1080, 1.5, True), (1366, 768, 2.0, False)],
)
def test_every_way_fits(
    qtbot, page: ThresholdsPage, monkeypatch: pytest.MonkeyPatch, width, height, scale, dark
) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    theme.apply(app, dark, scale)
    window = page.window()
    window.resize(width, height)
    monkeypatch.setattr(ThresholdsPage, "_today", date(2026, 5, 21))
    page.refresh(page._view)
    QGuiApplication.clipboard().setText(TABLE)
    page.ways.steps.paste_table()
    for k in range(page.ways.tabs.count()):
        page.ways.tabs.setCurrentIndex(k)
        window.grab()
        # What recordings tell comes in its own time, and is laid out then.
        qtbot.waitUntil(lambda: not fit.faults(page), timeout=5_000)
        assert not fit.nameless(page), page.ways.tabs.tabText(k)
    theme.apply(app, False)


@pytest.fixture
def guessed(qtbot, open_window: Callable, library: Library) -> MainWindow:
    """A window over two runs judged by an estimate."""
    names = ("2026-04-14-1843.fit", "2026-05-02-0845.tcx")
    library.take_in([resources.samples() / name for name in names])
    return open_window()


def at_way(qtbot, window: MainWindow, button: QPushButton) -> ThresholdsPage:
    """Open the page from the strip over the sheet."""
    press(qtbot, button)
    page = window.further.current
    assert isinstance(page, ThresholdsPage)
    qtbot.waitUntil(lambda: bool(page.ways.recorded.summary.text()), timeout=5_000)
    return page


def test_typed_thresholds_end_the_estimate_of_every_run(qtbot, guessed, library) -> None:
    assert guessed.season_page.strip.isVisible()
    page = at_way(qtbot, guessed, guessed.season_page.strip.typed)
    assert page.ways.tabs.currentWidget() is page.ways.typed
    qtbot.waitUntil(page.ways.typed.lt1_pace.hasFocus, timeout=5_000)
    page.ways.typed.show_values(Thresholds(150, 170, 1000 / 320, 1000 / 270))
    previewed(qtbot, page)
    with qtbot.waitSignal(guessed.season_shown, timeout=10_000):
        press(qtbot, page.change.use)
    assert not library.call(season.season).estimated
    assert not guessed.season_page.strip.isVisible()
    page.close_quietly()


def test_a_slip_in_a_race_is_named_with_its_field(qtbot, guessed) -> None:
    page = at_way(qtbot, guessed, guessed.season_page.strip.race)
    time = page.ways.race.race.time
    for text, said in (("4:41", "10 km in 4:41 would be 0:28 /km"), ("44:70", "44:10")):
        time.setText(text)
        qtbot.keyClick(time, Qt.Key.Key_Return)
        assert said in page.ways.error.text()
        assert time.property("wrong") is True
        assert not page.change.isVisible()
    page.close_quietly()


def test_an_age_gives_heart_rates(qtbot, guessed, library) -> None:
    page = at_way(qtbot, guessed, guessed.season_page.strip.maximum)
    page.ways.maximum.age.setValue(40)
    previewed(qtbot, page)
    with qtbot.waitSignal(guessed.season_shown, timeout=10_000):
        press(qtbot, page.change.use)
    (entry,) = library.call(queries.thresholds)
    # 208 - 0.7 x 40 = 180 (Tanaka and others, 2001).
    assert entry.values.hr_max == pytest.approx(180.0)
    page.close_quietly()


@pytest.mark.parametrize(
    ("paces", "beats", "said", "field"),
    [
        (("4:10", "4:41"), (0, 0), "LT1 must be slower than LT2: 4:10 and 4:41", "lt1_pace"),
        (("5:20", ""), (0, 0), "LT2 pace", "lt2_pace"),
        (("5:20", "4:30"), (170, 150), "LT1 heart rate must be below LT2 heart rate", "lt1_hr"),
        (("fast", "4:30"), (0, 0), "5:20", "lt1_pace"),
    ],
)
def test_values_that_cannot_be_are_named_as_a_pair(qtbot, paces, beats, said, field) -> None:
    typed = TypedPage("km", Thresholds())
    qtbot.addWidget(typed)
    typed.lt1_pace.setText(paces[0])
    typed.lt2_pace.setText(paces[1])
    typed.lt1_hr.setValue(beats[0])
    typed.lt2_hr.setValue(beats[1])
    with pytest.raises(FieldError) as raised:
        typed.finder(MARCH)
    assert said in str(raised.value)
    assert raised.value.field is getattr(typed, field)


def test_miles_are_written_on_the_whole_page_once_chosen(qtbot, page: ThresholdsPage) -> None:
    window = page.window()
    assert isinstance(window, MainWindow)
    window.look.choose(units="miles")
    window.refresh()
    qtbot.waitUntil(lambda: window.further.current not in (page, None), timeout=5_000)
    miles = window.further.current
    assert isinstance(miles, ThresholdsPage)
    # 1609.344 m at 3.7 m/s are 435 s.
    qtbot.waitUntil(
        lambda: miles.standing.cells["lt2_speed"][0].text() == "7:15 /mile", timeout=5_000
    )
    assert miles.ways.typed.lt2_pace.text() == "7:15"
    miles.close_quietly()
