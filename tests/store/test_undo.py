"""Any sequence of steps can be taken back to the start and brought back to the end."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tercet.store.database import Store

words = st.text("ab é'\"", max_size=4)
numbers = st.integers(1, 4)
FILE = {"name": "a", "folder": "", "size": 1, "format": "FIT", "taken_in": ""}
BLOCK = {"start": "2026-01-01", "end": "2026-01-07", "kind": "base", "easy_target": 0.8}
THRESHOLD = {"start": "2026-01-01", "source": "typed", "estimated": 0, "interval": "{}"}

puts = st.one_of(
    st.builds(lambda n, v: ("setting", {"name": f"n{n}", "value": v}), numbers, words),
    st.builds(
        lambda n, s, p: ("file", {"sha256": f"s{n}", "status": s, "problem": p, **FILE}),
        numbers, words, words,
    ),
    st.builds(
        lambda n, v: ("block", {"id": n, "name": v, **BLOCK}), st.none() | numbers, words
    ),
    st.builds(
        lambda n, v: ("threshold", {"id": n, "lt1_hr": v, **THRESHOLD}),
        st.none() | numbers, st.none() | st.floats(100, 200),
    ),
    st.builds(
        lambda n, p, r: ("attachment", {"sha256": f"s{n}", "part": p, "run_id": r}),
        numbers, st.integers(0, 1), numbers,
    ),
)  # fmt: skip
removals = st.one_of(
    st.builds(lambda n: ("setting", (f"n{n}",)), numbers),
    st.builds(lambda n: ("file", (f"s{n}",)), numbers),
    st.builds(lambda n: ("block", (n,)), numbers),
    st.builds(lambda n: ("threshold", (n,)), numbers),
    st.builds(lambda n, p: ("attachment", (f"s{n}", p)), numbers, st.integers(0, 1)),
)
#: Steps: a token or none, what is written, and whether the step fails at its end.
steps = st.lists(
    st.tuples(
        st.sampled_from([None, None, "x", "y"]),
        st.lists(puts | removals, min_size=1, max_size=5),
        st.integers(0, 4).map(lambda n: n == 4),
    ),
    max_size=8,
)


def run(store: Store, step: tuple[str | None, list[tuple[str, Any]], bool]) -> None:
    token, changes, fails = step
    try:
        with store.atomic("step", token):
            for table, what in changes:
                if isinstance(what, dict):
                    store.put(table, what)
                else:
                    store.remove(table, *what)
            if fails:
                raise LookupError
    except LookupError:
        pass


@pytest.fixture(scope="module")
def folders(tmp_path_factory: pytest.TempPathFactory) -> Callable[[], Path]:
    return lambda: tmp_path_factory.mktemp("store")


@settings(max_examples=30, deadline=None)
@given(steps, steps)
def test_undo_goes_back_to_the_start_and_redo_to_the_end(
    folders: Callable[[], Path], dump: Callable, before: list, after: list
) -> None:
    folder = folders()
    store = Store(folder)
    try:
        for step in before:
            run(store, step)
    finally:
        store.close()
    store = Store(folder)  # what was done before cannot be taken back after a restart
    try:
        states = [dump(store)]
        names = 0
        for step in after:
            run(store, step)
            states.append(dump(store))
        end = states[-1]
        while store.undo() is not None:
            names += 1
            assert dump(store) in states
        assert dump(store) == states[0]
        for _ in range(names):
            assert store.redo() is not None
        assert store.redo() is None
        assert dump(store) == end
        while store.undo() is not None:
            pass
        assert dump(store) == states[0]
    finally:
        store.close()
