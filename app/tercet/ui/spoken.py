"""Puts a language on the program: its words, Qt's own buttons, numbers and dates."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

from tercet import language

#: Kept as the choice to go by the system's languages.
SYSTEM = "system"
#: Name of the translator of Qt's own words among the application's children.
_NAME = "words of Qt"


def best(chosen: str) -> str:
    """The code of the language to use: the one chosen, or the system's first that there is."""
    if chosen in language.languages():
        return chosen
    wished = [name.replace("_", "-").split("-")[0] for name in QLocale.system().uiLanguages()]
    return next((name for name in wished if name in language.languages()), language.SOURCE)


def speak(chosen: str) -> None:
    """Use a language from here on; windows that are open keep their words until made anew."""
    code = best(chosen)
    language.use(code)
    system = QLocale.system()
    spoken = QLocale(code).language()
    # Numbers and dates by the language, in the order of the land the computer stands in.
    same = spoken == system.language()
    placeless = code == language.SOURCE and system.territory() is QLocale.Country.AnyTerritory
    chosen_locale = QLocale.c() if placeless else QLocale(spoken, system.territory())
    QLocale.setDefault(system if same else chosen_locale)
    app = QCoreApplication.instance()
    if app is None:
        return
    for old in app.findChildren(QTranslator, _NAME):
        app.removeTranslator(old)
        old.setParent(None)
    if code != language.SOURCE:
        qt = QTranslator(app)
        qt.setObjectName(_NAME)
        folder = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
        if qt.load(f"qtbase_{code}", folder):
            app.installTranslator(qt)
