"""What an agreement is about, how it was asked and how answered, in words."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture
from detailbench.record.things import Agreement

ABOUT = ("limit", "supplement", "test_section", "extra_work", "sanding", "level", "mishap", "other")
ANSWERS = ("yes", "yes_with_remark", "no", "withdrawn")
CHANNELS = ("present", "telephone", "message")


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
