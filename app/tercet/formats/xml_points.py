"""Walks XML files of track points: guarded, without a tree, one row of numbers a point."""

from __future__ import annotations

import math
import re
from array import array
from collections.abc import Iterable, Mapping
from itertools import chain
from types import MappingProxyType
from typing import Any
from xml.etree.ElementTree import ParseError
from xml.parsers.expat import errors

import numpy as np
from defusedxml.common import DefusedXmlException
from defusedxml.ElementTree import DefusedXMLParser

from tercet.domain import Failed, Recording
from tercet.engine.scale import Floats
from tercet.formats.alike import Shape, blanks, shape_of
from tercet.formats.assemble import COLUMN, COLUMNS, MAX_SAMPLES, Draft, assemble, gather
from tercet.formats.unpack import Refused
from tercet.formats.values import moment, number
from tercet.language import grouped, tr

MAX_DEPTH = 64
MAX_TEXT = 1_000_000  # characters of one element; looked at once for each piece fed
#: A break between two stretches of points is a stop of the timer from this gap on.
STOP_GAP_S = 5.0
_ROOT_WITHIN = 64 * 1024
_REMEMBERED = 1024  # tags
#: So much is read by the parser before a point is taken for a pattern of those that follow, and
#: more where few followed that were like it. [bytes], [points]
_STEP, _POINTS = 8 * 1024, 50
_KEPT = 64 * 1024  # of a point that is cut off
_NOWHERE = (-1, -1)
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
    #: Attributes of a point, likewise.
    attributes: Mapping[str, str] = MappingProxyType({})

    def __init__(self) -> None:
        self.path: list[str] = []
        self.draft = Draft(self.format)
        self._found: list[tuple[Draft, list[Floats]]] = []
        self._rows: array[float] = array("d")  # the latest points
        self._settled: list[array[float]] = [array("d") for _ in COLUMNS]  # those before, by column
        self._points = 0
        self._breaks: list[int] = []
        self._utc_offset_s: int | None = None
        self._slots = _Slots({name: COLUMN[column] for name, column in self.numbers.items()})
        self._told = {name: COLUMN[column] for name, column in self.attributes.items()}
        self._text: list[str] = []
        self._shape: Shape | None = None
        self._fed = 0  # bytes the parser was given
        self._latest = _NOWHERE  # where the latest point and its last tag began, if one came last
        self._end = re.compile(rb"</(?:[^<>:]*:)?%b>" % self.point.encode())

    def opened(self, name: str, attributes: Mapping[str, str]) -> None:
        """Take note of an element outside of points; ``path`` already ends with it."""

    def closed(self, name: str, text: str) -> None:
        """Take note of the end of an element outside of points; ``path`` still ends with it."""

    def completed(self, draft: Draft) -> None:
        """Add to a draft what is known only once its stops are."""

    def counts(self) -> bool:
        """Whether points at this place of the file were recorded."""
        return True

    def nothing(self) -> str:
        """Say what a sound file without any recorded point holds."""
        return tr("It holds no track.")

    def stretch_ends(self) -> None:
        """Note that the timer may have stood still between the last point and the next."""
        self._settle()
        self._breaks.append(self._points)

    def finish(self) -> None:
        """Set the draft and the points gathered so far aside as one activity."""
        self._settle()
        points, nothing = self._points, np.broadcast_to(np.float64(math.nan), self._points)
        for column in filter(None, self._settled):
            self._fill(column)
        columns = [
            np.frombuffer(column, dtype=np.float64) if len(column) else nothing
            for column in self._settled
        ]
        time = columns[0]
        draft, self.draft = self.draft, Draft(self.format)
        for index in self._breaks:
            if 0 < index < points:
                before, after = float(time[index - 1]), float(time[index])
                if after - before > STOP_GAP_S:  # false where a time is missing
                    draft.stops.append((before, after))
        draft.utc_offset_s = self._utc_offset_s
        self._settled = [array("d") for _ in COLUMNS]
        self._points, self._breaks, self._utc_offset_s = 0, [], None
        if points and self.counts():
            self.completed(draft)
            self._found.append((draft, columns))

    def _settle(self) -> None:
        """Put the latest points to those before."""
        rows = np.frombuffer(self._rows, dtype=np.float64).reshape(-1, len(COLUMNS))
        self._put(len(rows), dict(enumerate(rows.T)))
        del rows
        self._rows = array("d")

    def _put(self, points: int, columns: Mapping[int, Floats]) -> None:
        """Put points behind all others; a column that says nothing takes no room."""
        for slot, values in columns.items():
            column = self._settled[slot]
            if len(column) or not np.isnan(values).all():
                self._fill(column)
                column.frombytes(values.tobytes())
        self._points += points

    def _fill(self, column: array[float]) -> None:
        """Let a column say of all points so far, where it ends sooner, that nothing is known."""
        if len(column) < self._points:
            column.frombytes(np.full(self._points - len(column), math.nan).tobytes())

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
                return Failed(
                    tr("No point of a track could be read.") + f" {damage}", format=self.format
                )
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
        self._hear(parser.parser)
        try:
            rest = b""
            for piece in chain(filter(None, pieces), [b""]):
                rest = self._take(parser, rest + piece, last=not piece)
                if sum(map(len, self._text)) > MAX_TEXT:
                    raise Refused(tr("The text in <{element}> is too long.", element=self.path[-1]))
                self._settle()
                if self._points > MAX_SAMPLES:
                    raise Refused(
                        tr("It holds more than {most} points.", most=grouped(MAX_SAMPLES))
                    )
            parser.close()
        except ParseError as error:
            line, column = error.position
            if error.code in _CUT:
                if not self.path:
                    return tr(
                        "It is cut short: it ends within its first lines, at line {line}.",
                        line=line,
                    )
                return tr(
                    "It is cut short: it ends within <{element}>, at line {line}.",
                    element=self.path[-1],
                    line=line,
                )
            return tr(
                "It is damaged at line {line}, column {column}; the rest was not read.",
                line=line,
                column=column + 1,
            )
        except (DefusedXmlException, LookupError, ValueError) as error:
            raise Refused(_why(error)) from error
        return ""

    def _take(self, parser: Any, data: bytes, *, last: bool) -> bytes:
        """Take in a piece; gives back the beginning of a point that is cut off, unless it is last.

        The parser reads a point now and then. Those that follow it with the same tags are read
        without it, and it is given as many lines and columns of blanks for them.
        """
        at, step = 0, _STEP
        while at < len(data):
            if self._shape is not None:
                end, points, columns, offset = self._shape.read(data, at)
                self._settle()
                self._put(points, columns)
                self._utc_offset_s = self._utc_offset_s or offset
                self._feed(parser, blanks(data, at, end))
                self._text.clear()
                step = _STEP if points > 2 * _POINTS else 2 * step
                at = end
            found = self._end.search(data, at + step)
            if found is None and self._shape is not None and not last and len(data) - at < _KEPT:
                return data[at:]
            piece = data[at : found.end() if found else None]
            self._shape = None
            self._feed(parser, piece)
            first, close = (place - self._fed + len(piece) for place in self._latest)
            if first >= 0 and self._end.fullmatch(piece, close):
                self._shape = shape_of(piece[first:], self._told, self._slots.by_name)
            at += len(piece)
        return b""

    def _feed(self, parser: Any, data: bytes) -> None:
        self._fed += len(data)
        parser.feed(data)

    def _hear(self, expat: Any) -> None:
        """Let the parser call one pair of functions outside of points and a quicker one within."""
        path, text, names, slots = self.path, self._text, _Names(), self._slots
        point, row, began = self.point, [*_NOTHING], 0

        def opened(tag: str, attributes: dict[str, str]) -> None:
            nonlocal row, began
            name = names[tag]
            path.append(name)
            if len(path) > MAX_DEPTH:
                raise Refused(tr("Its elements are nested more than {most} deep.", most=MAX_DEPTH))
            text.clear()
            if name == point:
                row, began = [*_NOTHING], expat.CurrentByteIndex
                for told, slot in self._told.items():
                    row[slot] = number(attributes.get(told, ""))
                expat.StartElementHandler, expat.EndElementHandler = opened_within, closed_within
            else:
                self._latest = _NOWHERE
                self.opened(name, attributes)

        def closed(tag: str) -> None:
            self._latest = _NOWHERE
            self.closed(names[tag], "".join(text).strip())
            text.clear()
            path.pop()

        def opened_within(tag: str, _attributes: dict[str, str]) -> None:
            path.append(names[tag])
            if len(path) > MAX_DEPTH:
                raise Refused(tr("Its elements are nested more than {most} deep.", most=MAX_DEPTH))
            text.clear()

        def closed_within(tag: str) -> None:
            slot = slots[tag]
            if slot > 0:
                row[slot] = number("".join(text))
            elif slot == 0:
                row[0], offset = moment("".join(text))
                if offset:
                    self._utc_offset_s = self._utc_offset_s or offset
            elif names[tag] == point:
                self._rows.extend(row)
                self._latest = began, expat.CurrentByteIndex
                expat.StartElementHandler, expat.EndElementHandler = opened, closed
            text.clear()
            path.pop()

        expat.StartElementHandler, expat.EndElementHandler = opened, closed
        expat.CharacterDataHandler = text.append
        expat.ordered_attributes = 0


def _timed(draft: Draft, columns: list[Floats]) -> Recording | Failed:
    """Assemble a track of at least one point, or say that it is a route."""
    if np.isfinite(columns[0]).any():
        return assemble(draft, columns)
    reason = tr(
        "It is a route, not a run: none of its {n} points carries a time.",
        n=grouped(len(columns[0])),
    )
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
        return tr("It declares a document type or entities, as no recording does.")
    return tr("It is written in an encoding that is not known here.")


def _local(tag: str) -> str:
    return tag.rpartition("}")[2]


class _Names(dict[str, str]):
    """Names without their namespace, by tag; forgotten where a file has no end of tags."""

    def __missing__(self, tag: str) -> str:
        if len(self) >= _REMEMBERED:
            self.clear()
        found = self[tag] = _local(tag)
        return found


class _Slots(dict[str, int]):
    """Columns of elements within a point, by tag; -1 for all others."""

    def __init__(self, by_name: Mapping[str, int]) -> None:
        super().__init__()
        self.by_name = by_name

    def __missing__(self, tag: str) -> int:
        if len(self) >= _REMEMBERED:
            self.clear()
        found = self[tag] = self.by_name.get(_local(tag), -1)
        return found
