"""A look into a HEIC file's own table of contents, before the library that reads it is let loose on it.

The library stops the whole program when a name in that table is not text (met with pi_heif 1.4). A file in which
one is not is damaged anyway, so it is refused first. Boxes: ISO/IEC 14496-12, 8.11.
"""

from __future__ import annotations

from collections.abc import Iterator


def names_are_text(content: bytes) -> bool:
    """Whether every name in the table of contents reads as text. False also where there is no such table to read."""
    tables = []
    try:
        for kind, body in _boxes(content):
            if kind == b"meta":
                tables.append(body[4:])  # after version and flags
    except ValueError:
        pass  # what a phone hangs behind its last box, or a file cut short: the decoder's business
    try:
        for table in tables:
            _read_names(table)
    except (ValueError, IndexError):
        return False
    return bool(tables)


def _boxes(content: bytes) -> Iterator[tuple[bytes, bytes]]:
    """The boxes that follow one another in ``content``: kind and body. Raises ValueError where one does not fit."""
    place = 0
    while place < len(content):
        size = int.from_bytes(content[place : place + 4], "big")
        head = 8
        if size == 1:
            size, head = int.from_bytes(content[place + 8 : place + 16], "big"), 16
        elif size == 0:
            size = len(content) - place  # this box reaches to the end of the file
        if size < head or place + size > len(content):
            raise ValueError("a box reaches past its end")
        yield content[place + 4 : place + 8], content[place + head : place + size]
        place += size


def _read_names(meta: bytes) -> None:
    for kind, body in _boxes(meta):
        if kind == b"iinf":
            for entry_kind, entry in _boxes(body[6 if body[0] == 0 else 8 :]):
                if entry_kind == b"infe":
                    entry[8 if entry[0] < 3 else 10 :].decode("utf-8")  # type, name and content type, as text
        elif kind == b"iprp":
            _read_property_names(body)


def _read_property_names(properties: bytes) -> None:
    for kind, body in _boxes(properties):
        if kind == b"ipco":
            for prop_kind, prop in _boxes(body):
                if prop_kind == b"auxC":
                    prop[4:].split(b"\0")[0].decode("utf-8")
                elif prop_kind == b"colr":
                    prop[:4].decode("utf-8")
