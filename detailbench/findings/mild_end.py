"""Paint on which the trials go from the mild end up, whatever would be quicker: thin, unreadable or irreplaceable where
the shop says so, and a refinish whose cure is not known. Common practice, no source."""

from __future__ import annotations

from datetime import date

from detailbench.findings.cure import cure_of
from detailbench.findings.panels import READABLE, outline_of
from detailbench.findings.settings import setting
from detailbench.findings.thin_paint import thin_panels
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup


def thickness_word(picture: JobPicture, group: FinishGroup, panel: str) -> str:
    """ordinary, thin, unreadable or irreplaceable, where the shop starts at the mild end for it. ``panel`` may be
    empty: then only what is known of the whole group counts."""
    if group.irreplaceable == "yes" and setting(picture.shop, "mild_start_irreplaceable"):
        return "irreplaceable"
    if not panel or panel not in outline_of(picture).panels:
        return "ordinary"
    if setting(picture.shop, "mild_start_thin") and thin_panels(picture, (panel,)):
        return "thin"
    unreadable = outline_of(picture).panels[panel].substrate not in READABLE
    return "unreadable" if unreadable and setting(picture.shop, "mild_start_unreadable") else "ordinary"


def from_mild_end(picture: JobPicture, group: FinishGroup, panel: str, day: date) -> bool:
    """Whether trials on this panel go from the mild end up on this day."""
    return thickness_word(picture, group, panel) != "ordinary" or cure_of(picture, group, day) == "unknown"
