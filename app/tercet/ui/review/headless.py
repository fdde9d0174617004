"""The review on a machine without a display: from a store or from recordings to one file."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import Event
from typing import TextIO

from tercet.invocation import UsageError
from tercet.library.library import Library
from tercet.library.review import build
from tercet.library.review.content import Review
from tercet.store.database import Store
from tercet.ui import spoken, theme
from tercet.ui.application import application
from tercet.ui.look import look_of
from tercet.ui.review import looks, saving


def write(asked: Namespace, folder: Path | None, out: TextIO) -> int:
    """Write the review of a store's folder, or of recordings that are kept nowhere.

    Raises
    ------
    UsageError
        If there is nothing to review.
    StoreError
        If the store cannot be read.
    OSError
        If the file cannot be written.
    """
    # An application loads the fonts; kept until the file is written.
    app = application()
    theme.apply(app, False)
    kept = None if folder is None else look_of(folder)
    spoken.speak(asked.language or (kept.language if kept else spoken.SYSTEM))
    asked.units = asked.units or (kept.units if kept else "km")
    review = of_recordings(asked, out) if folder is None else of_store(asked, folder)
    if len(review.shown) < 2:
        raise UsageError("there is no running to review")
    asked_for = "+".join(sorted(set(asked.about.split("+"))))
    if asked_for and asked_for != review.scope:
        known = ", ".join(f"{key} ({name})" for key, name in review.scopes)
        raise UsageError(f"nothing here is {asked.about}; there are {known}")
    target: Path = asked.out
    if target.suffix.lower() == ".pdf":
        look = looks.look(asked.theme, paper=asked.theme != "dark")
        saving.write_pdf(review, target, look, asked.paper, _quiet, Event())
    else:
        saving.write_html(review, target, looks.look(asked.theme), _quiet, Event())
    pages = f"{len(review.shown)} pages and their numbers"
    out.write(f"{target}: {review.name}, {pages}, places left out\n")
    return 0


def of_store(asked: Namespace, folder: Path) -> Review:
    """A review of a store, which may be open meanwhile, in weeks as its runner counts them."""
    look_of(folder).begin_weeks()
    store = Store.to_read(folder)
    try:
        return build.review(store, asked.about, units=asked.units)[0]
    finally:
        store.close()


def of_recordings(asked: Namespace, out: TextIO) -> Review:
    """A review of recordings and, if among them, a season file."""
    with TemporaryDirectory(prefix="tercet-review-") as folder:
        library = Library(Path(folder))
        try:
            report = library.take_in([path.resolve() for path in asked.paths])
            out.write(f"{report.words}\n")
            return library.call(build.review, asked.about, units=asked.units)[0]
        finally:
            library.close()


def _quiet(_progress: object) -> None:
    return None
