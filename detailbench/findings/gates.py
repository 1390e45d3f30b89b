"""What stops an act. Stages never lock; acts stop, and a person with name and reason may set most of it aside."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.texts import _
from detailbench.findings.gauges import failed_now
from detailbench.findings.permissions import permissions
from detailbench.record.picture import JobPicture
from detailbench.record.things import ProcessStep


@dataclass(frozen=True)
class Stop:
    """One reason not to start: which rule, in words, and whether a person may set it aside."""

    rule: str
    sentence: str
    may_override: bool = True


def held(picture: JobPicture, panel: str) -> tuple[Stop, ...]:
    """Panels a person holds back."""
    return tuple(
        Stop("held", _("Held back: {reason}.").format(reason=h.reason.rstrip(".")))
        for h in picture.holds
        if h.panel == panel and not h.lifted
    )


def no_abrasive(picture: JobPicture, panel: str) -> tuple[Stop, ...]:
    """What stands against any abrasive on a panel: held by a person, paint that takes none, below *leave below*,
    a barred panel."""
    stops = list(held(picture, panel))
    ruling = permissions(picture)[panel]
    for reason in ruling.reasons:
        if reason.ruling == "held back":
            stops.append(Stop("thickness", reason.sentence, may_override=reason.lifted_by == "override"))
    return tuple(stops)


def start_stops(picture: JobPicture, panel: str, step: ProcessStep) -> tuple[Stop, ...]:
    """What stands against starting a step on a panel."""
    stops = list(no_abrasive(picture, panel)) if step.means == "machine" else list(held(picture, panel))
    if step.means == "machine" and failed_now(picture):
        stops.append(Stop("gauge_check", _("The last gauge check failed: the readings since are not confirmed.")))
    return tuple(stops)


def held_back(picture: JobPicture) -> dict[str, str]:
    """Panel → why it is held back, for the plan and the plan view."""
    out = {}
    for key, ruling in permissions(picture).items():
        why = [s.sentence for s in held(picture, key)]
        why += [r.sentence for r in ruling.reasons if r.ruling == "held back"]
        if why:
            out[key] = " ".join(why)
    return out
