"""The handover report as plain content. It can be made from any state of a job and says what is missing."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from detailbench.basics.texts import _
from detailbench.record.past import PutRight
from detailbench.record.picture import JobPicture
from detailbench.report.content.accepting import accepting_blocks
from detailbench.report.content.agreed import agreement_blocks, mishap_blocks
from detailbench.report.content.apart import apart_blocks
from detailbench.report.content.blocks import Block, DocumentContent, Heading, Para, Section, Workings
from detailbench.report.content.days import day_blocks
from detailbench.report.content.frame_of import framed
from detailbench.report.content.front import front
from detailbench.report.content.gathered import Gathered, ReadFile, gather
from detailbench.report.content.gauge_checks import gauge_blocks
from detailbench.report.content.gloss import gloss_blocks
from detailbench.report.content.keeping import keeping_blocks
from detailbench.report.content.layered import clear_note
from detailbench.report.content.limits import limit_blocks
from detailbench.report.content.marking import marks_blocks
from detailbench.report.content.order import order_blocks
from detailbench.report.content.photographs import photo_blocks
from detailbench.report.content.readings import readings_blocks
from detailbench.report.content.recording import limits_blocks, recording_blocks, settings_blocks
from detailbench.report.content.since import since_last_blocks
from detailbench.report.content.thickness_maps import odd_blocks, thickness_plan
from detailbench.report.content.thickness_rows import rows_blocks
from detailbench.report.content.trial_sections import photos_of_sections, test_section_blocks
from detailbench.report.content.washed import other_work_blocks, second_look_blocks, wash_blocks
from detailbench.report.content.work_done import protection_blocks, work_blocks


def handover_content(
    picture: JobPicture,
    *,
    now: datetime,
    version: str,
    read_file: ReadFile,
    key_fingerprint: str = "",
    past: Sequence[PutRight] = (),
) -> DocumentContent:
    """The content of the report of ``picture`` as it stands at ``now`` (aware).

    ``version``: the program's; ``read_file`` gives an evidence file's bytes by its SHA-256 (a DetailbenchError it
    raises is printed in the photograph's place); ``key_fingerprint``: of the key the file will be sealed with, empty
    for a copy that is not closed; ``past``: entries put right, as the journal tells them. The same picture, time and
    files give the same content.
    """
    g = gather(picture, now=now, version=version, read_file=read_file, key_fingerprint=key_fingerprint, past=past)
    kind = _("Handover report")
    page_one = front(g, kind)
    sections = _sections(g)
    signing = Section(_("Acceptance and signatures"), accepting_blocks(g), new_page=True)
    return framed(g, kind, page_one, sections, signing, Section(_("Workings"), _appendix(g), new_page=True))


def _sections(g: Gathered) -> tuple[Section, ...]:
    thickness: list[Block] = []
    if g.picture.readings:
        thickness = [thickness_plan(g), Para(clear_note(g)), *odd_blocks(g), *rows_blocks(g)]
    else:
        thickness = [Para((_("Paint thickness was not measured in this job."),))]
    shop = Heading((_("Settings in force"),))
    return (
        Section(_("The days"), day_blocks(g), new_page=True),
        Section(_("What was agreed"), (*limit_blocks(g, kept=True), *agreement_blocks(g), *mishap_blocks(g))),
        Section(_("Wash"), wash_blocks(g)),
        Section(_("Marks"), marks_blocks(g), new_page=bool(g.marks)),
        Section(_("Thickness"), tuple(thickness)),
        Section(_("Gauges and checks"), gauge_blocks(g)),
        Section(_("Readings, panel by panel"), (*readings_blocks(g), *apart_blocks(g))),
        *_gloss(g),
        *_since_last(g),
        Section(_("Test sections"), test_section_blocks(g)),
        Section(_("Work"), (*work_blocks(g), *other_work_blocks(g))),
        Section(_("Protection and second look"), (*protection_blocks(g), *second_look_blocks(g))),
        Section(_("Photographs"), photo_blocks(g, elsewhere=photos_of_sections(g))),
        Section(_("The order"), order_blocks(g)),
        Section(_("In our keeping"), keeping_blocks(g)),
        Section(_("How this was recorded"), (*recording_blocks(g), shop, *settings_blocks(g))),
        Section(_("What this report is not"), limits_blocks(g)),
    )


def _since_last(g: Gathered) -> tuple[Section, ...]:
    blocks = since_last_blocks(g)
    return (Section(_("Beside the last time"), blocks),) if blocks else ()


def _gloss(g: Gathered) -> tuple[Section, ...]:
    blocks = gloss_blocks(g)
    return (Section(_("Gloss"), blocks),) if blocks else ()


def _appendix(g: Gathered) -> tuple[Block, ...]:
    if not g.refs.all():
        return (Para((_("No figure in this report was computed."),)),)
    intro = _(
        "Every computed figure in this report carries a reference like W1 to the working printed here: formula, "
        "inputs, results, source. The same inputs given to the program's command “workings” with the name of the "
        "calculation yield the same results. Values stand here as they were computed, not rounded."
    )
    return (Para((intro,)), Workings(g.refs.all()))
