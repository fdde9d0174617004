"""A watched folder: what is new, what still grows, what is known already."""

from __future__ import annotations

import shutil
import zipfile
from pathlib import Path

import pytest

from tercet import resources
from tercet.library import watching
from tercet.library.library import Library
from tercet.library.watching import Watch, look

SAMPLES = resources.samples()
FIT, OTHER = "2026-04-15-1806.fit", "2026-05-12-1813.fit"


@pytest.fixture
def library(tmp_path: Path):
    made = Library(tmp_path / "store")
    yield made
    made.close()


def test_a_file_is_ready_once_it_has_stopped_growing(tmp_path: Path) -> None:
    watch = Watch(tmp_path)
    place = tmp_path / "sub" / "run.fit"
    place.parent.mkdir()
    place.write_bytes(b"")
    assert look(watch) == look(watch) == []  # empty: not yet begun
    place.write_bytes(b"abc")
    assert look(watch) == []
    place.write_bytes(b"abcdef")
    assert look(watch) == []
    assert look(watch) == [place]
    assert look(watch) == []
    place.write_bytes(b"abcdefghi")
    assert look(watch) == [] and look(watch) == [place]


def test_a_folder_that_is_not_there_has_no_files(tmp_path: Path) -> None:
    watch = Watch(tmp_path / "watch")
    assert look(watch) == []
    (tmp_path / "watch").mkdir()
    (tmp_path / "watch" / "run.fit").write_bytes(b"abc")
    look(watch)
    assert [place.name for place in look(watch)] == ["run.fit"]


def test_what_the_store_knows_is_not_offered_again(library: Library, tmp_path: Path) -> None:
    inbox = tmp_path / "inbox"
    inbox.mkdir()
    assert library.call(watching.begin) is None
    library.call(watching.set_folder, str(inbox))
    shutil.copy(SAMPLES / FIT, inbox)
    with zipfile.ZipFile(inbox / "export.zip", "w") as made:
        made.write(SAMPLES / OTHER, "old/run.fit")
    library.take_in([inbox])
    shutil.copy(SAMPLES / "2026-04-14-1843.fit", inbox / "new.fit")
    watch = library.call(watching.begin)
    look(watch)
    assert [place.name for place in look(watch)] == ["new.fit"]
    library.call(watching.set_folder, "")
    assert library.call(watching.begin) is None
