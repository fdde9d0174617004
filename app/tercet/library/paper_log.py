"""A page of a paper log while it is typed: each line understood, judged, told from what is here."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from datetime import date, datetime
from functools import lru_cache

from tercet.domain import DatedThresholds, RaceResult
from tercet.engine.notation import Piece, stretches
from tercet.engine.shades import Thresholds
from tercet.formats.paper import Entry, Guess, Shorthand, Unclear, parse_session, read_lines
from tercet.language import tr
from tercet.library import localtime, written
from tercet.library.known_race import basis, known_race, pair_of
from tercet.library.paper_words import in_words, length
from tercet.library.reading import Row, in_force
from tercet.library.views import ZERO, Five
from tercet.store import paper_queries, queries
from tercet.store.database import Store

#: What is to be done about a line, as :class:`PaperRow` has it.
READ, GUESSED, ASKED, HERE, REST, LEFT_OUT = "read", "guessed", "asked", "here", "rest", "left out"
KEEPABLE = (READ, GUESSED)


@dataclass(frozen=True)
class PaperRow:
    """One session of a page, a day off, or a line that is asked about.

    ``seconds`` are by shade through the thresholds of its day; ``about`` says that some of them
    follow from typical speeds. ``here`` says in words which stored run it is.
    """

    entry: Entry
    state: str
    words: str = ""
    lengths: str = ""
    seconds: Five = ZERO
    metres: float = 0.0
    about: bool = False
    race_m: float | None = None
    here: str = ""
    basis: str = ""  # what its race paces are reckoned from

    @property
    def running_s(self) -> float:
        """Easy, moderate, hard and unjudged seconds."""
        return sum(self.seconds[:3]) + self.seconds[4]

    @property
    def kept(self) -> bool:
        """Whether keeping the page would add it."""
        return self.state in KEEPABLE


@dataclass(frozen=True)
class PaperView:
    """A page as it is understood."""

    text: str
    rows: tuple[PaperRow, ...] = ()
    estimated: bool = False
    judged: bool = True  # whether the shades of paces are known at all
    basis: tuple[str, ...] = ()  # what race paces are reckoned from

    def count(self, *states: str) -> int:
        """How many rows are in one of these states."""
        return sum(row.state in states for row in self.rows)


@dataclass(frozen=True)
class Draft:
    """A page as typed, with what was answered meanwhile and is not stored yet."""

    text: str = ""
    shorthand: Shorthand | None = None  # None for the stored one
    left_out: Collection[str] = ()  # pieces not to be asked about again, by their keys
    changing: int | None = None  # the kept run whose words these are


def piece_key(entry: Entry, item: Unclear) -> str:
    """What a piece is left out by: its own line of its own day, so that no other goes with it."""
    return f"{entry.start or ''}|{entry.typed}|{item.text.strip()}"


def guess_question(guess: Guess) -> str:
    """What is asked of a guess, with its likeliest readings."""
    readings = (guess.reading, *guess.others[:1])
    return f"“{guess.text}”: {' or '.join(reading.strip(' :') for reading in readings)}?"


def waiting(entry: Entry, left_out: Collection[str]) -> list[Unclear]:
    """What is still to be asked about a line."""
    return [item for item in entry.unclear if piece_key(entry, item) not in left_out]


def stored_shorthand(store: Store) -> Shorthand:
    """This runner's shorthand."""
    return Shorthand(*paper_queries.shorthand(store))


def read(store: Store, draft: Draft, today: date) -> PaperView:
    """Understand a page; nothing is stored.

    Parameters
    ----------
    store : Store
    draft : Draft
    today : date
        Years up to it are offered where none is named.
    """
    shorthand = draft.shorthand or stored_shorthand(store)
    entries = read_lines(draft.text, shorthand, guess=True, today=today)
    known = Known.of(store)
    used = set() if draft.changing is None else {draft.changing}
    rows = tuple(
        row
        for entry in entries
        if (row := _row(store, entry, known, used, draft.left_out)) is not None
    )
    forces = [force for force in known.thresholds if force.values.by_speed]
    return PaperView(
        draft.text,
        rows,
        any(force.estimated for force in forces),
        bool(forces),
        tuple(dict.fromkeys(row.basis for row in rows if row.basis)),
    )


@dataclass(frozen=True)
class Known:
    """What is known of a runner besides the words."""

    thresholds: tuple[DatedThresholds, ...]
    results: tuple[RaceResult, ...]
    zone: str

    @classmethod
    def of(cls, store: Store) -> Known:
        """Ask the store."""
        return cls(
            tuple(queries.thresholds(store)),
            tuple(paper_queries.race_results(store)),
            queries.setting(store, "zone"),
        )

    def on(self, day: date) -> tuple[DatedThresholds | None, tuple[float, float] | None]:
        """Thresholds and race of a day."""
        return in_force(self.thresholds, day), pair_of(known_race(self.results, day))


def _row(
    store: Store,
    entry: Entry,
    known: Known,
    used: set[int],
    left_out: Collection[str],
) -> PaperRow | None:
    open_questions = waiting(entry, left_out)
    if entry.kind == "heading" and not open_questions:
        return None
    if entry.kind == "rest" and not open_questions:
        return PaperRow(
            entry,
            REST,
            tr("day off, note: {note}", note=entry.note) if entry.note else tr("day off"),
        )
    if entry.kind in ("heading", "other", "rest"):
        return PaperRow(entry, ASKED if open_questions else LEFT_OUT, entry.typed)
    if entry.guesses:  # what nobody has said is not judged
        entry = replace(entry, notation=entry.held, session=parse_session(entry.held))
    row = understood(entry, known)
    if open_questions or entry.start is None or not entry.session.pieces:
        undone = ASKED if open_questions else LEFT_OUT
        return replace(row, state=undone, words=row.words or entry.typed)
    other = stored_run(store, entry, row, known.zone, used)
    if other is not None:
        used.add(other["id"])
        return replace(row, state=HERE, here=_in_words(other))
    return replace(row, state=GUESSED if entry.guesses else READ)


def understood(entry: Entry, known: Known) -> PaperRow:
    """A session's row, by what was known of the runner on its day."""
    pieces = entry.session.pieces
    force, race = (None, None) if entry.start is None else known.on(entry.start.date())
    seconds, metres, about = _sums(pieces, force.values if force is not None else None, race)
    bouts = [item for piece in pieces for item in piece.bouts()]
    said = []
    if bouts and all(item.metres is not None for _, item in bouts):
        said.append(length(sum(n * (item.metres or 0.0) for n, item in bouts)))
    race_m = next((item.metres for _, item in bouts if item.word == "race"), None)
    by_race = any(item.race_m is not None for _, item in bouts)
    told = basis(race) if by_race else ""
    words = in_words(pieces)
    return PaperRow(entry, READ, words, ", ".join(said), seconds, metres, about, race_m, basis=told)


@lru_cache(maxsize=4096)
def _sums(
    pieces: tuple[Piece, ...], values: Thresholds | None, race: tuple[float, float] | None
) -> tuple[Five, float, bool]:
    sums, metres, about = [0.0] * 5, 0.0, False
    for item in stretches(pieces, values, race):
        sums[item.shade] += item.seconds or 0.0
        metres += item.metres or 0.0
    for piece in pieces:
        about |= any(b.seconds is None and b.speed is None for _, b in piece.bouts())
    easy, moderate, hard, standing, unjudged = sums
    return (easy, moderate, hard, standing, unjudged), metres, about


def stored_run(
    store: Store, entry: Entry, row: PaperRow, zone: str, used: Collection[int], sha256: str = ""
) -> Row | None:
    """The stored run, recorded or from paper, that a session is; each stands for one only."""
    start = entry.start or datetime.min
    moment = written.moment(start, zone)
    told = {
        "notation": entry.notation,
        "day": start.date().isoformat(),
        "start_utc": moment.timestamp(),
        "utc_offset_s": localtime.offset_at(moment, None, localtime.zone_named(zone)),
        "clock": written.CLOCKS.get(start.hour, ""),
        "elapsed_s": sum(row.seconds),
        "distance_m": row.metres,
        "sport": "running",
    }
    found = written.same_run(store, told, sha256)
    if found is not None and found["id"] not in used and not found["notation"]:
        return found
    words = _folded(entry.notation)
    for kept in queries.runs_of_day(store, start.date().isoformat()):
        same = kept["start_utc"] == told["start_utc"] and _folded(kept["notation"]) == words
        if same and kept["id"] not in used:
            return dict(kept)
    return None


def _folded(notation: str) -> str:
    return " ".join(notation.casefold().split())


def _in_words(run: Row) -> str:
    if run["notation"]:
        return tr("already here, from paper")
    start = localtime.local_time(run["start_utc"], run["utc_offset_s"])
    return tr("already here, recorded at {clock}", clock=f"{start:%H:%M}")
