"""Checking a closed document. Never touches the network: a baseline B-B seal needs nothing from outside.

The strict rule, in the order it is applied: a whole PDF; a workshop's seal; exactly the fields the workshop makes;
the seal's own bytes exactly as written, unused room zero; the signature right for every other byte up to its end;
nothing after it but, at most, one later signature in the owner's field, itself reaching to the end of the file;
the key the expected one; the covered part equal to the recorded hash. Exit codes: ``verdict.Outcome``.
"""

from __future__ import annotations

import hashlib
import re

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.seal.fingerprints import grouped, plain_fingerprint, same_fingerprint
from detailbench.seal.verdict import Outcome, Verdict


def verify_pdf(pdf: bytes, *, recorded_sha256: str | None = None, expected_fingerprint: str | None = None) -> Verdict:
    """What can be said about this file. Never raises for what is in the file.

    ``recorded_sha256``: SHA-256 (hex) of the file as the workshop closed it, from the record or another document.
    ``expected_fingerprint``: of the workshop's key, spaced or not. Raises BadInput when one of these two is not
    64 hex digits: a slip of the pen must not read as a changed file.
    """
    for typed, field in ((recorded_sha256, "recorded_sha256"), (expected_fingerprint, "expected_fingerprint")):
        if typed is not None and not re.fullmatch("[0-9a-f]{64}", plain_fingerprint(typed)):
            raise BadInput(
                _("“{typed}” is not a whole SHA-256 value: it takes 64 digits 0-9 and a-f.").format(typed=typed),
                field=field,
                given=typed,
            )
    early = _not_a_whole_pdf(pdf)
    if early is not None:
        return early
    from detailbench.seal.inspecting import inspect
    from detailbench.seal.trouble import reading_trouble

    try:
        seen = inspect(pdf)
    except reading_trouble():
        return _verdict(pdf, Outcome.DAMAGED, _("This PDF is damaged and cannot be read through. Treat it as changed."))
    if seen.not_sealed:
        return _verdict(pdf, Outcome.NOT_SEALED, seen.not_sealed)

    sealed_sha256 = hashlib.sha256(pdf[: seen.covered_bytes]).hexdigest()
    matches = None if recorded_sha256 is None else sealed_sha256 == plain_fingerprint(recorded_sha256)
    outcome, first = Outcome.UNCHANGED, _("Not changed since it was closed.")
    if seen.changed:
        outcome, first = Outcome.CHANGED, seen.changed
    elif seen.outside_key_time:
        outcome, first = Outcome.OUTSIDE_KEY_TIME, seen.outside_key_time
    elif expected_fingerprint is not None and not same_fingerprint(seen.fingerprint, expected_fingerprint):
        outcome = Outcome.OTHER_KEY
        first = _("Not closed with the workshop's key. The expected one is {fingerprint}.").format(
            fingerprint=grouped(expected_fingerprint)
        )
    elif matches is False:
        outcome, first = Outcome.CHANGED, _("The seal holds, but this is not the file in the record: its hash differs.")
    elif expected_fingerprint is None:
        outcome = Outcome.KEY_NOT_COMPARED
        first = _("Not changed since it was closed. Whose key it is was not compared: no fingerprint was given.")
    elif seen.later:
        outcome = Outcome.SIGNED_LATER
        first = _("Not changed since the workshop closed it; the owner's field was signed afterwards.")

    sentences = [first]
    if seen.fingerprint:
        sentences.append(
            _("The seal names {signer}, key {fingerprint}.").format(
                signer=seen.signer, fingerprint=grouped(seen.fingerprint)
            )
        )
    if seen.signed_at is not None:
        sentences.append(
            _("Closed {at} by the clock of the workshop's computer.").format(at=seen.signed_at.isoformat(sep=" "))
        )
    if not seen.changed:
        sentences.append(_reach(seen.covered_bytes, len(pdf)))
    for other in seen.later:
        sentences.append(
            _("A later signature by “{name}”, key {fingerprint}. The program does not know who that is.").format(
                name=other.name, fingerprint=grouped(other.fingerprint)
            )
        )
    sentences.append(_hash_sentence(matches))
    return Verdict(
        outcome=outcome,
        sentences=tuple(sentences),
        fingerprint=seen.fingerprint,
        signer=seen.signer,
        signed_at=seen.signed_at,
        covered_bytes=seen.covered_bytes,
        file_bytes=len(pdf),
        sealed_sha256=sealed_sha256,
        hash_matches=matches,
        later=seen.later,
    )


def _verdict(pdf: bytes, outcome: Outcome, *sentences: str) -> Verdict:
    return Verdict(outcome=outcome, sentences=sentences, file_bytes=len(pdf))


def _not_a_whole_pdf(pdf: bytes) -> Verdict | None:
    """ISO 32000-1, 7.5.2 and 7.5.5: the first line and the last one."""
    if not pdf:
        return _verdict(pdf, Outcome.NOT_WHOLE, _("This file is empty."))
    if not pdf.startswith(b"%PDF-"):
        return _verdict(pdf, Outcome.NOT_WHOLE, _("This is not a PDF."))
    if not pdf.rstrip(b"\r\n").endswith(b"%%EOF"):
        return _verdict(
            pdf, Outcome.NOT_WHOLE, _("This PDF does not end as one should: only part of it is here, or more follows.")
        )
    return None


def _reach(covered: int, size: int) -> str:
    if covered == size:
        return _("The seal covers the whole file.")
    return _("The seal covers the first {covered} of {size} bytes.").format(covered=covered, size=size)


def _hash_sentence(matches: bool | None) -> str:
    if matches is None:
        return _("No recorded hash was given to compare with.")
    if matches:
        return _("The hash equals the recorded one.")
    return _("The hash differs from the recorded one.")
