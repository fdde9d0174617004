"""Files read by pieces: counted, and unpacked from gzip within fixed limits."""

from __future__ import annotations

import hashlib
import zlib
from collections.abc import Iterator
from typing import IO

from tercet.language import grouped, tr

GZIP_MAGIC = b"\x1f\x8b"
#: No recording is larger; also the limit for files that are not packed.
MAX_BYTES = 512 * 1024 * 1024
#: Recordings shrink to a tenth or so; a hundredfold and more is a trap once it is also large.
MAX_RATIO = 200
RATIO_MATTERS_FROM = 16 * 1024 * 1024
PIECE = 256 * 1024
#: Small pieces, since what a damaged piece holds is lost.
_PIECE_IN = 16 * 1024
_GZIP = 16 + zlib.MAX_WBITS


class Refused(Exception):
    """The file must not be read on; the message says why."""


class Counted:
    """A stream that sums up what passes: its length and its SHA-256."""

    def __init__(self, stream: IO[bytes]) -> None:
        self._stream = stream
        self._sum = hashlib.sha256()
        self.size = 0

    def read(self, size: int = PIECE) -> bytes:
        """Give the next piece.

        Raises
        ------
        Refused
            Past :data:`MAX_BYTES`.
        """
        piece = self._stream.read(size)
        self._sum.update(piece)
        self.size += len(piece)
        if self.size > MAX_BYTES:
            raise Refused(tr("It is larger than {mb} MB.", mb=MAX_BYTES >> 20))
        return piece

    def finish(self) -> str:
        """Read what is left and give the SHA-256 of the whole."""
        while self.read(4 * PIECE):
            pass
        return self._sum.hexdigest()


class Pieces:
    """The pieces of a file, unpacked as far as it is sound if it is gzip.

    ``head`` holds the first piece without taking it; ``damage`` is a plain sentence once the
    pieces are through, or "". Past a limit :class:`Refused` is raised.
    """

    def __init__(self, stream: Counted) -> None:
        self._stream = stream
        first = stream.read()
        self.packed = first.startswith(GZIP_MAGIC)
        self.damage = ""
        self._taken = self._given = 0
        self._more = self._unpacked(first) if self.packed else self._plain(first)
        self.head = next(self._more, b"")

    def __iter__(self) -> Iterator[bytes]:
        head, self.head = self.head, b""
        if head:
            yield head
        yield from self._more

    def whole(self, limit: int, too_large: str) -> bytes:
        """All that is left, at once; ``too_large`` is the marked reason past the limit.

        Raises
        ------
        Refused
            Past the limit.
        """
        found = bytearray()
        for piece in self:
            found += piece
            if len(found) > limit:
                raise Refused(tr(too_large, mb=limit >> 20))
        return bytes(found)

    def _plain(self, piece: bytes) -> Iterator[bytes]:
        while piece:
            yield piece
            piece = self._stream.read()

    def _unpacked(self, piece: bytes) -> Iterator[bytes]:
        """Unpack one gzip member after another."""
        engine = zlib.decompressobj(_GZIP)
        while piece:
            for place in range(0, len(piece), _PIECE_IN):
                left = piece[place : place + _PIECE_IN]
                while left:
                    if engine.eof:
                        if not left.startswith(GZIP_MAGIC[: len(left)]):
                            return  # padding after the last member
                        engine = zlib.decompressobj(_GZIP)
                    try:
                        out = engine.decompress(left, PIECE)
                    except zlib.error:
                        self.damage = tr(
                            "The gzip file is damaged near byte {n}.", n=grouped(self._taken)
                        )
                        return
                    rest = engine.unused_data if engine.eof else engine.unconsumed_tail
                    self._count(len(left) - len(rest), len(out))
                    left = rest
                    if out:
                        yield out
            piece = self._stream.read()
        # output may still wait inside when all input is used
        while not engine.eof and (out := engine.decompress(b"", PIECE)):
            self._count(0, len(out))
            yield out
        if not engine.eof:
            self.damage = tr(
                "The gzip file is cut short after {n} bytes.", n=grouped(self._stream.size)
            )

    def _count(self, taken: int, given: int) -> None:
        self._taken += taken
        self._given += given
        if self._given > MAX_BYTES:
            raise Refused(tr("Unpacked it is larger than {mb} MB.", mb=MAX_BYTES >> 20))
        ratio = self._given / max(self._taken, 1)
        if self._given > RATIO_MATTERS_FROM and ratio > MAX_RATIO:
            raise Refused(
                tr("Unpacked it is {ratio} times larger, as no recording is.", ratio=grouped(ratio))
            )
