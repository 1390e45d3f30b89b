"""Photographs: pairs before and after, then those that stand alone, each with lamp, state and time."""

from __future__ import annotations

import struct
from datetime import datetime

from detailbench.basics.errors import DetailbenchError
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.photos.copies import print_copy
from detailbench.record.things import Evidence, Photo
from detailbench.report.content.blocks import Block, Heading, Para, PhotoPlate, PhotoRow
from detailbench.report.content.figures import moment_with_offset, number, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.papers import hash_figure
from detailbench.report.content.parts import Recorded, Text, clipped, joined, said, typed
from detailbench.report.content.wording import initials, lamp_words, opening, state_words

MOST_CAPTION = 200
LONGEST_PX = 1300  # 83 mm wide at about 400 dots an inch
_FRAMES = frozenset({*range(0xC0, 0xC4), *range(0xC5, 0xC8), *range(0xC9, 0xCC), *range(0xCD, 0xD0)})


def photo_blocks(
    g: Gathered,
    moments: tuple[str, ...] = (),
    only: tuple[str, ...] | None = None,
    elsewhere: tuple[str, ...] = (),
) -> tuple[Block, ...]:
    """Pairs first, then the rest in the order of entry, two in a row. ``moments``: those of a moment; ``only``: these
    by id, none where it is empty; ``elsewhere``: those that stand with the test sections."""
    photos = tuple(
        p
        for p in g.picture.photos
        if (not moments or p.moment in moments) and (only is None or p.id in only) and p.id not in elsewhere
    )
    if not photos and elsewhere:
        return (Para((_("The photographs stand with the test sections."),)),)
    if not photos:
        return (Para((_("No photographs were added."),)),)
    by_id = {p.id: p for p in photos}
    pairs = [(by_id[p.pair], p) for p in photos if p.pair in by_id]
    paired = {p.id for pair in pairs for p in pair}
    out: list[Block] = []
    if pairs:
        out.append(Heading((_("Before and after"),)))
        out += [_row(g, a, b) for a, b in pairs]
    elif not moments and only is None:
        out.append(Para((_("No photographs were paired before and after."),)))
    alone = [p for p in photos if p.id not in paired]
    if alone:
        if pairs:
            out.append(Heading((_("Further photographs"),)))
        for i in range(0, len(alone), 2):
            out.append(_row(g, *alone[i : i + 2]))
    if elsewhere:
        out.append(Para((_("Those of the test section the owner agreed to stand with the test sections."),), "note"))
    return tuple(out)


def _row(g: Gathered, *photos: Photo) -> PhotoRow:
    plates = [_plate(g, p) for p in photos]
    long = tuple(
        said("{what}: {caption}", what=_where(p), caption=typed(p.caption))
        for p in photos
        if len(p.caption) > MOST_CAPTION
    )
    return PhotoRow(plates[0], plates[1] if len(plates) > 1 else None, long)


def _plate(g: Gathered, photo: Photo) -> PhotoPlate:
    evidence = g.picture.evidence_of(photo.evidence_id)
    jpeg, size, why_not = _shown(g, evidence)
    texts = (_what(photo), _how(g, photo, evidence), why_not, _kept_file(evidence))
    return PhotoPlate(jpeg, *size, tuple(t for t in texts if t))


def _kept_file(evidence: Evidence) -> Text:
    """Which file the print was made from: with it anybody can tell whether a file handed out is the one."""
    sha = hash_figure(evidence.sha256, Recorded("evidence", (evidence.id,), "sha256"))
    return said(_("printed smaller; SHA-256 of the kept file {sha}"), sha=sha)


def _shown(g: Gathered, evidence: Evidence) -> tuple[bytes | None, tuple[int, int], Text]:
    """The bytes to print and their size in pixels, or why there are none."""
    try:
        content = print_copy(g.read_file(evidence.sha256), LONGEST_PX, name=evidence.name)
    except DetailbenchError as error:
        return None, (0, 0), typed(str(error))
    size = jpeg_size(content)
    if size is None:
        text = _("Cannot be shown in print ({kind}); the file is kept.")
        return None, (0, 0), said(text, kind=typed(evidence.media_type))
    return content, size, ()


def jpeg_size(content: bytes) -> tuple[int, int] | None:
    """Width and height in pixels of a grey or colour JPEG; None for anything else."""
    if content[:2] != b"\xff\xd8":
        return None
    at = 2
    while at + 9 < len(content) and content[at] == 0xFF:
        marker = content[at + 1]
        if marker in _FRAMES:
            height, width, channels = struct.unpack(">HHB", content[at + 5 : at + 10])
            return (width, height) if width and height and channels in (1, 3) else None
        if marker == 0xFF:
            at += 1
            continue
        at += 2 + int(struct.unpack(">H", content[at + 2 : at + 4])[0])
    return None


def _what(photo: Photo) -> Text:
    caption, cut = clipped(photo.caption, MOST_CAPTION)
    return joined([joined([_where(photo), caption], ": "), _("(in full below)") if cut else ""])


def _where(photo: Photo) -> Text:
    moments = {
        "arrival": _("arrival"), "before": _("before"), "trial": _("test section"), "after": _("after"),
        "mishap": _("mishap"),
    }  # fmt: skip
    where: Text = opening(panel_name(photo.panel)) if photo.panel else (_("Whole car"),)
    return said("{where}, {moment}", where=where, moment=moments.get(photo.moment, photo.moment))


def _how(g: Gathered, photo: Photo, evidence: Evidence) -> Text:
    parts: list[Text] = [lamp_words(g.picture.shop, photo.lamp_id), (state_words(photo),)]
    if evidence.taken_at is None:
        parts.append((_("time of taking not known"),))
    else:
        source: Text = ()
        if evidence.offset_source:
            source = said(_(" (offset from {source})"), source=typed(evidence.offset_source))
        parts.append(
            (*said(_("taken {at}"), at=moment_with_offset(evidence.taken_at, recorded(evidence, "taken_at"))), *source)
        )
        late = days_late(evidence.taken_at, photo.entered_at)
        if late:
            parts.append(later(late, Recorded("evidence", (evidence.id,), "days later")))
    parts.append(said(_("entered by {who}"), who=initials(g.picture.shop, photo.entered_by)))
    return joined(parts, "; ")


def days_late(stated: datetime, entered: datetime) -> int:
    """Whole days between what is stated and its entry, by the calendar of the entry; 0 where it is not later."""
    return max(0, (entered.date() - stated.astimezone(entered.tzinfo).date()).days)


def later(days: int, trace: Recorded) -> Text:
    """ "entered 3 days later" """
    template = _("entered {n} day later") if days == 1 else _("entered {n} days later")
    return said(template, n=number(days, trace, 0))
