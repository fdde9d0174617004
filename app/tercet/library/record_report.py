"""What taking a record in has done, and what two copies say differently."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from tercet.domain import Changes
from tercet.language import mark, several, tr
from tercet.store.database import Row

STEP = mark("Take in a record")


@dataclass(frozen=True)
class Conflict:
    """Two copies that say different things; ``mine`` holds until theirs is chosen."""

    about: str  # "Run of 3 May 2026: note", "Blocks"
    mine: Any
    theirs: Any
    run: Row | None = field(default=None, repr=False)  # as theirs has it
    saying: str = ""  # of the run: note, effort, ...
    part: str = ""  # of the plan
    setting: str = ""  # of a review
    rows: tuple[Row, ...] = field(default=(), repr=False)


@dataclass
class Merged:
    """What taking a record in has done."""

    runner: str
    by: str
    written: str
    new_files: int = 0
    here: int = 0
    refused: int = 0
    taken: list[str] = field(default_factory=list)  # "3 notes", "blocks"
    conflicts: list[Conflict] = field(default_factory=list)
    stopped: bool = False
    changes: Changes = field(default_factory=Changes)
    into: str = ""  # the name that this copy bore before

    @property
    def words(self) -> str:
        """One line that says it all, and first of all if two runners were put together."""
        strange = self.into and self.runner and self.into.casefold() != self.runner.casefold()
        parts = [
            several(self.new_files, mark("{n} file new"), mark("{n} files new")),
            tr("{n} already here", n=self.here),
            *self.taken,
        ]
        if strange:
            whose = tr("{theirs}'s record into {mine}'s", theirs=self.runner, mine=self.into)
            parts.insert(0, whose)
        if self.conflicts:
            parts.append(tr("{n} said otherwise here", n=len(self.conflicts)))
        return ", ".join(parts)
