"""Starts the program: builds the store's library and the window and hands one to the other."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from tercet import invocation, resources
from tercet.library.library import Library
from tercet.store.errors import StoreBusy, StoreError

#: Environment variable that names the store's folder.
STORE_VARIABLE = "TERCET_STORE"


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the program; gives the exit code."""
    if getattr(sys, "frozen", False):
        import multiprocessing

        multiprocessing.freeze_support()
    given = list(sys.argv[1:] if arguments is None else arguments)
    try:
        with_words = {"tally": _tally, "review": _review}.get(given[0] if given else "")
        code = with_words(given[1:]) if with_words is not None else _window(given)
        if sys.stdout is not None:  # as in a program without a console
            sys.stdout.flush()
        return code
    except (invocation.UsageError, StoreError) as error:
        return invocation.complain(str(error))
    except BrokenPipeError:
        # The reader of our output went away (as `head` does); nothing is left to say.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except KeyboardInterrupt:
        return 130


def store_folder(store: Path | None, demo: bool) -> Path:
    """Where everything is kept: asked for, named by the environment, or the user's data folder."""
    import platformdirs

    if store is not None:
        return store.expanduser().resolve()
    if demo:
        return Path(platformdirs.user_data_dir("Tercet", appauthor=False)) / "demo"
    if os.environ.get(STORE_VARIABLE):
        return Path(os.environ[STORE_VARIABLE]).expanduser().resolve()
    return Path(platformdirs.user_data_dir("Tercet", appauthor=False)) / "store"


def _tally(given: Sequence[str]) -> int:
    from tercet import cli

    return cli.run_tally(given, sys.stdout)


def _review(given: Sequence[str]) -> int:
    asked = invocation.review_parser().parse_args(given)
    for path in (*asked.paths, *([asked.store] if asked.store is not None else [])):
        if not path.exists():
            raise invocation.UsageError(f"there is no {path}")
    if asked.paths and asked.store is not None:
        raise invocation.UsageError("give recordings or a store, not both")
    if asked.out.suffix.lower() not in (".pdf", ".html"):
        raise invocation.UsageError(f"{asked.out} should end in .pdf or .html")
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    try:
        from tercet.ui.review import headless
    except ImportError as error:
        raise invocation.UsageError(f"Qt cannot load ({error})") from error
    folder = None if asked.paths else store_folder(asked.store, False)
    if folder is not None and not (folder / "tercet.db").is_file():
        raise invocation.UsageError(
            f"{folder} holds no store: name recordings, or a store with --store DIR"
        )
    try:
        return headless.write(asked, folder, sys.stdout)
    except OSError as error:
        raise invocation.UsageError(f"{asked.out} cannot be written: {error.strerror}") from error


def _window(given: Sequence[str]) -> int:
    asked = invocation.parser().parse_args(given)
    for path in asked.paths:
        if not path.exists():
            raise invocation.UsageError(f"there is no {path}")
    paths = [Path(path).resolve() for path in asked.paths]
    folder = store_folder(asked.store, asked.demo)
    try:
        library = Library(folder)
    except StoreBusy:
        if asked.pictures is None and no_display() is None and _handed_over(folder, paths):
            return 0
        raise
    try:
        samples = resources.samples()
        if asked.demo and _is_empty(library):
            paths.insert(0, samples)
        why_not = "pictures were asked for" if asked.pictures is not None else no_display()
        if why_not is None:
            from tercet.ui import application

            return application.run(library, paths, demo=asked.demo)
        return _without_window(library, paths, asked.pictures, why_not, demo=asked.demo)
    finally:
        library.close()


def _is_empty(library: Library) -> bool:
    """Whether no run is kept yet."""
    from tercet.store import queries

    return not library.call(queries.run_ids)


def _handed_over(folder: Path, paths: Sequence[Path]) -> bool:
    """Leave the files to the window that has the store open already."""
    from tercet.ui.door import hand_over

    return hand_over(folder, paths)


def no_display() -> str | None:
    """Say why no window can open here; None if one can."""
    if sys.platform.startswith("linux") and not os.environ.get("QT_QPA_PLATFORM"):
        if not (os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
            return "there is no display on this machine"
    try:
        import PySide6.QtWidgets  # noqa: F401
    except ImportError as error:
        return f"Qt cannot load ({error})"
    return None


def _without_window(
    library: Library, paths: Sequence[Path], pictures: Path | None, why_not: str, *, demo: bool
) -> int:
    """Do the main job where no window can open: take in, print the blocks, write pictures."""
    if paths:
        report = library.take_in(paths)
        sys.stdout.write(f"{report.words}\n")
        for item in report.taken:
            if item.outcome == "refused":
                sys.stdout.write(f"not read: {Path(item.path).name}: {item.detail}\n")
    from tercet.library import season

    view = library.call(season.season, date.today())
    invocation.write_block_table(view, sys.stdout)
    folder = pictures or Path("tercet-pictures")
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    try:
        from tercet.ui import portraits

        for picture in portraits.write(library, folder.resolve(), demo=demo):
            sys.stdout.write(f"picture: {picture}\n")
    except ImportError as error:
        sys.stdout.write(
            f"no pictures: Qt cannot load ({error}); on Debian, apt-get install libegl1 libgl1 "
            "libxkbcommon0 libfontconfig1 libdbus-1-3 mends that\n"
        )
    sys.stdout.write(f"No window opened: {why_not}.\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
