"""What the surface is; marks on it; photographs of it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from detailbench.basics.errors import BadFile, Refused
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition
from detailbench.cli.walking.core.arrival import STRIKABLE
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.shop import lamp_id
from detailbench.cli.walking.kinds import At, amount
from detailbench.cli.walking.steps import marks as m
from detailbench.cli.walking.steps import surface as s
from detailbench.findings.agreements import section_photos
from detailbench.findings.panels import outline_of
from detailbench.findings.processes import group_of
from detailbench.moves.finish_groups import SetGroupPaint
from detailbench.moves.groups_as_last import TakeOverGroups
from detailbench.moves.marks import CorrectMark, LookAgain, LookedNothingSeen, RecordMark, StrikeMark
from detailbench.moves.move import Move
from detailbench.moves.other_work import StrikeOtherWork
from detailbench.moves.photos import AddPhoto, PairPhotos, StrikePhoto
from detailbench.moves.readings import StrikeReading
from detailbench.moves.surface import HoldPanel, MakeGroup, ReleasePanel, SetPaintSystem, SetState
from detailbench.moves.trials import StrikeTrial
from detailbench.record.things import FinishGroup, Mark, Trial


def group_at(hand: Hand, panel: str) -> FinishGroup:
    """The finish group a panel is in. Raises Refused when it is in none."""
    group = group_of(hand.picture, panel)
    if group is None:
        raise Refused(_("That panel is in no finish group."), rule="no_group")
    return group


def position(hand: Hand, panel: str, at: At | None) -> EdgePosition | None:
    """A place on a panel of this car, with the panel's size now."""
    if at is None:
        return None
    drawn = outline_of(hand.picture).panels[panel]
    return EdgePosition(at.edge_a, at.a_mm, at.edge_b, at.b_mm, drawn.width_mm, drawn.height_mm)


def note_state(step: s.NoteState, hand: Hand) -> None:
    hand.do(SetState(hand.job, hand.panels(step.panels), step.clean, step.work, step.cover, step.how))


def make_group(step: s.MakeFinishGroup, hand: Hand) -> None:
    hand.do(MakeGroup(hand.job, step.group, hand.panels(step.panels), step.paint))


def groups_as_last(step: s.GroupsAsLast, hand: Hand) -> None:
    hand.do(TakeOverGroups(hand.job, (step.painted,) if step.painted else ()))


def note_paint(step: s.NotePaint, hand: Hand) -> None:
    if not step.of:
        group = group_at(hand, hand.on_panel())
    else:
        known = [g for g in hand.picture.groups if g.name == step.of]
        if not known:
            raise Refused(_("There is no finish group “{name}”.").format(name=step.of), rule="no_group")
        group = known[0]
    hand.do(SetPaintSystem(hand.job, group.id, step.paint))


def hold(step: s.Hold, hand: Hand) -> None:
    hand.do(HoldPanel(hand.job, hand.on_panel(), step.reason))


def release(_step: s.Release, hand: Hand) -> None:
    hand.do(ReleasePanel(hand.job, hand.on_panel()))


def note_mark(step: m.NoteMark, hand: Hand) -> None:
    panel = hand.on_panel()
    hand.do(
        RecordMark(
            hand.job,
            panel,
            step.kind,
            step.severity,
            depth=step.depth,
            intent=step.intent,
            at=position(hand, panel, step.at),
            end_mm=step.to,
            lamp_id=lamp_id(hand, step.lamp),
            count=step.count,
            length_mm=amount(step.length),
            note=step.note,
        )
    )


def _last_mark(hand: Hand, kind: str = "") -> Mark:
    panel = hand.on_panel()
    for mark in reversed(hand.picture.marks):
        if mark.panel == panel and kind in ("", mark.kind):
            return mark
    raise Refused(_("There is no such mark on that panel."), rule="no_mark")


def correct_mark(step: m.CorrectLastMark, hand: Hand) -> None:
    values = {
        "kind": step.kind, "severity": step.severity, "depth": step.depth, "intent": step.intent, "note": step.note,
    }  # fmt: skip
    hand.do(CorrectMark(hand.job, _last_mark(hand).id, {k: v for k, v in values.items() if v is not None}))


def look_nothing(step: m.LookNothing, hand: Hand) -> None:
    hand.do(LookedNothingSeen(hand.job, hand.on_panel(), lamp_id(hand, step.lamp)))


def look_again(step: m.LookAgain, hand: Hand) -> None:
    hand.do(LookAgain(hand.job, _last_mark(hand, step.kind).id, step.severity, lamp_id=lamp_id(hand, step.lamp)))


def strike(step: m.Strike, hand: Hand) -> None:
    picture = hand.picture
    if step.what == "mark":
        hand.do(StrikeMark(hand.job, _last_mark(hand).id))
        return
    if step.what in STRIKABLE:
        there, strikes = STRIKABLE[step.what]
        hand.do(strikes(hand.job, _newest(there(picture))))
        return
    places = {p.id for p in picture.places if p.panel == hand.panel}
    newest = {
        "reading": [r.id for r in picture.readings if r.place_id in places],
        "trial": [t.id for t in picture.trials],
        "photo": [p.id for p in picture.photos],
        "work": [o.id for o in picture.other_work],
    }[step.what]
    moves: dict[str, Callable[[str, str], Move]] = {
        "reading": StrikeReading,
        "trial": StrikeTrial,
        "photo": StrikePhoto,
        "work": StrikeOtherWork,
    }
    hand.do(moves[step.what](hand.job, _newest(newest)))


def _newest(ids: Sequence[str]) -> str:
    if not ids:
        raise Refused(_("There is nothing of that kind to strike out."), rule="nothing")
    return ids[-1]


def _add(hand: Hand, content: bytes, name: str, panel: str, step: m.AddPicture | m.DrawnPicture) -> None:
    hand.do(
        AddPhoto(
            hand.job,
            content,
            name,
            panel=panel,
            moment=step.moment,
            lamp_id=lamp_id(hand, step.lamp),
            caption=step.caption,
            shows=step.shows,
            trial_id=_section(hand, panel).id if step.shows == "test_section" else "",
        )
    )


def _section(hand: Hand, panel: str) -> Trial:
    """The newest trial of the panel. Raises Refused when there is none."""
    found = [t for t in hand.picture.trials if t.panel == panel]
    if not found:
        raise Refused(_("There is no trial yet."), rule="no_trial")
    return found[-1]


def _shows_no_paint(shows: str) -> bool:
    return shows not in ("", "test_section")


def add_picture(step: m.AddPicture, hand: Hand) -> None:
    path = hand.beside / step.file
    try:
        content = path.read_bytes()
    except OSError as error:
        raise BadFile(
            _("{name} cannot be read ({why}).").format(name=step.file, why=error.strerror), name=step.file
        ) from error
    _add(hand, content, path.name, step.of or ("" if _shows_no_paint(step.shows) else hand.panel), step)


def drawn_picture(step: m.DrawnPicture, hand: Hand) -> None:
    from detailbench.photos.drawn import SWIRLS, drawn_reflection

    panel = "" if _shows_no_paint(step.shows) else hand.on_panel()
    content = drawn_reflection(SWIRLS[step.swirls], seed=len(hand.picture.photos) + 1)
    _add(hand, content, f"drawn-{panel or step.shows}-{step.moment}.jpg", panel, step)


def pair_pictures(step: m.PairPictures, hand: Hand) -> None:
    panel = hand.on_panel()
    if step.section:
        halves = section_photos(hand.picture, _section(hand, panel).id)
        if len(halves) < 2:
            raise Refused(_("A test section has two halves: add both photos first."), rule="pair")
        hand.do(PairPhotos(hand.job, halves[-2].id, halves[-1].id))
        return
    before = [p.id for p in hand.picture.photos if p.panel == panel and p.moment == "before"]
    after = [p.id for p in hand.picture.photos if p.panel == panel and p.moment == "after"]
    if not before or not after:
        raise Refused(_("A pair is one photo from before and one from after the work."), rule="pair")
    hand.do(PairPhotos(hand.job, before[-1], after[-1]))


def irreplaceable(step: s.Irreplaceable, hand: Hand) -> None:
    hand.do(SetGroupPaint(hand.job, group_at(hand, hand.on_panel()).id, {"irreplaceable": step.irreplaceable}))


ACTS = {
    s.NoteState: note_state,
    s.MakeFinishGroup: make_group,
    s.GroupsAsLast: groups_as_last,
    s.Irreplaceable: irreplaceable,
    s.NotePaint: note_paint,
    s.Hold: hold,
    s.Release: release,
    m.NoteMark: note_mark,
    m.CorrectLastMark: correct_mark,
    m.LookNothing: look_nothing,
    m.LookAgain: look_again,
    m.Strike: strike,
    m.AddPicture: add_picture,
    m.DrawnPicture: drawn_picture,
    m.PairPictures: pair_pictures,
}
