"""Plain names for files that are no recording, told by their first bytes."""

from __future__ import annotations

import re

from tercet.domain import Failed
from tercet.language import mark, tr

_MAGIC = (
    (
        b"PK\x03\x04",
        mark("This is a zip archive in a place where it is not opened."),
    ),
    (b"PK\x05\x06", mark("This is an empty zip archive, not a recording.")),
    (b"%PDF", mark("This is a PDF document, not a recording.")),
    (b"\x89PNG", mark("This is a picture, not a recording.")),
    (b"\xff\xd8\xff", mark("This is a picture, not a recording.")),
    (b"GIF8", mark("This is a picture, not a recording.")),
    (b"SQLite format 3\x00", mark("This is a database, not a recording.")),
    (b"7z\xbc\xaf\x27\x1c", mark("This is a 7z archive, not a recording; unpack it first.")),
    (b"Rar!", mark("This is a rar archive, not a recording; unpack it first.")),
    (b"BZh", mark("This is a bzip2 file, not a recording; unpack it first.")),
    (b"\xfd7zXZ\x00", mark("This is an xz file, not a recording; unpack it first.")),
    (b"\x7fELF", mark("This is a program, not a recording.")),
    (b"MZ", mark("This is a program, not a recording.")),
)
_LOOKED_AT = 4096
_UTF16 = (b"\xff\xfe", b"\xfe\xff", b"<\x00", b"\x00<")
#: Control characters that no text holds.
_BINARY = re.compile(rb"[\x00-\x08\x0e-\x1a\x1c-\x1f]")
_TOML_TABLE = re.compile(rb"^\s*\[\[?[A-Za-z0-9_.\"' -]+\]\]?\s*(#.*)?$", re.MULTILINE)
_TOML_PAIR = re.compile(rb"^\s*[A-Za-z0-9_-]+\s*=\s*\S", re.MULTILINE)


def may_be_text(head: bytes) -> bool:
    """Whether a file's first bytes can be those of a text, as far as the eye sees."""
    if head.startswith(_UTF16[:2]):
        return True
    return b"\0" not in head and not any(head.startswith(magic) for magic, _ in _MAGIC)


def not_a_recording(data: bytes) -> Failed:
    """Say what kind of file this is, given that no reader knows it.

    Parameters
    ----------
    data : bytes
        The whole file or its first few kilobytes.

    Returns
    -------
    Failed
        "passed over" for kinds known by name, "refused" for bytes that say nothing.
    """
    if not data:
        return Failed(tr("The file is empty."))
    head = data[:_LOOKED_AT]
    for magic, kind in _MAGIC:
        if head.startswith(magic):
            return Failed(tr(kind), "passed over")
    if head.startswith(_UTF16):
        return Failed(tr("This is text in UTF-16; only tables may be written so."), offset=0)
    if _BINARY.search(head):
        return Failed(
            tr("This is not a recording: no FIT, TCX or GPX, and no text either."), offset=0
        )
    return Failed(tr(_text_kind(head)), "passed over")


def _text_kind(head: bytes) -> str:
    """The marked reason for a text that is no recording."""
    text = head.removeprefix(b"\xef\xbb\xbf").strip()
    if not text:
        return mark("This is a blank text file, not a recording.")
    lines = text.splitlines()
    if _TOML_TABLE.search(text) or all(_TOML_PAIR.match(line) for line in lines[:3]):
        return mark("This is a settings file (TOML), not a recording.")
    if text[:1] in b"{[" and b'"' in text[:200]:
        return mark("This is JSON text, not a recording.")
    if len(lines) > 1 and min(line.count(b",") for line in lines[:2]) > 1:
        return mark("This is a table as text (CSV), not a recording.")
    return mark("This is plain text, not a recording.")
