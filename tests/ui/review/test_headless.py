"""The review written without a display says what the screen says."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path
from threading import Event

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QApplication

from tercet import language, week_days
from tercet.__main__ import main
from tercet.library.library import Library
from tercet.library.review import build
from tercet.ui import spoken, theme
from tercet.ui.look import settings_of
from tercet.ui.review import looks, saving


@pytest.fixture
def fresh(qapp: QApplication) -> Iterator[None]:
    theme.apply(qapp, False)
    locale = QLocale()
    yield
    week_days.begin_on(week_days.MONDAY)
    spoken.speak(language.SOURCE)
    QLocale.setDefault(locale)


@pytest.mark.usefixtures("fresh")
def test_weeks_begin_where_the_runner_has_them_begin(tmp_path: Path, reviewed_store: Path) -> None:
    folder = tmp_path / "store"
    shutil.copytree(reviewed_store, folder)
    kept = settings_of(folder)
    kept.setValue("week", "6")
    kept.sync()

    def shown(first: int) -> str:
        week_days.begin_on(first)
        library = Library(folder)
        made, _ = library.call(build.review)
        library.close()
        target = tmp_path / f"{first}.html"
        saving.write_html(made, target, looks.look("light"), lambda _: None, Event())
        return target.read_text()

    monday, sunday = shown(week_days.MONDAY), shown(week_days.SUNDAY)
    week_days.begin_on(week_days.MONDAY)
    target = tmp_path / "alone.html"
    assert main(["review", "--store", str(folder), "--out", str(target)]) == 0
    assert target.read_text() == sunday != monday


@pytest.mark.usefixtures("fresh")
@pytest.mark.parametrize("chosen", ["kept", "asked"])
def test_the_language_is_the_one_chosen(tmp_path: Path, reviewed_store: Path, chosen: str) -> None:
    folder = tmp_path / "store"
    shutil.copytree(reviewed_store, folder)
    kept = settings_of(folder)
    kept.setValue("language", "de" if chosen == "kept" else "en")
    kept.setValue("units", "miles")
    kept.sync()
    target = tmp_path / "review.html"
    asked = ["--language", "de"] if chosen == "asked" else []
    assert main(["review", "--store", str(folder), "--out", str(target), *asked]) == 0
    text = target.read_text()
    assert '<html lang="de"' in text
    assert "Rückblick" in text or "Saison" in text
    assert "/Meile" in text and "/km" not in text
