"""The seal's signature value against the published test vectors of its standard."""

from __future__ import annotations

import asyncio
from datetime import UTC, datetime

import pytest
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.asymmetric.utils import decode_dss_signature
from sealed_samples import sample_key

from detailbench.seal.keys import WorkshopKey
from detailbench.seal.pdf_signing import P256_ORDER, WorkshopSigner

# RFC 6979, A.2.5: ECDSA on P-256 with SHA-256 (from memory)
PRIVATE = 0xC9AFA9D845BA75166B5C215767B1D6934E50C3DB36E89B127B8A622B120F6721
VECTORS = {
    b"sample": (
        0xEFD48B2AACB6A8FD1140DD9CD45E81D69D2C877B56AAF991C34D0EA84EAF3716,
        0xF7CB1C942D657C41D436C7A1B6E29F65F3E900DBB9AFF4064DC4AB2F843ACDA8,
    ),
    b"test": (
        0xF1ABB023518351CD71D881567B1EA663ED3EFCF6C5132B354F28D3B0B7D38367,
        0x019F4113742A2B14BD25926B49C649155F267E60D3814B4C0CC84250E46F0083,
    ),
}


def test_the_signature_value_is_the_standards_with_the_smaller_of_the_two_equal_values() -> None:
    private = ec.derive_private_key(PRIVATE, ec.SECP256R1())
    key = WorkshopKey(
        workshop="Invented Bench",
        fingerprint="",
        certificate_der=sample_key().certificate_der,
        valid_from=datetime(2031, 1, 1, tzinfo=UTC),
        valid_until=datetime(2061, 1, 1, tzinfo=UTC),
        private=private,
    )
    for message, (r, s) in VECTORS.items():
        signed = asyncio.run(WorkshopSigner(key).async_sign_raw(message, "sha256"))
        assert decode_dss_signature(signed) == (r, min(s, P256_ORDER - s))


def test_the_order_of_the_curve_is_that_of_the_library() -> None:
    """From memory against the library: n - 1 is the largest private value there is, n is refused."""
    ec.derive_private_key(P256_ORDER - 1, ec.SECP256R1())
    with pytest.raises(ValueError, match="out of range"):
        ec.derive_private_key(P256_ORDER, ec.SECP256R1())
