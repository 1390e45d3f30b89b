"""What a PDF reader can throw at a file that strangers made or a disk half wrote."""

from __future__ import annotations

import binascii
import struct
import zlib


def reading_trouble() -> tuple[type[Exception], ...]:
    """The kinds of error that mean *this file cannot be read*, and nothing else, while a PDF is parsed.

    The parser works through what the file claims about itself, so a bent file can end in a missing key, a wrong
    type or endless nesting as well as in the parser's own errors.
    """
    from cryptography.exceptions import InvalidSignature, UnsupportedAlgorithm
    from pyhanko.pdf_utils.misc import PdfError
    from pyhanko_certvalidator.errors import InvalidCertificateError, PathError

    return (
        PdfError,
        PathError,
        InvalidCertificateError,
        InvalidSignature,
        UnsupportedAlgorithm,
        ValueError,
        TypeError,
        LookupError,
        AttributeError,
        AssertionError,
        ArithmeticError,
        RuntimeError,  # what the reader cannot do, and what is nested without end
        EOFError,
        struct.error,
        zlib.error,
        binascii.Error,
    )
