"""Opening a photograph that anyone may have made: its size is looked at before a pixel is unpacked."""

from __future__ import annotations

import io
import struct
import warnings
import zlib
from collections.abc import Iterator
from contextlib import contextmanager

from PIL import Image

from detailbench.basics.errors import BadFile
from detailbench.basics.texts import _
from detailbench.photos.heic import names_are_text
from detailbench.photos.kinds import ENOUGH_TO_TELL, kind_of

# Above this Pillow itself only warns, up to twice as much, and would unpack: here it is refused.
MOST_PIXELS = 89_478_485

_FORMATS = {"image/jpeg": "JPEG", "image/png": "PNG", "image/webp": "WEBP"}

# What a picture decoder throws at a bent or cut file. Pillow uses SyntaxError for a broken header, the HEIC library
# RuntimeError and MemoryError when a file claims more parts than it may have.
_TROUBLE = (
    OSError,
    SyntaxError,
    ValueError,
    TypeError,
    LookupError,
    EOFError,
    RuntimeError,
    MemoryError,
    ArithmeticError,
    struct.error,
    zlib.error,
)
_TOO_LARGE = (Image.DecompressionBombError, Image.DecompressionBombWarning)


def refused(name: str, why: str) -> BadFile:
    """The one shape of sentence for a photograph that is not taken."""
    return BadFile(_("{name} was not taken: {why}.").format(name=name, why=why), name=name)


@contextmanager
def photograph(content: bytes, name: str) -> Iterator[Image.Image]:
    """The picture in ``content``, not yet turned, as a Pillow image; its kind goes by content, not by ``name``.

    Anything that goes wrong while it is used inside ``with`` comes out as BadFile.
    """
    kind = kind_of(content[:ENOUGH_TO_TELL])
    if not kind.media_type:
        raise refused(name, kind.instead)
    try:
        with _only_bombs_matter(), _opened(content, kind.media_type, name) as image:
            yield image
    except _TOO_LARGE as error:
        raise _too_large(name) from error
    except _TROUBLE as error:
        raise refused(name, _("it is damaged or only part of it is here")) from error


@contextmanager
def _only_bombs_matter() -> Iterator[None]:
    """Pillow's warnings: the one about size is an error here; remarks about odd notes in a file concern nobody.

    The filters belong to the whole process, so a second thread may lift them early. ``MOST_PIXELS`` is checked by
    hand as well, so that costs a line on the terminal at most.
    """
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", UserWarning)
        warnings.simplefilter("error", Image.DecompressionBombWarning)
        yield


def _opened(content: bytes, media_type: str, name: str) -> Image.Image:
    if media_type == "image/heic":
        from pi_heif import open_heif  # loads a library of its own: only where such a file turns up

        if not names_are_text(content):
            raise ValueError("a name in the table of contents is not text")
        container = open_heif(io.BytesIO(content))
        width, height = container.size
        _check_size(width, height, name)
        picture: Image.Image = container.to_pillow()
        return picture
    image = Image.open(io.BytesIO(content), formats=(_FORMATS[media_type],))
    _check_size(image.width, image.height, name)
    return image


def _check_size(width: int, height: int, name: str) -> None:
    if width * height > MOST_PIXELS:
        raise _too_large(name)


def _too_large(name: str) -> BadFile:
    return refused(
        name, _("it has more than {n} million pixels; save a smaller copy").format(n=MOST_PIXELS // 1_000_000)
    )
