"""What the last job of this car left on a panel, in words for a card."""

from __future__ import annotations

from datetime import datetime

from detailbench.basics.numbers import format_number, format_thickness
from detailbench.basics.texts import _
from detailbench.findings.last_time import LastTime, last_day, last_time, marks_left
from detailbench.record.picture import JobPicture


def last_thickness_words(picture: JobPicture, panel: str) -> str:
    """Readings, process and protection of then; empty where the car was not here before."""
    last = last_time(picture, panel)
    if last is None:
        return ""
    lines = [_head(last.number, last.at)]
    figures = last.figures
    if figures is not None:
        when = _("after the work") if last.polished else _("as found")
        lines.append(
            _("mean {value} of {n} places, {when}").format(
                value=format_thickness(figures.mean_um, digits=1), n=format_number(figures.places), when=when
            )
        )
    elif last.polished:
        lines.append(_("polished, not read after it"))
    else:
        lines.append(_("not measured"))
    lines += [_("worked with: {steps}").format(steps="; ".join(last.steps))] if last.steps else []
    lines += [_protected(last)] if last.protections else []
    return "\n".join(lines)


def last_marks_words(picture: JobPicture, panel: str) -> str:
    """Marks left then; empty where the car was not here before."""
    if picture.last is None:
        return ""
    head = _head(picture.last.job.number, last_day(picture.last))
    marks = marks_left(picture, panel)
    if not marks:
        return _("{head} no mark was left on this panel, or none was noted.").format(head=head)
    left = [
        _("{kind} {severity}, not looked at again").format(kind=r.kind.name, severity=r.mark.severity)
        if r.after is None
        else f"{r.kind.name} {r.after.severity}"
        for r in marks
    ]
    return _("{head} left: {marks}").format(head=head, marks="; ".join(left))


def _head(number: str, at: datetime) -> str:
    return _("Job {number}, {day}:").format(number=number, day=at.date().isoformat())


def _protected(last: LastTime) -> str:
    kinds = {"coating": _("coating"), "sealant": _("sealant"), "wax": _("wax")}
    return _("put on: {what}").format(what="; ".join(f"{p.product}, {kinds[p.kind]}" for p in last.protections))
