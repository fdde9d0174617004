"""Several runners in one store: listed, added, read beside whoever has them open."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from tercet import resources
from tercet.domain import Block, Race
from tercet.library import operations, roster, season
from tercet.library.library import Library
from tercet.store.database import Store
from tercet.store.errors import StoreError

DAY = date(2026, 5, 12)


@pytest.fixture
def first(tmp_path: Path) -> Iterator[Library]:
    library = Library(tmp_path / "store")
    yield library
    library.close()


def names(folder: Path) -> list[str]:
    return [runner.name for runner in roster.runners(folder)]


def test_a_runner_is_added_and_found_from_each_of_them(first: Library) -> None:
    assert names(first.folder) == [roster.NAMELESS]
    second = roster.add(first.folder, "  Tove   Marsh ")
    third = roster.add(second, "Jun Okabe")
    assert names(first.folder) == names(second) == names(third)
    assert names(third) == ["Jun Okabe", "Tove Marsh", roster.NAMELESS]
    assert third.parent == second.parent == first.folder / roster.FOLDER


@pytest.mark.parametrize(("name", "words"), [("   ", "needs a name"), ("tove marsh", "already")])
def test_a_name_that_cannot_be_is_told(first: Library, name: str, words: str) -> None:
    roster.add(first.folder, "Tove Marsh")
    with pytest.raises(ValueError, match=words):
        roster.add(first.folder, name)


@pytest.mark.parametrize("name", ["../../up", "日本", "a/b", "." * 60, "Łódź"])
def test_any_name_gives_a_folder_inside(first: Library, name: str) -> None:
    place = roster.add(first.folder, name)
    assert place.parent == first.folder / roster.FOLDER
    assert name in names(first.folder)


def test_two_runners_of_like_names_have_two_folders(first: Library) -> None:
    assert roster.add(first.folder, "Ana Å") != roster.add(first.folder, "Ana A")


def test_the_squad_stands_in_the_order_of_races(first: Library) -> None:
    first.take_in([resources.samples() / "2026-05-09-0846.fit"])
    block = Block(DAY - timedelta(days=8), DAY + timedelta(days=12), "Hills", "base", 0.9)
    first.call(operations.set_plan, [block], [Race(DAY + timedelta(days=46), "Half", 21_097.5)])
    other = Library(roster.add(first.folder, "Oskar Wren"))
    other.call(operations.set_plan, [], [Race(DAY + timedelta(days=10), "800 m", 800.0)])
    roster.add(first.folder, "Callum Rhee")
    try:
        rows = roster.squad(first.folder, DAY)
    finally:
        other.close()
    assert [row.race for row in rows] == ["800 m", "Half", ""]
    row = rows[1]
    assert row.block is not None
    assert (row.block.name, row.week, row.weeks) == ("Hills", 2, 3)
    assert row.last_run == date(2026, 5, 9)
    held = first.call(season.season, DAY).blocks
    assert row.block.seconds == held[0].seconds


def test_a_store_that_cannot_be_read_keeps_its_line(first: Library) -> None:
    place = roster.add(first.folder, "Tove Marsh")
    (place / "tercet.db").write_bytes(b"no database")
    row = next(row for row in roster.squad(first.folder, DAY) if row.runner.folder == place)
    assert row.runner.problem


def test_a_store_opened_to_read_is_never_written(first: Library) -> None:
    before = (first.folder / "tercet.db").read_bytes()
    store = Store.to_read(first.folder)
    try:
        with pytest.raises(StoreError), store.atomic("Write"):
            store.put("setting", {"name": "a", "value": "b"})
    finally:
        store.close()
    assert (first.folder / "tercet.db").read_bytes() == before
