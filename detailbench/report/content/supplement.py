"""The supplement as plain content: what came to light after the wash or on the way, put to the owner."""

from __future__ import annotations

from datetime import datetime

from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture
from detailbench.report.content.accepting import signings
from detailbench.report.content.blocks import DocumentContent, Section
from detailbench.report.content.frame_of import framed
from detailbench.report.content.front import front
from detailbench.report.content.gathered import ReadFile, gather
from detailbench.report.content.order import order_blocks
from detailbench.report.content.recording import recording_blocks


def supplement_content(
    picture: JobPicture, *, now: datetime, version: str, read_file: ReadFile, key_fingerprint: str = ""
) -> DocumentContent:
    """The content of the supplement of ``picture``; arguments as of :func:`handover_content`."""
    g = gather(picture, now=now, version=version, read_file=read_file, key_fingerprint=key_fingerprint)
    kind = _("Supplement")
    sections = (
        Section(_("The order"), order_blocks(g)),
        Section(_("How this was recorded"), recording_blocks(g)),
    )
    signing = Section(_("Signatures"), (signings(g, "supplement"),), new_page=True)
    return framed(g, kind, front(g, kind), sections, signing, None)
