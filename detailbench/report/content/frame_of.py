"""What every document carries around its sections: title, head of the page, boxes of the last page."""

from __future__ import annotations

from detailbench.basics.texts import _, language
from detailbench.body.outlines import style_name
from detailbench.findings.settings import setting
from detailbench.report.content.blocks import DocumentContent, Front, Header, Section
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Text, clipped, joined, plain, said
from detailbench.report.content.standing import standing
from detailbench.report.content.wording import opening


def framed(
    g: Gathered, kind: str, front: Front, sections: tuple[Section, ...], signing: Section, appendix: Section | None
) -> DocumentContent:
    """A whole document of the kind named."""
    car = car_line(g)
    return DocumentContent(
        title=plain(joined([kind, g.picture.job.number, car], " · ")),
        language=language().replace("_", "-"),
        program=f"detailbench {g.version}",
        printed_at=g.now,
        header=Header(
            shop=clipped(str(setting(g.picture.shop, "shop_name")), 60)[0],
            kind=kind,
            job=_("job {number}").format(number=g.picture.job.number),
            car=car,
        ),
        front=front,
        sections=sections,
        appendix=appendix,
        signing=signing,
        seal_words=standing("seal_box" if g.key_fingerprint else "seal_box_open"),
        owner_words=standing("owner_box") if g.key_fingerprint else (),
    )


def car_line(g: Gathered) -> Text:
    """The car in one line, for the head of every page."""
    car = g.picture.car
    plate = g.picture.said(car.id, "plate")
    name = clipped(car.described, 40)[0] or opening(style_name(car.style))
    return said("{name}, {plate}", name=name, plate=clipped(plate, 16)[0]) if plate else name
