"""Plain names for files that are no recording, told by their first bytes."""

from __future__ import annotations

import re

from tercet.domain import Failed

_MAGIC = (
    (b"PK\x03\x04", "a zip archive in a place where it is not opened"),
    (b"PK\x05\x06", "an empty zip archive"),
    (b"%PDF", "a PDF document"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"SQLite format 3\x00", "a database"),
    (b"7z\xbc\xaf\x27\x1c", "a 7z archive; unpack it first"),
    (b"Rar!", "a rar archive; unpack it first"),
    (b"BZh", "a bzip2 file; unpack it first"),
    (b"\xfd7zXZ\x00", "an xz file; unpack it first"),
    (b"\x7fELF", "a program"),
    (b"MZ", "a program"),
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
        return Failed("The file is empty.")
    head = data[:_LOOKED_AT]
    for magic, kind in _MAGIC:
        if head.startswith(magic):
            return Failed(f"This is {kind}, not a recording.", "passed over")
    if head.startswith(_UTF16):
        return Failed("This is text in UTF-16; only tables may be written so.", offset=0)
    if _BINARY.search(head):
        return Failed("This is not a recording: no FIT, TCX or GPX, and no text either.", offset=0)
    return Failed(f"This is {_text_kind(head)}, not a recording.", "passed over")


def _text_kind(head: bytes) -> str:
    text = head.removeprefix(b"\xef\xbb\xbf").strip()
    if not text:
        return "a blank text file"
    lines = text.splitlines()
    if _TOML_TABLE.search(text) or all(_TOML_PAIR.match(line) for line in lines[:3]):
        return "a settings file (TOML)"
    if text[:1] in b"{[" and b'"' in text[:200]:
        return "JSON text"
    if len(lines) > 1 and min(line.count(b",") for line in lines[:2]) > 1:
        return "a table as text (CSV)"
    return "plain text"
