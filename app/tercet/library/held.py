"""What the store keeps of every run, held: after an edit only what it touched is read again."""

from __future__ import annotations

from collections.abc import Callable, Container, Mapping, Sequence
from typing import Generic, TypeVar
from weakref import WeakKeyDictionary

from tercet.store.database import Store

T = TypeVar("T")
#: If more runs than this were touched, all are read anew.
FEW = 50


class HeldRuns(Generic[T]):
    """Answers to one question about every run, by the run's number.

    Parameters
    ----------
    ask : callable
        Takes a store and the runs to read, all of them if None.
    anew : container of str
        Tables of which any change may alter all answers; "run" and "judgement" alter their run's.
    """

    def __init__(
        self,
        ask: Callable[[Store, Sequence[int] | None], Mapping[int, T]],
        anew: Container[str] = (),
    ) -> None:
        self._ask, self._anew = ask, anew
        self._held: WeakKeyDictionary[Store, tuple[tuple[int, int], Mapping[int, T]]] = (
            WeakKeyDictionary()
        )

    def of(self, store: Store) -> Mapping[int, T]:
        """The answers as the store stands now; the same object as long as nothing was touched."""
        before = self._held.get(store)
        mark, touched = store.touched_since(before[0] if before is not None else None)
        answers = None
        if before is not None and touched is not None:
            answers = self._mended(store, before[1], touched)
        if answers is None:
            answers = self._ask(store, None)
        self._held[store] = mark, answers
        return answers

    def _mended(
        self, store: Store, before: Mapping[int, T], touched: Sequence[tuple[str, object]]
    ) -> Mapping[int, T] | None:
        ids = {int(str(key)) for table, key in touched if table in ("run", "judgement")}
        if len(ids) > FEW or any(table in self._anew for table, _ in touched):
            return None
        if not ids:
            return before
        read = self._ask(store, sorted(ids))
        return {number: told for number, told in before.items() if number not in ids} | dict(read)
