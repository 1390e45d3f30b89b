"""Sign and close: the workshop's seal on a finished PDF. The one door to it; pyHanko loads behind it."""

from __future__ import annotations

import dataclasses
from datetime import UTC

from detailbench.basics.clock import Clock
from detailbench.basics.errors import BadFile, RecordTrouble, Refused
from detailbench.basics.texts import _
from detailbench.seal.fields import Box
from detailbench.seal.keys import WorkshopKey
from detailbench.seal.verdict import Outcome


@dataclasses.dataclass(frozen=True)
class SealLook:
    """A visible seal: ``drawn`` is a PDF of one page, scaled into ``box`` (left, low, right, high in points)."""

    drawn: bytes
    box: Box


def seal_pdf(
    pdf: bytes,
    key: WorkshopKey,
    clock: Clock,
    *,
    reason: str = "",
    location: str = "",
    name: str = "",
    look: SealLook | None = None,
    owner_field: bool = True,
    owner_box: Box | None = None,
    page: int = -1,
) -> bytes:
    """``pdf`` sealed with the workshop's key: PAdES B-B, both fields made before, further filling limited to signing.

    ``page`` (0 the first, -1 the last) carries both fields. Without ``look`` the seal shows nowhere on the page.
    With ``owner_field`` an empty field waits for an owner who signs with a key of their own; signing there locks
    the file. The same pages, key and time give the same bytes. The result has passed the same check that
    ``verify_pdf`` makes; nothing else is ever returned.

    Raises BadFile (not a PDF that can be sealed, or sealed already), Refused (clock outside the key's time),
    RecordTrouble (the result did not check).
    """
    from detailbench.seal import pdf_signing
    from detailbench.seal.trouble import reading_trouble
    from detailbench.seal.verifying import verify_pdf

    at = clock.now().replace(microsecond=0)
    if at.astimezone(UTC) < key.valid_from:
        raise Refused(
            _(
                "The computer's clock says {now:%Y-%m-%d}, before the workshop's key was made ({made:%Y-%m-%d}). "
                "Set the clock, then close the document again."
            ).format(now=at, made=key.valid_from),
            rule="clock_before_key",
        )
    if at.astimezone(UTC) > key.valid_until:
        raise Refused(
            _("The workshop's key ran out on {end:%Y-%m-%d}. Make a new one; old documents stay as they are.").format(
                end=key.valid_until
            ),
            rule="key_ran_out",
        )
    try:
        if pdf_signing.has_form(pdf):
            raise BadFile(
                _("This file carries signature or form fields already. A closed document is not closed again.")
            )
        sealed = pdf_signing.sign(
            pdf,
            key,
            at,
            reason=reason,
            location=location,
            name=name,
            owner_field=owner_field,
            drawn=look.drawn if look else None,
            seal_box=look.box if look else None,
            owner_box=owner_box,
            page=page,
        )
    except reading_trouble() as error:
        raise BadFile(_("This file cannot be closed: it is no PDF that can be added to. Nothing was kept.")) from error
    verdict = verify_pdf(sealed, expected_fingerprint=key.fingerprint)
    if verdict.outcome is not Outcome.UNCHANGED:
        raise RecordTrouble(
            _("The closed file did not pass its own check, so it was not kept: {why}").format(
                why=" ".join(verdict.sentences)
            )
        )
    return sealed
