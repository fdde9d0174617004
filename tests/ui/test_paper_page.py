"""The paper log by mouse and keys: typed, understood beside it, answered, kept, taken back."""

from __future__ import annotations

import time
from collections.abc import Callable
from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QFileDialog
from tests.ui import fit
from tests.ui.hands import by_key

from tercet import resources
from tercet.formats.paper import Shorthand
from tercet.library import paper_keep, paper_log
from tercet.library.library import Library
from tercet.store import paper_queries, queries
from tercet.store.errors import StoreError
from tercet.ui import theme
from tercet.ui.paper.page import PaperPage
from tercet.ui.paper.shorthand_dialog import ShorthandDialog
from tercet.ui.window import MainWindow

LEFT = Qt.MouseButton.LeftButton
PAGE = """Week of Mon 2019-11-04
M off
T 20 min wu, 12 x 200 fast (200 jog), 10 min cd
Th 50 min easy, last 12 min stdy
F 6 mi easy + 4 mi easy (am pm)
S 3/4 x 1 mi tempo
Su 45 min grumf
"""


@pytest.fixture
def judged(library: Library) -> Library:
    library.take_in([resources.samples() / "season.toml"])
    return library


@pytest.fixture
def page(qtbot, open_window, judged) -> PaperPage:
    return shown(qtbot, open_window())


def shown(qtbot, window: MainWindow) -> PaperPage:
    window.show_view("paper")
    found = window.further.current
    assert isinstance(found, PaperPage)
    settle(qtbot, found)
    return found


def settle(qtbot, page: PaperPage) -> None:
    qtbot.waitUntil(lambda: page.settled, timeout=10_000)
    page.list.build_questions()


def write(qtbot, page: PaperPage, text: str) -> None:
    page.editor.setFocus()
    page.editor.insertPlainText(text)
    settle(qtbot, page)


def type_in(qtbot, page: PaperPage, text: str) -> None:
    """Press the keys one after the other."""
    for place, line in enumerate(text.split("\n")):
        if place:
            qtbot.keyClick(page.editor, Qt.Key.Key_Return)
        qtbot.keyClicks(page.editor, line)


def states(page: PaperPage) -> list[str]:
    return [row.state for row in page.view.rows]


def press(qtbot, page: PaperPage, words: str) -> None:
    """Click the first button with these words among the questions."""
    (made, *_) = [b for q in page.list.questions for b in q.buttons if b.text() == words]
    page.list.scrollTo(page.list.indexAt(made.parentWidget().pos()))
    qtbot.mouseClick(made, LEFT)
    settle(qtbot, page)


def keep(qtbot, page: PaperPage) -> None:
    window = page.window()
    assert isinstance(window, MainWindow)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.mouseClick(page.keep, LEFT)
    settle(qtbot, page)


def sessions(library: Library) -> list[dict]:
    return [dict(row) for row in library.call(queries.sessions)]


def undo(qtbot, page: PaperPage) -> None:
    window = page.window()
    assert isinstance(window, MainWindow)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        window.acts.undo()
    settle(qtbot, page)


def test_a_page_is_understood_as_it_is_typed(qtbot, page, judged) -> None:
    type_in(qtbot, page, "Week of Mon 2019-11-04\nTue: 45 min eas")
    settle(qtbot, page)
    assert states(page) == ["guessed"]
    qtbot.keyClicks(page.editor, "y")
    settle(qtbot, page)
    assert states(page) == ["read"] and page.view.rows[0].seconds[0] == 2700
    assert page.keep.text() == "Keep 1 run" and page.keep.isEnabled()
    assert sessions(judged) == []


def test_everything_is_counted_and_marked_where_it_stands(qtbot, page) -> None:
    write(qtbot, page, PAGE)
    assert states(page) == ["rest", "read", "guessed", "read", "read", "asked", "asked"]
    assert len(page.list.days) == 6  # the double stands in one row
    assert page.keep.text() == "Keep 4 runs"
    told = page.understood_pane.counts.text()
    assert told == "4 Nov to 10 Nov 2019, 4 runs, 1 to look at, 2 not read, 1 day off"
    text = page.editor.toPlainText()
    assert sorted(text[m.start : m.end] for m in page.editor.marks) == ["3/4 x", "grumf", "stdy"]
    assert len(page.editor.extraSelections()) == 3
    # 20 + 10 min and 12 x 200 m easy at 0.85 of LT1 speed, 12 x 200 m at 1.08 of LT2 speed.
    seconds = page.view.rows[1].seconds
    assert seconds[0] == pytest.approx(1800 + 2400 * 0.339 / 0.85, abs=0.1)
    assert seconds[2] == pytest.approx(2400 * 0.278 / 1.08, abs=0.1)


def test_an_answered_word_is_remembered_with_the_runs_and_one_undo_takes_all_back(
    qtbot, page, judged
) -> None:
    write(qtbot, page, PAGE)
    press(qtbot, page, "Right")
    press(qtbot, page, "hard")
    assert states(page) == ["rest", "read", "read", "read", "read", "asked", "read"]
    assert judged.call(paper_queries.shorthand) == ({}, "")  # nothing is stored before Keep
    assert page.text_pane.known.text().endswith("grumf, stdy.")
    keep(qtbot, page)
    rows = sessions(judged)
    assert len(rows) == 5 and rows[-1]["hard_s"] == 2700 and rows[1]["moderate_s"] == 720
    assert judged.call(paper_queries.shorthand)[0] == {"stdy": "steady", "grumf": "hard"}
    kept = judged.call(queries.run, rows[1]["id"])
    assert kept["typed"] == "50 min easy, last 12 min stdy"
    assert kept["notation"] == "50 min easy, last 12 min steady"
    assert states(page).count("here") == 5 and not page.keep.isEnabled()
    undo(qtbot, page)
    assert sessions(judged) == [] and judged.call(paper_queries.shorthand) == ({}, "")
    assert page.editor.toPlainText() == PAGE


def test_a_likely_reading_is_written_into_the_text(qtbot, page) -> None:
    write(qtbot, page, PAGE)
    press(qtbot, page, "4 x")
    assert "S 4 x 1 mi tempo" in page.editor.toPlainText()
    assert states(page)[5] == "read"
    page.editor.undo()
    settle(qtbot, page)
    assert page.editor.toPlainText() == PAGE and states(page)[5] == "asked"


def test_a_line_may_be_left_out_and_asked_about_again(qtbot, page) -> None:
    write(qtbot, page, PAGE + "18 Nov: 20 min easy, 5 grumf\n")
    assert states(page)[-1] == "asked"
    press(qtbot, page, "Skip")
    assert states(page)[5] == "left out" and page.keep.text() == "Keep 4 runs"
    press(qtbot, page, "Keep the rest")
    qtbot.mouseClick(page.understood_pane.ask_again, LEFT)
    settle(qtbot, page)
    assert states(page)[5] == "asked"


def test_a_word_may_be_kept_unjudged(qtbot, page, judged) -> None:
    write(qtbot, page, "2019-11-05: 45 min grumf\n")
    press(qtbot, page, "Not judged")
    keep(qtbot, page)
    (row,) = sessions(judged)
    assert row["unjudged_s"] == 2700


def test_the_year_is_asked_not_guessed(qtbot, page) -> None:
    write(qtbot, page, "Tue 9 June: 45 min easy\nWed 10 June: 30 min easy\n")
    assert states(page) == ["asked", "asked"] and not page.keep.isEnabled()
    press(qtbot, page, "2020-06-09")
    assert page.editor.toPlainText().startswith("2020-06-09:  45 min easy\n")
    assert states(page) == ["read", "read"]


def test_a_run_already_recorded_is_said_and_counted_once(qtbot, open_window, library) -> None:
    library.take_in([resources.samples() / "2026-04-15-1806.fit"])
    (row,) = sessions(library)
    minutes = round(row["elapsed_s"] / 60)
    page = shown(qtbot, open_window())
    write(qtbot, page, f"2026-04-15: {minutes} min easy\n2026-04-16: 20 min easy\n")
    assert states(page) == ["here", "read"]
    assert page.view.rows[0].here.startswith("already here, recorded at 18:")
    keep(qtbot, page)
    assert len(sessions(library)) == 2
    assert len(library.call(queries.attachments, row["id"])) == 1
    write(qtbot, page, "2026-04-17: 25 min easy\n")
    keep(qtbot, page)
    assert len(sessions(library)) == 3 and len(library.call(queries.attachments, row["id"])) == 2


def test_the_draft_is_there_after_a_restart(qtbot, open_window, judged) -> None:
    first = open_window()
    page = shown(qtbot, first)
    write(qtbot, page, PAGE)
    press(qtbot, page, "Right")
    first.close()
    again = shown(qtbot, open_window())
    assert again.editor.toPlainText() == PAGE and states(again)[2] == "read"
    assert sessions(judged) == []


def test_a_number_alone_has_the_unit_that_is_chosen(qtbot, page, judged) -> None:
    write(qtbot, page, "2019-11-05: 8 easy\n")
    assert states(page) == ["asked"]
    box = page.text_pane.bare
    box.setCurrentIndex(box.findData("miles"))
    box.activated.emit(box.currentIndex())
    settle(qtbot, page)
    assert states(page) == ["read"]
    keep(qtbot, page)
    assert judged.call(paper_queries.shorthand)[1] == "miles"
    assert judged.call(queries.run, sessions(judged)[0]["id"])["notation"] == "8 miles easy"


def test_the_shorthand_is_listed_edited_and_deleted(qtbot, page, judged) -> None:
    write(qtbot, page, "2019-11-05: 45 min E, 10 min Q\n")

    def dialog() -> ShorthandDialog:
        qtbot.mouseClick(page.text_pane.shorthand, LEFT)
        (found,) = page.findChildren(ShorthandDialog)
        return found

    made = dialog()
    qtbot.mouseClick(made.add, LEFT)
    made.table.item(0, 0).setText("m")
    made.table.item(0, 1).setText("easy")
    qtbot.mouseClick(made.use, LEFT)
    assert "already has a meaning" in made.error.text()
    made.table.item(0, 0).setText("E")
    made.table.item(0, 1).setText("grumf")
    qtbot.mouseClick(made.use, LEFT)
    assert "cannot be read" in made.error.text()
    made.table.item(0, 1).setText("easy")
    qtbot.mouseClick(made.add, LEFT)
    made.table.item(1, 0).setText("Q")
    made.table.item(1, 1).setText("fast")
    window = page.window()
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.mouseClick(made.use, LEFT)
    settle(qtbot, page)
    assert states(page) == ["read"] and page.view.rows[0].seconds[2] == 600
    qtbot.waitUntil(lambda: not page.findChildren(ShorthandDialog))
    made = dialog()
    assert made.words == {"E": "easy", "Q": "fast"}
    made.table.selectRow(1)
    qtbot.mouseClick(made.delete, LEFT)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.mouseClick(made.use, LEFT)
    settle(qtbot, page)
    assert judged.call(paper_queries.shorthand)[0] == {"E": "easy"}
    assert states(page) == ["asked"]


def test_a_text_file_is_opened_below_what_is_there(qtbot, page, tmp_path, monkeypatch) -> None:
    place = tmp_path / "diary.txt"
    place.write_text("2019-11-06: 30 min easy\r\n", "utf-8")
    answers = [(str(place), ""), (str(tmp_path / "gone.txt"), ""), ("", "")]
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: answers.pop(0))
    write(qtbot, page, "2019-11-05: 45 min easy\n")
    for _ in range(3):
        qtbot.mouseClick(page.text_pane.open_file, LEFT)
    settle(qtbot, page)
    assert [row.entry.number for row in page.view.rows] == [1, 3]
    qtbot.mouseClick(page.text_pane.clear, LEFT)
    settle(qtbot, page)
    assert page.view.rows == () and page.understood_pane.hint.isVisible()


def test_the_words_of_a_kept_run_are_changed(qtbot, page, judged) -> None:
    write(qtbot, page, "2019-11-05 am: 45 min easy # windy\n")
    keep(qtbot, page)
    (before,) = sessions(judged)
    window = page.window()
    window.sessions.open(before["id"])
    link = window.session_page.words
    qtbot.waitUntil(link.isVisible)
    assert link.words.text() == "“45 min easy”"
    qtbot.mouseClick(link.change, LEFT)
    qtbot.waitUntil(lambda: page.editor.toPlainText() == "2019-11-05 am: 45 min easy")
    settle(qtbot, page)
    assert page.keep.text() == "Change this run"
    page.editor.selectAll()
    qtbot.keyClicks(page.editor, "2019-11-06 am: 45 min easy, last 10 min hard")
    settle(qtbot, page)
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        qtbot.mouseClick(page.keep, LEFT)
    (after,) = sessions(judged)
    assert after["id"] == before["id"] and after["hard_s"] == 600 and after["day"] == "2019-11-06"
    assert after["note"] == "windy"
    qtbot.waitUntil(lambda: window.pages.currentWidget() is window.session_page)
    window.show_view("paper")
    settle(qtbot, page)
    assert page.editor.toPlainText().startswith("2019-11-05 am: 45")  # the page put aside
    with qtbot.waitSignal(window.season_shown, timeout=10_000):
        window.acts.undo()
    assert sessions(judged) == [before]


def test_esc_leaves_a_change_and_the_run_as_it_was(qtbot, page, judged) -> None:
    write(qtbot, page, "2019-11-05 am: 45 min easy\n")
    keep(qtbot, page)
    (before,) = sessions(judged)
    page.window().show_view(f"paper:{before['id']}")
    qtbot.waitUntil(lambda: page.text_pane.cancel.isVisible())
    qtbot.keyClicks(page.editor, " and more")
    qtbot.keyClick(page.editor, Qt.Key.Key_Escape)
    settle(qtbot, page)
    assert sessions(judged) == [before]
    assert page.editor.toPlainText() == "2019-11-05 am: 45 min easy\n"


def test_it_is_reached_from_the_empty_window_and_by_its_keys(qtbot, open_window, library) -> None:
    window = open_window()
    assert window.pages.currentWidget() is window.empty
    qtbot.mouseClick(window.empty.paper, LEFT)
    assert isinstance(window.further.current, PaperPage)
    page = window.further.current
    settle(qtbot, page)
    assert page.understood_pane.hint.isVisible() and not page.keep.isEnabled()
    write(qtbot, page, "2019-11-05: 45 min easy\n")
    assert "alone" in page.understood_pane.basis.text()
    window.show_view("season")
    by_key(qtbot, window, Qt.Key.Key_L)
    assert window.further.current is page


def test_questions_are_reached_and_answered_by_keys(qtbot, page) -> None:
    write(qtbot, page, PAGE)
    page.window().activateWindow()
    page.list.focus_question()
    first = page.list.questions[0].buttons[0]
    qtbot.waitUntil(first.hasFocus)
    qtbot.keyClick(first, Qt.Key.Key_Space)
    settle(qtbot, page)
    # The focus goes on to the next question.
    qtbot.waitUntil(lambda: page.list.questions[0].buttons[0].hasFocus())
    assert "3/4" in page.list.questions[0].label.text()


def test_every_row_is_spoken(qtbot, page) -> None:
    write(qtbot, page, PAGE)
    model = page.list.model()
    told = [model.index(k, 0).data() for k in range(model.rowCount())]
    assert told[0] == "Mon 4 Nov, day off"
    assert "stdy: steady?" in told[2] and "0:12 not judged" in told[2]
    assert "not read: 3/4 x. 3 or 4 times?" in told[4]
    assert fit.nameless(page.window()) == []


def test_nothing_is_cut_off(qtbot, page) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    write(qtbot, page, PAGE)
    try:
        for size in ((1366, 768), (1920, 1080)):
            for scale in (1.0, 1.5, 2.0):
                theme.apply(app, scale == 1.5, scale)
                page.window().resize(*size)
                qtbot.wait(20)
                assert fit.faults(page) == [], (size, scale)
    finally:
        theme.apply(app, False)


def test_the_shorthand_and_the_way_to_the_words_fit_too(qtbot, page, judged) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    write(qtbot, page, "2019-11-05: 45 min easy, 10 x 200 m fast / 200 m jog, 10 min easy\n")
    keep(qtbot, page)
    window = page.window()
    window.sessions.open(sessions(judged)[0]["id"])
    session = window.session_page
    qtbot.waitUntil(session.words.isVisible)
    dialog = ShorthandDialog(Shorthand({"T": "threshold", "grumf": "run"}), window)
    qtbot.addWidget(dialog)

    def fits() -> None:
        assert fit.faults(session) == []

    try:
        for scale in (1.0, 1.5, 2.0):
            theme.apply(app, False, scale)
            dialog.show()
            qtbot.wait(20)
            assert fit.faults(dialog) == [], scale
            # The page behind it is laid out over several turns of the event loop.
            qtbot.waitUntil(fits, timeout=5_000)
            assert fit.nameless(dialog) == []
            dialog.hide()
    finally:
        theme.apply(app, False)


def test_a_page_of_400_lines_stays_fluent(qtbot, page) -> None:
    months = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
    lines = [
        f"{1 + k % 28} {months[k // 28 % 12]} {2000 + k // 336}: {20 + k % 40} min easy, "
        f"{2 + k % 9} x 400 m fast / 200 m jog{', 5 grumf' if k % 3 == 0 else ''}"
        for k in range(400)
    ]
    write(qtbot, page, "\n".join(lines))
    assert len(page.view.rows) == 400
    assert 1 <= len(page.list.questions) < 30  # only those in view are built
    gaps = loop_gaps(qtbot, lambda: type_in(qtbot, page, "\n2 Feb 2005: 5 km easy"))
    settle(qtbot, page)
    assert len(page.view.rows) == 401
    # A slow machine is given ten times what was seen here.
    assert max(gaps) < 0.5


def loop_gaps(qtbot, call: Callable[[], None]) -> list[float]:
    """Longest pauses of the event loop while something is typed and for half a second after."""
    from PySide6.QtCore import QTimer

    ticks = [time.perf_counter()]
    timer = QTimer()
    timer.setInterval(2)
    timer.timeout.connect(lambda: ticks.append(time.perf_counter()))
    timer.start()
    call()
    qtbot.wait(500)
    timer.stop()
    return [b - a for a, b in pairwise(ticks)]


def test_the_library_says_what_race_paces_are_reckoned_from(judged) -> None:
    from datetime import date

    from tercet.library.paper_log import Draft

    text = "2026-07-05: 10 km race in 40:00\n"
    judged.call(paper_keep.keep, Draft(text), date(2026, 11, 25))
    text = "2026-07-12: 6 x 1 km @ 10k pace / 200 m jog\n2027-07-12: 6 x 1 km @ 10k pace\n"
    view = judged.call(paper_log.read, Draft(text), date(2027, 11, 25))
    near, far = view.rows
    assert near.seconds[1] + near.seconds[2] == pytest.approx(6 * 240.0)
    assert "10 km in 40:00" in near.basis and "LT2" in far.basis
    assert far.seconds[2] != pytest.approx(6 * 240.0, abs=1)


def test_answers_are_not_lost_where_the_store_refuses(qtbot, page, judged, monkeypatch) -> None:
    write(qtbot, page, "2019-11-05: 45 min grumf\n")
    press(qtbot, page, "hard")

    def refuse(*_: object) -> None:
        raise StoreError("Nothing was saved: the disk is full.")

    with monkeypatch.context() as broken:
        broken.setattr(paper_keep, "keep", refuse)
        qtbot.mouseClick(page.keep, LEFT)
        qtbot.waitUntil(lambda: "disk is full" in page.window().undo_bar.words.text())
        settle(qtbot, page)
    assert sessions(judged) == [] and page.keep.isEnabled()
    keep(qtbot, page)
    assert judged.call(paper_queries.shorthand)[0] == {"grumf": "hard"}
    assert sessions(judged)[0]["hard_s"] == 2700
