"""Agreements and mishaps as the lines of a list."""

from __future__ import annotations

from datetime import datetime

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.agreement_words import (
    about_words,
    answer_line,
    channel_words,
    newer_counts,
    price_words,
    told_words,
)
from detailbench.findings.agreements import open_agreements, sections_overtaken
from detailbench.findings.kit_names import initials
from detailbench.findings.limits import panel_list
from detailbench.record.picture import JobPicture
from detailbench.record.things import Agreement, Mishap
from detailbench.screens.stages.work_parts.when import when_words


def agreement_words(picture: JobPicture, agreement: Agreement) -> str:
    """``supplement: the two scratches? · 90 EUR`` and, on the next line, the answer, when and who entered it."""
    first = _("{about}: {question}").format(about=about_words(agreement.about), question=agreement.question)
    if agreement.panels and agreement.about != "test_section":
        first += " · " + panel_list(agreement.panels)
    if agreement.price is not None:
        first += " · " + price_words(picture, agreement.price)
    who = agreement.answered_to or agreement.entered_by
    at = agreement.answered_at or agreement.entered_at
    asked_again = agreement.answer == "open" and agreement not in open_agreements(picture)
    said = _("asked again since") if asked_again else answer_line(picture, agreement)
    second = " · ".join((said, when_words(at), initials(picture.shop, who)))
    if agreement.id in sections_overtaken(picture):
        second += " · " + newer_counts(picture, agreement.id)
    return f"{first}\n{second}" + (_(" · a proof is kept") if agreement.evidence_id else "")


def mishap_words(picture: JobPicture, mishap: Mishap) -> str:
    """What happened where, then when, who entered it and who was told."""
    first = f"{panel_name(mishap.panel)}: {mishap.words}" if mishap.panel else mishap.words
    told = told_words(mishap.told)
    if mishap.told:
        told = ", ".join((told, channel_words(mishap.channel), _when(mishap.told_at)))
    second = " · ".join((_when(mishap.stated_at or mishap.entered_at), initials(picture.shop, mishap.entered_by), told))
    return f"{first}\n{second}"


def _when(at: datetime | None) -> str:
    return when_words(at) if at is not None else ""
