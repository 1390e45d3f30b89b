"""The test sections in the owner's words, and why this process."""

from __future__ import annotations

from datetime import date, datetime, time

from detailbench.basics.texts import _
from detailbench.findings.agreements import approved_section, section_photos
from detailbench.findings.level_met import section_met
from detailbench.findings.paint_feel import feel_of, feel_words
from detailbench.findings.processes import process_of, steps_of
from detailbench.findings.range_picture import range_picture
from detailbench.findings.range_shown import range_shown
from detailbench.findings.thin_paint import clear_coat_of, thin_panels
from detailbench.findings.trial_story import TrialTold, told
from detailbench.record.things import FinishGroup
from detailbench.report.content.adopted import adopted_facts, step_text
from detailbench.report.content.agreed import answer_text, price
from detailbench.report.content.blocks import Block, Fact, Facts, Heading, Para, RangePicture
from detailbench.report.content.figures import count, day_words, of_thing, recorded
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Figure, Text, joined, said, typed
from detailbench.report.content.photographs import photo_blocks
from detailbench.report.content.tried import tried_texts
from detailbench.report.content.wording import ended, group_name, opening, panels_listed

PAINT = {
    "clear_over_colour": "clear coat over colour",
    "single_stage": "single-stage paint",
    "matt": "matt or satin paint",
    "tinted_clear": "tinted clear coat",
    "filmed": "filmed",
    "wrapped": "wrapped",
    "bare": "bare",
    "unknown": "paint system unknown",
}


def test_section_blocks(g: Gathered) -> tuple[Block, ...]:
    """Finish group by finish group: what was tried, what was seen, what was adopted and why."""
    out: list[Block] = []
    if not g.picture.trials:
        out.append(Para((_("No test section was polished in this job."),)))
    else:
        out.append(
            Para(
                (
                    _(
                        "A test section is a small taped place, polished first to find out how little is enough on "
                        "this paint. What was seen there decided what was done to the panels."
                    ),
                )
            )
        )
    for group in g.picture.groups:
        stories = told(g.picture, group.id)
        if stories or process_of(g.picture, group.id) is not None:
            out += _group(g, group, stories)
    return (*out, *_of_replaced_groups(g))


def _of_replaced_groups(g: Gathered) -> tuple[Block, ...]:
    """What was adopted for a finish group that is no more: its panels went to others, its work stands."""
    here = {group.id for group in g.picture.groups}
    rows = tuple(
        Fact(_("Adopted"), tuple(step_text(g, step) for step in steps_of(g.picture, process)))
        for process in g.picture.processes
        if process.group_id not in here
    )
    title = _("Adopted for a finish group whose panels belong to others since")
    return (Heading((title,)), Facts(rows)) if rows else ()


def _approved(g: Gathered, group: FinishGroup, stories: tuple[TrialTold, ...]) -> list[Fact]:
    """The test section the owner agreed to as the level of these panels."""
    found = approved_section(g.picture, group.id)
    if found is None:
        return []
    at = next((i for i, t in enumerate(stories, 1) if t.trial.id == found.trial.id), 0)
    texts = [
        ended(
            said(
                _("Test section {n} was shown as the level for these panels: {level}"),
                n=count([t.trial.id for t in stories[:at]]),
                level=typed(found.level),
            )
        )
    ]
    if found.price is not None:
        texts.append(said(_("Price agreed with it: {price}."), price=price(g, found.price, found.agreement)))
    texts.append(ended(answer_text(g, found.agreement)))
    met = section_met(g.picture, g.picture.acceptances[-1], found) if g.picture.acceptances else ""
    if met:
        words = {"yes": _("At handover: as agreed."), "no": _("At handover: not as agreed.")}
        texts.append((words[met],))
    return [Fact(_("Agreed by the owner"), tuple(texts))]


def _group(g: Gathered, group: FinishGroup, stories: tuple[TrialTold, ...]) -> list[Block]:
    out: list[Block] = [Heading(group_words(group)), Para(_of_panels(g, group), "note")]
    rows = [Fact(_("Test section {n}").format(n=i), tried_texts(g, t, stories)) for i, t in enumerate(stories, 1)]
    if rows:
        out.append(Facts(tuple(rows)))
        out.append(range_block(g, group))
    out.append(
        Facts(
            (
                *_scarce(g, group),
                *_refinish(group),
                *_feel(g, group),
                *adopted_facts(g, group),
                *_approved(g, group, stories),
            )
        )
    )
    out += _approved_photos(g, group)
    return out


def range_block(g: Gathered, group: FinishGroup) -> RangePicture:
    """The shop's range from mild to strong, with what is known of each combination on this paint."""
    rungs = range_shown(g.picture, range_picture(g.picture, group.id))
    return RangePicture(rungs, (_("The workshop's range from mild to strong, as it showed on this paint"),))


def _scarce(g: Gathered, group: FinishGroup) -> list[Fact]:
    """Why less is more than usually enough here: paint that cannot be replaced, or is thin by what was read."""
    texts: list[Text] = []
    if group.irreplaceable == "yes":
        texts.append((_("As stated, this paint could not be put on again as it is."),))
    if clear_coat_of(g.picture, group) == "thin":
        thin = thin_panels(g.picture, group.panels)
        text = _("Thin by the readings, beside the other panels or by the workshop's own limits: {panels}.")
        texts.append(said(text, panels=panels_listed(p for p in g.order if p in thin)))
    return [Fact(_("This paint"), tuple(texts))] if texts else []


def _refinish(group: FinishGroup) -> list[Fact]:
    """What was stated of a refinish: when, how long it is to cure, the painter's word. Nothing is concluded from it."""
    if group.refinished != "yes":
        return []
    on = group.refinished_on
    parts: list[Text] = [
        said(_("Refinished, as stated, on {day}"), day=_on(group, on))
        if on is not None
        else (_("Refinished, as stated; when is not known"),)
    ]
    if group.cure_days is not None:
        parts.append(said(_("cures {n} days by the paint maker's word"), n=of_thing(group, "cure_days", None)))
    else:
        parts.append((_("cure time not stated"),))
    if group.cure_word.strip():
        parts.append(said(_("the painter's word: “{words}”"), words=typed(group.cure_word)))
    return [Fact(_("Refinish"), (ended(joined(parts, "; ")),))]


def _on(group: FinishGroup, on: date) -> Figure:
    return Figure(day_words(datetime.combine(on, time())), on.isoformat(), recorded(group, "refinished_on"))


def _feel(g: Gathered, group: FinishGroup) -> list[Fact]:
    """How the paint behaved under the pad, as the test sections showed."""
    feel = feel_of(g.picture, group)
    if not feel.known:
        return []
    return [Fact(_("Paint feel"), (ended(joined([opening(feel_words(feel)), typed(feel.note)], "; ")),))]


def photos_of_sections(g: Gathered) -> tuple[str, ...]:
    """The ids of the photographs that stand with the test sections."""
    return tuple(id_ for group in g.picture.groups for id_ in _photos_of(g, group))


def _photos_of(g: Gathered, group: FinishGroup) -> tuple[str, ...]:
    found = approved_section(g.picture, group.id)
    return tuple(p.id for p in section_photos(g.picture, found.trial.id)) if found is not None else ()


def _approved_photos(g: Gathered, group: FinishGroup) -> list[Block]:
    """The half-and-half photographs of the approved test section."""
    photos = _photos_of(g, group)
    if not photos:
        return []
    rows = photo_blocks(g, only=photos)
    title = Heading((_("The test section the owner agreed to"),))
    return [title, *(row for row in rows if not isinstance(row, Heading))]  # of a pair of halves neither is "after"


def group_words(group: FinishGroup) -> Text:
    """ "body: clear coat over colour" """
    return said("{name}: {paint}", name=group_name(group), paint=_(PAINT[group.paint_system]))


def _of_panels(g: Gathered, group: FinishGroup) -> Text:
    return said(_("Panels of this finish: {panels}."), panels=panels_listed(k for k in g.order if k in group.panels))
