"""Sample recordings, and a season that was taken in once and is copied for each test."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tercet import resources
from tercet.library import importing
from tercet.library.library import Library

#: Runs in three formats, some packed; a run in two formats; a ride; the two broken files.
FEW = (
    "2026-04-15-1806.fit",
    "2026-04-18-0843.fit",
    "2026-05-02-0845.tcx",
    "2026-05-08-1855.gpx",
    "2026-05-09-0846.fit",
    "2026-05-27-1833.tcx.gz",
    "2026-06-27-0839.fit.gz",
    "2026-07-16-0637.tcx",
    "2026-07-23-0623.fit",
    "2026-07-23-0623.gpx",
    "2026-08-11-1820.fit",
    "2026-09-24-0626.fit",
    "2026-05-21-1815.fit",
    "2026-06-20-0905.gpx",
)


def copy_of(folder: Path, names: tuple[str, ...]) -> Path:
    folder.mkdir()
    for name in names:
        shutil.copy(resources.samples() / name, folder / name)
    return folder


@pytest.fixture(scope="session")
def few_logs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with a few sample recordings and no season file; not to be written to."""
    return copy_of(tmp_path_factory.mktemp("few") / "logs", FEW)


@pytest.fixture(scope="session")
def season_logs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The same with the season file."""
    return copy_of(tmp_path_factory.mktemp("season") / "logs", (*FEW, "season.toml"))


@pytest.fixture(scope="session")
def _taken_in_once(tmp_path_factory: pytest.TempPathFactory, season_logs: Path) -> Path:
    folder = tmp_path_factory.mktemp("once") / "store"
    library = Library(folder)
    library.take_in([season_logs])
    library.close()
    return folder


@pytest.fixture(autouse=True)
def in_this_process(monkeypatch: pytest.MonkeyPatch) -> None:
    """Start no workers for a handful of files; tests of the workers ask for them."""
    monkeypatch.setattr(importing, "FEW_FILES", 1000)
    monkeypatch.setattr("tercet.library.library.FEW_RUNS", 1000)


@pytest.fixture
def library(tmp_path: Path) -> Iterator[Library]:
    """An empty library."""
    made = Library(tmp_path / "store")
    yield made
    made.close()


@pytest.fixture
def season_library(_taken_in_once: Path, tmp_path: Path) -> Iterator[Library]:
    """A library with the few recordings judged by the season file's thresholds."""
    shutil.copytree(_taken_in_once, tmp_path / "season")
    made = Library(tmp_path / "season")
    yield made
    made.close()


@pytest.fixture
def copied(tmp_path: Path) -> Callable[..., Path]:
    """Copy named samples into a folder of the test's own."""
    return lambda *names: copy_of(tmp_path / "copied", names)
