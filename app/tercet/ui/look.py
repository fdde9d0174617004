"""The look a user has chosen: kept with the window's state, put on the program."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QLocale, QSettings
from PySide6.QtWidgets import QApplication

from tercet import units, week_days
from tercet.language import mark
from tercet.ui import spoken, theme, words

LOOKS = {"system": mark("Follow the system"), "light": mark("Light"), "dark": mark("Dark")}
SIZES = (100, 115, 130, 150, 175, 200)
TEXTURES = {"quiet": mark("Quiet"), "strong": mark("Strong"), "off": mark("Off")}
#: Weekdays that weeks may begin on, 0 is Monday; by locale where none is named.
WEEKS = {
    "0": mark("Monday"),
    "6": mark("Sunday"),
    "5": mark("Saturday"),
    "locale": mark("As is usual in this country"),
}
UNITS = {"km": mark("Kilometres"), "miles": mark("Miles")}


def settings_of(folder: Path) -> QSettings:
    """What is kept with the window, beside the store."""
    return QSettings(str(folder / "window.ini"), QSettings.Format.IniFormat)


def look_of(folder: Path) -> Look:
    """The look kept beside a store."""
    return Look(settings_of(folder))


class Look:
    """Reads, changes and applies what is kept; anything unreadable counts as not chosen."""

    def __init__(self, settings: QSettings) -> None:
        self._settings = settings

    @property
    def name(self) -> str:
        """One of :data:`LOOKS`."""
        kept = str(self._settings.value("look", "system"))
        return kept if kept in LOOKS else "system"

    @property
    def size(self) -> int:
        """Text size in per cent."""
        kept = str(self._settings.value("text", 100))
        return min(max(int(kept) if kept.isdigit() else 100, SIZES[0]), SIZES[-1])

    @property
    def texture(self) -> str:
        """One of :data:`TEXTURES`."""
        kept = str(self._settings.value("texture", "quiet"))
        return kept if kept in TEXTURES else "quiet"

    @property
    def units(self) -> words.Units:
        """What distances and paces are written in."""
        return "miles" if str(self._settings.value("units", "km")) == "miles" else "km"

    def use_units(self) -> words.Units:
        """Write in them from here on, in all that writes distances and paces."""
        units.use(self.units)
        return self.units

    @property
    def week(self) -> str:
        """One of :data:`WEEKS`."""
        kept = str(self._settings.value("week", "0"))
        return kept if kept in WEEKS else "0"

    def begin_weeks(self) -> None:
        """Begin weeks on the day chosen, in all that lays days in weeks."""
        chosen = self.week
        local = QLocale.system().firstDayOfWeek().value - 1
        week_days.begin_on(local if chosen == "locale" else int(chosen))

    @property
    def language(self) -> str:
        """Code of the language chosen, or that the system's is to be used."""
        return str(self._settings.value("language", spoken.SYSTEM))

    def kept(self, key: str) -> object:
        """What is kept under a key, or None."""
        return self._settings.value(key)

    def keep(self, key: str, value: object) -> None:
        """Keep a choice made elsewhere, unless there is one here."""
        if value is not None and self._settings.value(key) is None:
            self._settings.setValue(key, value)

    def choose(
        self,
        *,
        name: str = "",
        size: int = 0,
        texture: str = "",
        units: str = "",
        language: str = "",
        week: str = "",
    ) -> None:
        """Keep what is given; a look is put on at once, the others by whoever shows them."""
        chosen = {
            "look": name, "text": size, "texture": texture, "units": units, "language": language,
            "week": week,
        }  # fmt: skip
        for key, value in chosen.items():
            if value:
                self._settings.setValue(key, value)
        if name or size or texture:
            self.apply()

    def apply(self) -> None:
        """Put the look on the whole program."""
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        dark = {"light": False, "dark": True}.get(self.name)
        theme.apply(app, dark, self.size / 100, self.texture)
