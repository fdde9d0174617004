"""A store on a temporary folder, and a look at everything in it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from tercet.store.database import Store
from tercet.store.schema import KEYS

Dump = dict[str, list[tuple[Any, ...]]]


def dump_of(store: Store) -> Dump:
    """Every row of every table that undo follows, in a fixed order."""
    return {
        table: sorted((tuple(row) for row in store.rows(f"SELECT * FROM {table}")), key=repr)
        for table in KEYS
    }


@pytest.fixture(scope="session")
def dump() -> Callable[[Store], Dump]:
    return dump_of


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    made = Store(tmp_path / "store")
    yield made
    made.close()
