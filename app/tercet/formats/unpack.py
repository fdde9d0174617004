"""Unpacking gzip within fixed limits."""

from __future__ import annotations

import zlib

from tercet.domain import Failed

GZIP_MAGIC = b"\x1f\x8b"
#: No recording is larger; also the limit for files that are not packed.
MAX_BYTES = 512 * 1024 * 1024
#: Recordings shrink to a tenth or so; a hundredfold and more is a trap once it is also large.
MAX_RATIO = 200
RATIO_MATTERS_FROM = 16 * 1024 * 1024
#: Small pieces, since what a damaged piece holds is lost.
_PIECE_IN, _PIECE_OUT = 16 * 1024, 256 * 1024
_GZIP = 16 + zlib.MAX_WBITS


def gunzip(data: bytes) -> tuple[bytes, str] | Failed:
    """Unpack a gzip file, as far as it is sound.

    Parameters
    ----------
    data : bytes
        The whole file; it may consist of several members.

    Returns
    -------
    (bytes, str) or Failed
        What was packed, and a plain sentence on damage or "". Failed if nothing could be
        unpacked or a limit was passed.
    """
    out = bytearray()
    position, damage = 0, ""
    while data[position : position + 2] == GZIP_MAGIC:
        engine = zlib.decompressobj(_GZIP)
        try:
            while not engine.eof and position < len(data):
                piece = data[position : position + _PIECE_IN]
                out += engine.decompress(piece, _PIECE_OUT)
                position += len(piece) - len(engine.unconsumed_tail) - len(engine.unused_data)
                ratio = len(out) / max(position, 1)
                if len(out) > MAX_BYTES:
                    return Failed(f"Unpacked it is larger than {MAX_BYTES >> 20} MB.")
                if len(out) > RATIO_MATTERS_FROM and ratio > MAX_RATIO:
                    return Failed(f"Unpacked it is {ratio:,.0f} times larger, as no recording is.")
            # output may still wait inside when all input is used
            while not engine.eof and (rest := engine.decompress(b"", _PIECE_OUT)):
                out += rest
        except zlib.error:
            damage = f"The gzip file is damaged near byte {position:,} of {len(data):,}."
            break
        if not engine.eof:
            damage = f"The gzip file is cut short after {len(data):,} bytes."
            break
    if not out:
        return Failed(damage or "The gzip file holds nothing.", offset=position)
    return bytes(out), damage
