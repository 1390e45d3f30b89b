"""The work held against each approved test section at handover, as the owner answered."""

from __future__ import annotations

from collections.abc import Mapping

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreements import ApprovedSection, approved_sections
from detailbench.record.picture import JobPicture
from detailbench.record.things import Acceptance


def section_met(picture: JobPicture, acceptance: Acceptance, section: ApprovedSection) -> str:
    """yes, no, or empty where nobody said it of this section. A word said of no section by name is of the only one
    there was; of several it is told of none."""
    id_ = section.agreement.id
    if id_ in acceptance.met_ids or id_ in acceptance.not_met_ids:
        return "yes" if id_ in acceptance.met_ids else "no"
    if acceptance.met_ids or acceptance.not_met_ids or len(approved_sections(picture)) != 1:
        return ""
    agreed_at = section.agreement.answered_at or section.agreement.entered_at
    return acceptance.level_met if agreed_at <= acceptance.entered_at else ""


def levels_met(picture: JobPicture, acceptance: Acceptance) -> tuple[tuple[ApprovedSection, str], ...]:
    """Each approved section with the owner's word on it."""
    return tuple((s, section_met(picture, acceptance, s)) for s in approved_sections(picture))


def still_unsaid(picture: JobPicture) -> tuple[ApprovedSection, ...]:
    """Of several approved sections those the newest answer says nothing of; none while there is no answer, and none
    where one section was approved: of that nobody needs to say which."""
    if not picture.acceptances or len(approved_sections(picture)) < 2:
        return ()
    return tuple(section for section, met in levels_met(picture, picture.acceptances[-1]) if not met)


def unsaid_which(picture: JobPicture, acceptance: Acceptance) -> bool:
    """The owner's word on the level is kept, and of which of several sections it was is not."""
    found = levels_met(picture, acceptance)
    return bool(acceptance.level_met and found and not any(met for _section, met in found))


def overall(answers: Mapping[str, str]) -> str:
    """One word for all: no where one is not met, yes where every one is, empty where one was not said."""
    words = set(answers.values())
    return "no" if "no" in words else "yes" if words == {"yes"} else ""


def met_words(met: str) -> str:
    """ "as agreed" """
    return {"yes": _("as agreed"), "no": _("not as agreed")}.get(met) or _("nobody said whether the work is as agreed")


def section_name(section: ApprovedSection) -> str:
    """The finish group and the panel a section is on: "body, bonnet"."""
    panel, group = panel_name(section.trial.panel), section.group
    return panel if group is None else f"{_(group.name)}, {panel}"
