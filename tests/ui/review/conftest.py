"""A review of the sample season, taken in once."""

from __future__ import annotations

import shutil
from datetime import date
from pathlib import Path

import pytest

from tercet import resources
from tercet.library.library import Library
from tercet.library.review import build
from tercet.library.review.content import Review

#: Every third recording of the samples and the season file.
AFTER = date(2026, 10, 1)


@pytest.fixture(scope="session")
def reviewed_store(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A store that holds a third of the sample season; to be copied, not written to."""
    logs = tmp_path_factory.mktemp("reviewed") / "logs"
    logs.mkdir()
    names = sorted(path for path in resources.samples().iterdir() if path.suffix != ".toml")
    for path in [*names[::3], resources.samples() / "season.toml"]:
        shutil.copy(path, logs / path.name)
    folder = logs.parent / "store"
    library = Library(folder)
    library.take_in([logs])
    library.close()
    return folder


@pytest.fixture(scope="session")
def review(reviewed_store: Path) -> Review:
    """Its review."""
    library = Library(reviewed_store)
    made, _ = library.call(build.review, "", AFTER)
    library.close()
    return made
