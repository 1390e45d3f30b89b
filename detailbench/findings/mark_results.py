"""Marks before and after the work: severity under the same lamp and state, counts with their interval."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.states import READY
from detailbench.marks.catalogue import Kind, kind
from detailbench.marks.share import ShareCleared, share_cleared
from detailbench.record.picture import JobPicture
from detailbench.record.things import Mark, MarkCheck


@dataclass(frozen=True)
class MarkResult:
    """A mark with its newest look after the work (None: not looked at again). ``like`` False: another lamp or state,
    so the two severities are shown but not compared; ``why_not`` says which."""

    mark: Mark
    kind: Kind
    after: MarkCheck | None
    like: bool
    why_not: str

    @property
    def says(self) -> str:
        """One line for screen and print."""
        if self.after is None:
            return _("not looked at again")
        if not self.like:
            return _("not comparable: {why}").format(why=self.why_not)
        if self.after.severity == 0:
            return _("no longer seen under this lamp")
        if self.after.severity < self.mark.severity:
            return _("less")
        return _("unchanged") if self.after.severity == self.mark.severity else _("more")


def mark_results(picture: JobPicture, panel: str | None = None) -> tuple[MarkResult, ...]:
    """Every mark of the job (or of one panel), in the order of entry."""
    latest = {c.mark_id: c for c in picture.mark_checks}
    return tuple(_result(m, latest.get(m.id)) for m in picture.marks if panel in (None, m.panel))


def _result(mark: Mark, after: MarkCheck | None) -> MarkResult:
    reasons = []
    if after is not None:
        if not after.lamp_id or not mark.lamp_id:
            reasons.append(_("lamp not noted"))
        elif after.lamp_id != mark.lamp_id:
            reasons.append(_("another lamp"))
        for seen, when in ((mark, _("before")), (after, _("after"))):
            if seen.clean not in READY or seen.cover != "bare":
                reasons.append(_("not clean and bare {when}").format(when=when))
    return MarkResult(mark, kind(mark.kind), after, not reasons, ", ".join(reasons))


def worst_severity(picture: JobPicture, panel: str, *, after: bool = False) -> int | None:
    """The highest severity among a panel's paint marks, before or after; None where nothing was looked at, and after
    the work also while one of its marks was not looked at again: it may be the worst."""
    results = [r for r in mark_results(picture, panel) if r.kind.surface == "paint"]
    if after:
        if any(r.after is None for r in results):
            return None
        values = [r.after.severity for r in results if r.after is not None]
    else:
        values = [r.mark.severity for r in results]
    if values:
        return max(values)
    looked = any(look.panel == panel for look in picture.panel_looks)
    return 0 if looked and not after else None


def counted_share(mark: Mark, count_after: int | None) -> ShareCleared | None:
    """The share of counted marks gone, where a number was counted before and after."""
    if not mark.count or count_after is None:
        return None
    try:
        return share_cleared(mark.count, count_after)
    except BadInput:
        return None
