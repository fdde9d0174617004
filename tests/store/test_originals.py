"""Originals: byte for byte under their SHA-256, whole or absent."""

from __future__ import annotations

import hashlib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.store.errors import StoreError
from tercet.store.originals import Originals, sha256


@given(data=st.binary(max_size=300))
def test_a_content_lies_under_its_hash_and_comes_back(
    tmp_path_factory: pytest.TempPathFactory, data: bytes
) -> None:
    originals = Originals(tmp_path_factory.getbasetemp() / "originals")
    name = sha256(data)
    assert name == hashlib.sha256(data).hexdigest()
    originals.keep(name, data)
    assert originals.path(name).name == name
    assert originals.read(name) == originals.path(name).read_bytes() == data


def test_keeping_it_again_leaves_it_alone(tmp_path: Path) -> None:
    originals = Originals(tmp_path)
    name = sha256(b"run")
    originals.keep(name, b"run")
    before = originals.path(name).stat()
    originals.keep(name, b"run")
    after = originals.path(name).stat()
    assert (before.st_mtime_ns, before.st_ino) == (after.st_mtime_ns, after.st_ino)
    assert [path.name for path in tmp_path.rglob("*") if path.is_file()] == [name]


def test_a_disk_that_is_full_leaves_nothing_half_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    originals = Originals(tmp_path)

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(StoreError, match=r"No space left on device.*Make room"):
        originals.keep(sha256(b"run"), b"run")
    assert not [path for path in tmp_path.rglob("*") if path.is_file()]


def test_one_that_is_gone_is_named(tmp_path: Path) -> None:
    with pytest.raises(StoreError, match="missing from the store: abcdef"):
        Originals(tmp_path).read("abcdef")


def test_removing_takes_the_named_and_the_half_written_only(tmp_path: Path) -> None:
    originals = Originals(tmp_path)
    kept, gone = sha256(b"kept"), sha256(b"gone")
    originals.keep(kept, b"kept")
    originals.keep(gone, b"gone")
    half = originals.path(kept).with_suffix(".part")
    half.write_bytes(b"ha")
    originals.remove([gone, sha256(b"never there")])
    assert originals.path(kept).exists()
    assert not originals.path(gone).exists() and not half.exists()


def test_a_file_in_the_place_of_the_folder_is_told(tmp_path: Path) -> None:
    (tmp_path / "originals").write_text("in the way")
    with pytest.raises(StoreError, match="cannot be made"):
        Originals(tmp_path / "originals")
