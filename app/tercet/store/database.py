"""One SQLite file with one writer: transactions, undo steps, migrations, backups."""

from __future__ import annotations

import sqlite3
import time
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from tercet.language import tr
from tercet.store.errors import StoreError
from tercet.store.lock import FileLock
from tercet.store.originals import Originals
from tercet.store.schema import KEYS, MIGRATIONS

Row = dict[str, Any]
#: A store that takes longer to check is opened with the rest unchecked. [s]
CHECKED_S = 0.02
#: Undo goes back this many steps.
STEPS_KEPT = 30


@dataclass
class Step:
    """What one action changed: earlier and later rows, in the order of the changes."""

    name: str
    token: object = None
    rows: list[tuple[str, tuple[Any, ...], Row | None, Row | None]] = field(default_factory=list)

    @property
    def tables(self) -> frozenset[str]:
        """Which tables the step touched."""
        return frozenset(table for table, *_ in self.rows)


class Store:
    """A runner's store: ``tercet.db``, ``originals/`` and a lock file in one folder.

    All calls come from one thread at a time. Every write happens inside :meth:`atomic`, which is
    one transaction and one undo step.

    Raises
    ------
    StoreError
        If the folder cannot be written, the file is damaged or made by a newer version.
    StoreBusy
        If another process holds it.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise StoreError(
                tr(
                    "The store's folder cannot be made: {error} ({folder}).",
                    error=error.strerror,
                    folder=folder,
                )
            ) from error
        self._lock: FileLock | None = FileLock(folder / "tercet.lock")
        try:
            self._open(folder)
        except BaseException:
            if self._lock is not None:
                self._lock.close()
            raise
        self._begin()

    def _begin(self) -> None:
        self._undo: list[Step] = []
        self._touched: list[tuple[str, Any]] = []
        self._redo: list[Step] = []
        self._step: Step | None = None

    @classmethod
    def to_read(cls, folder: Path) -> Store:
        """Open a store beside its owner, to read only: no lock, nothing is changed.

        Raises
        ------
        StoreError
            If it cannot be read, or was last open in another version.
        """
        store = cls.__new__(cls)
        store.folder = folder
        store._lock = None
        store._begin()
        path = folder / "tercet.db"
        try:
            address = f"{path.resolve().as_uri()}?mode=ro"
            store._db = sqlite3.connect(
                address, uri=True, isolation_level=None, check_same_thread=False
            )
            store._db.row_factory = sqlite3.Row
            store._db.execute("PRAGMA busy_timeout = 2000")
            version = store._version()
        except sqlite3.DatabaseError as error:
            raise StoreError(
                tr("The store cannot be read: {error} ({path}).", error=error, path=path)
            ) from error
        if version != len(MIGRATIONS):
            store._db.close()
            raise StoreError(tr("It was last open in another version. Open this runner once."))
        return store

    def _open(self, folder: Path) -> None:
        path = folder / "tercet.db"
        try:
            self._db = sqlite3.connect(path, isolation_level=None, check_same_thread=False)
        except sqlite3.OperationalError as error:
            raise StoreError(
                tr("The store's file cannot be opened: {error} ({path}).", error=error, path=path)
            ) from error
        self._db.row_factory = sqlite3.Row
        try:
            self._refuse_newer(path)
            # Rollback journal and FULL: no side files, nothing lost that was said to be saved.
            self._db.execute("PRAGMA journal_mode = DELETE")
            self._db.execute("PRAGMA synchronous = FULL")
            self._db.execute("PRAGMA busy_timeout = 2000")
            # Ten years of rows stay in memory, so that the season is read again without the file.
            self._db.execute("PRAGMA cache_size = -16000")
            self._check_quickly()
            self._migrate(path)
            self.originals = Originals(folder / "originals")
        except sqlite3.OperationalError as error:
            self._db.close()
            raise StoreError(
                tr(
                    "The store cannot be opened: {error}. Make sure that {folder} may be "
                    "written and that its disk has room.",
                    error=error,
                    folder=folder,
                )
            ) from error
        except (sqlite3.DatabaseError, UnicodeDecodeError) as error:
            # SQLite quotes damaged names in its message, which then may be no text.
            self._db.close()
            raise StoreError(
                tr(
                    "The store's file is damaged or not a store: {path}. Your original "
                    "recordings lie untouched in {originals}; rename tercet.db and add that folder "
                    "to a new store. ({error})",
                    path=path,
                    originals=folder / "originals",
                    error=error,
                )
            ) from error
        except StoreError:
            self._db.close()
            raise

    def _check_quickly(self) -> None:
        """Look for damage as long as a start can wait; the pages left tell when they are read."""
        until = time.monotonic() + CHECKED_S
        self._db.set_progress_handler(lambda: time.monotonic() > until, 2000)
        try:
            if self._db.execute("PRAGMA quick_check").fetchone()[0] != "ok":
                raise sqlite3.DatabaseError("quick check failed")
        except sqlite3.OperationalError as error:
            if "interrupted" not in str(error):
                raise
        finally:
            self._db.set_progress_handler(None, 0)

    def _version(self) -> int:
        return int(self._db.execute("PRAGMA user_version").fetchone()[0])

    def _refuse_newer(self, path: Path) -> None:
        """Before anything is written: a newer version may keep its file another way."""
        if self._version() > len(MIGRATIONS):
            raise StoreError(
                tr(
                    "This store was written by a newer version of Tercet ({path}). Use "
                    "that version; nothing was changed.",
                    path=path,
                )
            )

    def _migrate(self, path: Path) -> None:
        version = self._version()
        if 0 < version < len(MIGRATIONS):
            self.back_up(path.with_name(f"tercet-before-version-{len(MIGRATIONS)}.db"))
        for number in range(version, len(MIGRATIONS)):
            self._db.execute("BEGIN IMMEDIATE")
            for statement in MIGRATIONS[number]:
                self._db.execute(statement)
            self._db.execute(f"PRAGMA user_version = {number + 1}")
            self._db.execute("COMMIT")

    def back_up(self, target: Path) -> None:
        """Copy the database safely while it is open."""
        copy = sqlite3.connect(target)
        try:
            self._db.backup(copy)
        finally:
            copy.close()

    def close(self) -> None:
        """Close the file and let go of the lock."""
        self._db.close()
        if self._lock is not None:
            self._lock.close()

    # Reading -----------------------------------------------------------------------------

    def rows(self, sql: str, values: Sequence[Any] | Mapping[str, Any] = ()) -> list[sqlite3.Row]:
        """Run a query; only modules of the store call this."""
        try:
            return self._db.execute(sql, values).fetchall()
        except (sqlite3.DatabaseError, UnicodeDecodeError) as error:
            raise StoreError(tr("The store could not be read: {error}.", error=error)) from error

    def touched_since(
        self, mark: tuple[int, int] | None
    ) -> tuple[tuple[int, int], list[tuple[str, Any]] | None]:
        """A mark of how the store stands now, and what was touched since another mark.

        Tables with the first part of a key each; None if that is not known: no mark, or another
        process has written.
        """
        others = int(self._db.execute("PRAGMA data_version").fetchone()[0])
        now = (len(self._touched), others)
        if mark is None or mark[1] != others:
            return now, None
        return now, self._touched[mark[0] :]

    # Writing -----------------------------------------------------------------------------

    @contextmanager
    def atomic(self, step: str, token: object = None, *, kept: bool = True) -> Iterator[None]:
        """Open a transaction that is one undo step named ``step``.

        A step with the same token as the one before is merged with it (batches of one import,
        edits of one field). With ``kept`` False undo does not know of it: what the program
        reckons anew by itself is no action of the user's.
        """
        if self._step is not None:
            raise RuntimeError("a step is already open")
        done = self._step = Step(step, token)
        try:
            with self._transaction():
                yield
        finally:
            self._step = None
        if not done.rows:
            return
        self._touched += [(table, key[0]) for table, key, *_ in done.rows]
        if not kept:
            return
        self._redo.clear()
        if self._undo and token is not None and self._undo[-1].token == token:
            self._undo[-1].rows += done.rows
            self._undo[-1].name = step
        else:
            self._undo.append(done)
            del self._undo[:-STEPS_KEPT]

    @contextmanager
    def _transaction(self) -> Iterator[None]:
        """All or nothing; what the database refuses is told in words."""
        try:
            self._db.execute("BEGIN IMMEDIATE")
            yield
            self._db.execute("COMMIT")
        except BaseException as error:
            if self._db.in_transaction:
                self._db.execute("ROLLBACK")
            if isinstance(error, sqlite3.DatabaseError):
                raise StoreError(
                    f"Nothing was saved: {error}. Make sure that {self.folder} may be written "
                    "and that its disk has room."
                ) from error
            raise

    def put(self, table: str, row: Row) -> int:
        """Insert a row or replace the one with its key; returns its row number."""
        if self._step is None:
            raise RuntimeError("writes need an open step")
        keys = KEYS[table]
        earlier = None
        if all(row.get(key) is not None for key in keys):
            earlier = self._fetch(table, tuple(row[key] for key in keys))
        later = {**(earlier or {}), **row}
        if earlier == later and len(keys) == 1 and isinstance(later[keys[0]], int):
            return int(later[keys[0]])  # nothing to write
        number = self._write(table, later)
        if len(keys) == 1 and later.get(keys[0]) is None:
            later[keys[0]] = number
        key = tuple(later[name] for name in keys)
        if earlier != later:
            # Columns left to their defaults are read back, so that redo writes the whole row.
            self._step.rows.append((table, key, earlier, self._fetch(table, key)))
        return number

    def remove(self, table: str, *key: Any) -> None:
        """Remove the row with this key, if there."""
        if self._step is None:
            raise RuntimeError("writes need an open step")
        earlier = self._fetch(table, key)
        if earlier is not None:
            self._delete(table, key)
            self._step.rows.append((table, key, earlier, None))

    def put_streams(self, sha256: str, part: int, packed: Mapping[str, bytes]) -> None:
        """Keep the packed streams of a file's part; they belong to the file, not to undo."""
        if self._step is None:
            raise RuntimeError("writes need an open step")
        self._db.executemany(
            "INSERT OR REPLACE INTO stream (sha256, part, name, data) VALUES (?, ?, ?, ?)",
            [(sha256, part, name, data) for name, data in packed.items()],
        )

    def note_shared(self, pairs: Sequence[tuple[str, str]]) -> None:
        """Remember what a copy that was handed over says; nothing that undo would take back."""
        with self._transaction():
            self._db.executemany("INSERT OR IGNORE INTO shared (what, hash) VALUES (?, ?)", pairs)

    def purge(self) -> None:
        """Remove what was taken in and then deleted; call only with nothing to undo.

        Originals that this database never knew stay: it may be a new one in place of a damaged
        one, and they are then all that is left.
        """
        gone = [
            row["sha256"]
            for row in self.rows(
                # From one content to the next by the key, past the data between.
                "WITH RECURSIVE kept (sha256) AS (SELECT MIN(sha256) FROM stream UNION ALL "
                "SELECT (SELECT MIN(sha256) FROM stream WHERE sha256 > kept.sha256) FROM kept "
                "WHERE kept.sha256 IS NOT NULL) SELECT sha256 FROM kept "
                "WHERE sha256 IS NOT NULL AND sha256 NOT IN (SELECT sha256 FROM file)"
            )
        ]
        self.originals.remove(gone)
        if gone:
            with self._transaction():
                self._db.executemany("DELETE FROM stream WHERE sha256 = ?", [(g,) for g in gone])

    # Undo --------------------------------------------------------------------------------

    @property
    def undo_name(self) -> str | None:
        """Name of the step that undo would take back."""
        return self._undo[-1].name if self._undo else None

    @property
    def redo_name(self) -> str | None:
        """Name of the step that redo would bring back."""
        return self._redo[-1].name if self._redo else None

    def undo(self) -> Step | None:
        """Take back the last step, in one transaction."""
        if not self._undo:
            return None
        step = self._undo[-1]
        self._replay([(table, key, earlier) for table, key, earlier, _ in reversed(step.rows)])
        self._redo.append(self._undo.pop())
        return step

    def redo(self) -> Step | None:
        """Bring back the last undone step, in one transaction."""
        if not self._redo:
            return None
        step = self._redo[-1]
        self._replay([(table, key, later) for table, key, _, later in step.rows])
        self._undo.append(self._redo.pop())
        return step

    def _replay(self, rows: Sequence[tuple[str, tuple[Any, ...], Row | None]]) -> None:
        with self._transaction():
            for table, key, row in rows:
                if row is None:
                    self._delete(table, key)
                else:
                    self._write(table, row)
        self._touched += [(table, key[0]) for table, key, _ in rows]

    def _fetch(self, table: str, key: tuple[Any, ...]) -> Row | None:
        where = " AND ".join(f"{name} = ?" for name in KEYS[table])
        found = self._db.execute(f"SELECT * FROM {table} WHERE {where}", key).fetchone()
        return dict(found) if found is not None else None

    def _write(self, table: str, row: Row) -> int:
        names = ", ".join(f'"{name}"' for name in row)
        marks = ", ".join("?" for _ in row)
        cursor = self._db.execute(
            f"INSERT OR REPLACE INTO {table} ({names}) VALUES ({marks})", tuple(row.values())
        )
        return int(cursor.lastrowid or 0)

    def _delete(self, table: str, key: tuple[Any, ...]) -> None:
        where = " AND ".join(f"{name} = ?" for name in KEYS[table])
        self._db.execute(f"DELETE FROM {table} WHERE {where}", key)
