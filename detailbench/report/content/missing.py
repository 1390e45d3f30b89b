"""How the job stands, and what is missing from its record, in plain words for page one."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.findings.agreements import open_agreements
from detailbench.findings.custody import custody_of
from detailbench.findings.second_look import second_look_due
from detailbench.findings.standing import ENDS, standing_of, turn_words
from detailbench.findings.supplement import unanswered
from detailbench.record.things import JobTurn
from detailbench.report.content.blocks import Fact
from detailbench.report.content.figures import moment, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, clipped, joined, said
from detailbench.report.content.wording import counted, ended, initials, opening, panels_counted
from detailbench.report.content.work_done import not_finished

MOST_LETTERS = 160


def turn_text(g: Gathered, turn: JobTurn, *, short: bool = False) -> Text:
    """ "Paused 7 May 2031, 16:40 by AE: waiting for the trim" """
    at = moment(turn.stated_at or turn.entered_at, recorded(turn, "stated_at" if turn.stated_at else "entered_at"))
    reason = clipped(turn.reason, MOST_LETTERS if short else 4000)[0]
    text = said(
        "{turn} {at}, {who}", turn=opening(turn_words(turn.turn)), at=at, who=initials(g.picture.shop, turn.entered_by)
    )
    return ended(said("{text}: {reason}", text=text, reason=reason) if reason else text)


def standing_facts(g: Gathered) -> list[Fact]:
    """How the job stands, where it is not simply handed over or going on."""
    standing = standing_of(g.picture)
    if standing not in (*ENDS, "paused"):
        return []
    turn = next((t for t in reversed(g.picture.turns) if t.turn == standing), None)
    text = turn_text(g, turn, short=True) if turn is not None else (opening(turn_words(standing)))
    return [Fact(_("Stands"), (text,))]


def missing_facts(g: Gathered) -> list[Fact]:
    """What the record does not hold, in one row; no row where nothing is missing."""
    found = missing(g)
    return [Fact(_("Missing"), (joined(found),))] if found else []


def missing(g: Gathered) -> list[Text]:
    """What is missing, sentence by sentence."""
    return [*_which_car(g), *_papers(g), *_owner(g), *_work(g), *_leaving(g)]


def _which_car(g: Gathered) -> list[Text]:
    car = g.picture.car
    checks = (
        (not (car.vin or car.vin_absent), _("The VIN is not noted.")),
        (not g.picture.said(car.id, "plate"), _("The plate is not noted.")),
        (not g.picture.photos, _("There is no photograph.")),
    )
    return [(sentence,) for holds, sentence in checks if holds]


def _papers(g: Gathered) -> list[Text]:
    arrivals = [d for d in g.picture.documents if d.kind == "arrival"]
    delivered = {d.document_id for d in g.picture.deliveries}
    out: list[Text] = []
    if not arrivals:
        out.append((_("No arrival record was closed."),))
    elif not any(d.id in delivered for d in arrivals):
        out.append((_("That the arrival record left the shop is not noted."),))
    return out


def _owner(g: Gathered) -> list[Text]:
    out: list[Text] = []
    waiting = [i.id for i in unanswered(g.picture)]
    if waiting:
        out.append(
            counted(
                waiting,
                _("{n} thing found later is not answered by the owner."),
                _("{n} things found later are not answered by the owner."),
            )
        )
    asked = [a.id for a in open_agreements(g.picture)]
    if asked:
        out.append(counted(asked, _("{n} question to the owner is open."), _("{n} questions to the owner are open.")))
    untold = [m.id for m in g.picture.mishaps if not m.told]
    if untold:
        out.append(counted(untold, _("{n} mishap nobody was told of."), _("{n} mishaps nobody was told of.")))
    return out


def _work(g: Gathered) -> list[Text]:
    out: list[Text] = []
    open_ = not_finished(g)
    if open_:
        out.append(said(_("Planned and not finished: {panels}."), panels=panels_counted(open_)))
    unread = [k for k in g.worked if g.before[k].taken and not g.after[k].taken]
    if unread:
        out.append(said(_("Not measured after the work: {panels}."), panels=panels_counted(unread)))
    loose = [k for k in g.measured if not g.before[k].confirmed or not g.after[k].confirmed]
    if loose:
        out.append(said(_("Not confirmed by a gauge check: readings on {panels}."), panels=panels_counted(loose)))
    unseen = second_look_due(g.picture).panels
    if unseen:
        out.append(said(_("No second look: {panels}."), panels=panels_counted(unseen)))
    return out


def _leaving(g: Gathered) -> list[Text]:
    out: list[Text] = []
    visit = g.picture.visits[-1] if g.picture.visits else None
    if custody_of(g.picture, "in").filled and not custody_of(g.picture, "out").filled:
        out.append((_("What went back with the car is not noted."),))
    if visit is not None and visit.odometer_in is not None and visit.odometer_out is None:
        out.append((_("The odometer on leaving is not noted."),))
    signed = {s.role for s in g.picture.signatures if s.moment == "handover"}
    if not signed & {"owner", "bearer"}:
        out.append((_("Nobody signed for the owner."),))
    if "workshop" not in signed:
        out.append((_("The workshop did not sign."),))
    return out
