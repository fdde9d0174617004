"""Walks XML files of track points: guarded, without a tree, one row of numbers a point."""

from __future__ import annotations

import math
from array import array
from collections.abc import Iterable, Mapping
from functools import lru_cache
from types import MappingProxyType
from xml.etree.ElementTree import ParseError
from xml.parsers.expat import errors

import numpy as np
from defusedxml.common import DefusedXmlException
from defusedxml.ElementTree import DefusedXMLParser

from tercet.domain import Failed, Recording
from tercet.engine.scale import Floats
from tercet.formats.assemble import COLUMN, COLUMNS, MAX_SAMPLES, Draft, assemble, gather
from tercet.formats.unpack import Refused
from tercet.formats.values import moment, number

MAX_DEPTH = 64
MAX_TEXT = 1_000_000  # characters of one element; looked at once for each piece fed
#: A break between two stretches of points is a stop of the timer from this gap on.
STOP_GAP_S = 5.0
_ROOT_WITHIN = 64 * 1024
_NOTHING = (math.nan,) * len(COLUMNS)
#: What expat says about a document that merely ends too soon.
_CUT = frozenset(
    errors.codes[text]
    for text in (
        errors.XML_ERROR_NO_ELEMENTS,
        errors.XML_ERROR_UNCLOSED_TOKEN,
        errors.XML_ERROR_PARTIAL_CHAR,
        errors.XML_ERROR_UNCLOSED_CDATA_SECTION,
    )
)


class Walker:
    """Gathers the points of a file, activity by activity.

    Sub-classes name the element of a point and which of its inner elements hold what, and
    take note of the elements outside of points. Names come without their namespace.
    """

    format = ""
    point = ""
    #: Names of elements inside a point, and the column their number or time belongs to.
    numbers: Mapping[str, str] = MappingProxyType({})

    def __init__(self) -> None:
        self.path: list[str] = []
        self.draft = Draft(self.format)
        self._found: list[tuple[Draft, Floats]] = []
        self._rows: array[float] = array("d")
        self._breaks: list[int] = []
        self._utc_offset_s: int | None = None
        self._slots = {name: COLUMN[column] for name, column in self.numbers.items()}
        self._row: list[float] | None = None
        self._text: list[str] = []

    def opened(self, name: str, attributes: Mapping[str, str]) -> None:
        """Take note of an element outside of points; ``path`` already ends with it."""

    def closed(self, name: str, text: str) -> None:
        """Take note of the end of an element outside of points; ``path`` still ends with it."""

    def point_opened(self, row: list[float], attributes: Mapping[str, str]) -> None:
        """Fill in what the attributes of a point say."""

    def completed(self, draft: Draft) -> None:
        """Add to a draft what is known only once its stops are."""

    def counts(self) -> bool:
        """Whether points at this place of the file were recorded."""
        return True

    def nothing(self) -> str:
        """Say what a sound file without any recorded point holds."""
        return "It holds no track."

    def stretch_ends(self) -> None:
        """Note that the timer may have stood still between the last point and the next."""
        self._breaks.append(len(self._rows) // len(COLUMNS))

    def finish(self) -> None:
        """Set the draft and the points gathered so far aside as one activity."""
        samples = np.frombuffer(self._rows, dtype=np.float64).reshape(-1, len(COLUMNS))
        draft, self.draft = self.draft, Draft(self.format)
        for index in self._breaks:
            if 0 < index < len(samples):
                before, after = samples[index - 1, 0], samples[index, 0]
                if after - before > STOP_GAP_S:  # false where a time is missing
                    draft.stops.append((float(before), float(after)))
        draft.utc_offset_s = self._utc_offset_s
        self._rows, self._breaks, self._utc_offset_s = array("d"), [], None
        if len(samples) and self.counts():
            self.completed(draft)
            self._found.append((draft, samples))

    def read(self, pieces: bytes | Iterable[bytes], name: str) -> list[Recording] | Failed:
        """Read a file to its end or to the first damage.

        Parameters
        ----------
        pieces : bytes or iterable of bytes
            The file, or its pieces of any length from its beginning.
        name : str
            Name for recordings that bring none.

        Returns
        -------
        list of Recording, or Failed
            Cut and damaged files give the points before the damage.

        Raises
        ------
        Refused
            If the file declares document types or entities, is too deep, has endless texts
            or too many points.
        """
        damage = self._walk([pieces] if isinstance(pieces, bytes) else pieces)
        self.finish()
        if not self._found:
            if damage:
                return Failed(f"No point of a track could be read. {damage}", format=self.format)
            return Failed(self.nothing(), "passed over", self.format)
        if damage:
            self._found[-1][0].damage.append(damage)
        for draft, _ in self._found:
            draft.name = draft.name or name
        found, self._found = self._found[::-1], []
        # one after the other, so that the samples of one are let go before the next
        results = (_timed(*found.pop()) for _ in range(len(found)))
        return gather(results, self.format)

    def _walk(self, pieces: Iterable[bytes]) -> str:
        """Feed the file to the parser; returns a plain sentence on damage, or ""."""
        parser = DefusedXMLParser(target=object(), forbid_dtd=True)
        # Straight from expat: half the time of going through elements, and nothing is kept.
        expat = parser.parser
        expat.StartElementHandler = self._start
        expat.EndElementHandler = self._end
        expat.CharacterDataHandler = self._text.append
        expat.ordered_attributes = 0
        try:
            for piece in pieces:
                parser.feed(piece)
                if sum(map(len, self._text)) > MAX_TEXT:
                    raise Refused(f"The text in <{self.path[-1]}> is too long.")
                if len(self._rows) > MAX_SAMPLES * len(COLUMNS):
                    raise Refused(f"It holds more than {MAX_SAMPLES:,} points.")
            parser.close()
        except ParseError as error:
            line, column = error.position
            if error.code in _CUT:
                within = f"<{self.path[-1]}>" if self.path else "its first lines"
                return f"It is cut short: it ends within {within}, at line {line}."
            return f"It is damaged at line {line}, column {column + 1}; the rest was not read."
        except (DefusedXmlException, LookupError, ValueError) as error:
            raise Refused(_why(error)) from error
        return ""

    def _start(self, tag: str, attributes: dict[str, str]) -> None:
        name = _local(tag)
        path = self.path
        path.append(name)
        if len(path) > MAX_DEPTH:
            raise Refused(f"Its elements are nested more than {MAX_DEPTH} deep.")
        self._text.clear()
        if self._row is None:
            if name == self.point:
                self._row = [*_NOTHING]
                self.point_opened(self._row, attributes)
            else:
                self.opened(name, attributes)

    def _end(self, tag: str) -> None:
        name = _local(tag)
        row = self._row
        if row is None:
            self.closed(name, "".join(self._text).strip())
        elif name == self.point:
            self._row = None
            self._rows.extend(row)
        elif (slot := self._slots.get(name)) is not None:
            if slot:
                row[slot] = number("".join(self._text))
            else:
                row[0], offset = moment("".join(self._text))
                self._utc_offset_s = self._utc_offset_s or offset
        self._text.clear()
        self.path.pop()


def _timed(draft: Draft, samples: Floats) -> Recording | Failed:
    """Assemble a track of at least one point, or say that it is a route."""
    if np.isfinite(samples[:, 0]).any():
        return assemble(draft, samples)
    reason = f"It is a route, not a run: none of its {len(samples):,} points carries a time."
    return Failed(reason, "passed over", draft.format)


class _Found(Exception):
    """Ends the search for the root element."""


def root_of(data: bytes) -> str:
    """Name of the root element of an XML file, "" if none is found near its start.

    Parameters
    ----------
    data : bytes
        The file's first bytes.

    Raises
    ------
    Refused
        If it declares document types or entities, or an unknown encoding.
    """

    def found(tag: str, _attributes: object) -> None:
        raise _Found(_local(tag))

    parser = DefusedXMLParser(target=object(), forbid_dtd=True)
    parser.parser.StartElementHandler = found
    try:
        parser.feed(data[:_ROOT_WITHIN])
        parser.close()
    except _Found as root:
        return str(root)
    except ParseError:
        return ""
    except (DefusedXmlException, LookupError, ValueError) as error:
        raise Refused(_why(error)) from error
    return ""


def _why(error: Exception) -> str:
    if isinstance(error, DefusedXmlException):
        return "It declares a document type or entities, as no recording does."
    return "It is written in an encoding that is not known here."


@lru_cache(maxsize=1024)
def _local(tag: str) -> str:
    return tag.rpartition("}")[2]
