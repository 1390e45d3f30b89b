"""What an agreement is about, how it was asked and how answered, in words."""

from __future__ import annotations

from decimal import Decimal

from detailbench.basics.numbers import NBSP, format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreements import ApprovedSection, approved_section, approved_sections, sections_overtaken
from detailbench.findings.settings import setting
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import Agreement
from detailbench.record.words_kept import choices

ABOUT = choices("agreement", "about")
ANSWERS = tuple(word for word in choices("agreement", "answer") if word != "open")
CHANNELS = choices("agreement", "channel")


def about_words(about: str) -> str:
    """What a question is about."""
    return {
        "limit": _("owner's limit"),
        "supplement": _("supplement"),
        "test_section": _("test section"),
        "extra_work": _("extra work"),
        "sanding": _("sanding"),
        "level": _("level"),
        "mishap": _("mishap"),
        "other": _("something else"),
    }.get(about, about)


def answer_words(answer: str) -> str:
    """How it was answered."""
    return {
        "open": _("open"),
        "yes": _("yes"),
        "yes_with_remark": _("yes, with a remark"),
        "no": _("no"),
        "withdrawn": _("withdrawn"),
    }.get(answer, answer)


def channel_words(channel: str) -> str:
    """How somebody was asked or told."""
    return {"present": _("present"), "telephone": _("by telephone"), "message": _("by message")}.get(channel, channel)


def told_words(told: str) -> str:
    """Who was told of a mishap."""
    return {"owner": _("owner told"), "bearer": _("bearer told")}.get(told, _("nobody told yet"))


def answer_line(picture: JobPicture, agreement: Agreement) -> str:
    """The answer with its channel and the owner's remark, or that it is open. The remark is personal data."""
    if agreement.answer == "open":
        return answer_words("open")
    parts = [answer_words(agreement.answer), channel_words(agreement.channel)]
    remark = picture.said(agreement.id, "remarks")
    said = ", ".join(part for part in parts if part)
    return _("{answer}: “{remark}”").format(answer=said, remark=remark) if remark else said


def approved_words(picture: JobPicture, group_id: str = "") -> str:
    """The level the owner approved, with its price and how it was agreed, of each section or of one finish group's;
    empty where none was."""
    sections = [approved_section(picture, group_id)] if group_id else approved_sections(picture)
    return " ".join(section_words(picture, section) for section in sections if section is not None)


def section_words(picture: JobPicture, approved: ApprovedSection) -> str:
    """The same of one approved section."""
    where = panel_name(approved.trial.panel)
    said = _("Test section on {panel} approved by the owner, {how}: “{level}”").format(
        panel=where, how=channel_words(approved.agreement.channel), level=approved.level
    )
    if approved.price is None:
        return f"{said}."
    return _("{section}, {price}.").format(section=said, price=price_words(picture, approved.price))


def newer_counts(picture: JobPicture, agreement_id: str) -> str:
    """Which of two approved test sections of one finish group counts, where this is one of them; else empty."""
    over = sections_overtaken(picture)
    if agreement_id in over:
        trial = one(picture.trials, over[agreement_id].trial_id)
        return _("a newer answer about the same finish group counts, on its section on the {panel}").format(
            panel=panel_name(trial.panel)
        )
    if any(newer.id == agreement_id for newer in over.values()):
        return _("This answer counts for the finish group: the one before it, with its price, does so no more.")
    return ""


def price_words(picture: JobPicture, price: Decimal) -> str:
    """A sum with the shop's currency."""
    return f"{format_number(float(price), 2)}{NBSP}{setting(picture.shop, 'currency')}"
