"""Taking back or doing again after an owner was forgotten: what does not come back is said."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.record.writing import Writer


def said_of_gone(w: Writer, scope: str, says: str) -> tuple[str, str]:
    """What the journal says, and the sentence for the person; as they were where nothing was forgotten in between."""
    values, files = w.not_back()
    if not values and not files:
        return says, ""
    days = [f.entered_at.date().isoformat() for f in w.shop().forgettings if f.job_id == scope]
    text = _("The owner was forgotten on {day}: values {n}, files {m} are gone for good and did not come back.")
    note = text.format(day=days[-1] if days else "–", n=values, m=files)
    return _("{what}; what was forgotten since is not back").format(what=says), note
