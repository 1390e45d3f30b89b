"""Who signs and how, in words."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.findings.kit_names import with_initials
from detailbench.record.picture import JobPicture
from detailbench.record.things import Signature
from detailbench.screens.stages.work_parts.when import when_words

OTHERWISE = ("telephone", "message", "declined", "absent")


def roles_of(picture: JobPicture) -> tuple[str, ...]:
    """Who may sign here: a bearer only where one is known."""
    bearer = any(p.role == "bearer" for p in picture.parties)
    return ("owner", "bearer", "workshop") if bearer else ("owner", "workshop")


def role_words(role: str) -> str:
    return {"owner": _("owner"), "bearer": _("bearer"), "workshop": _("workshop")}[role]


def way_words(way: str) -> str:
    words = {
        "drawn": _("drawn here"),
        "telephone": _("by telephone"),
        "message": _("by message"),
        "declined": _("declined"),
        "absent": _("absent"),
    }
    return words[way]


def signature_words(picture: JobPicture, signature: Signature) -> str:
    """ "owner, Invented Owner: drawn here, 2031-05-05 10:37" """
    name = picture.said(signature.id, "name")
    who = f"{role_words(signature.role)}, {name}" if name else role_words(signature.role)
    at = when_words(signature.entered_at)
    words = _("{who}: {way}, {at}").format(who=who, way=way_words(signature.way), at=at)
    return with_initials(picture.shop, words, signature)
