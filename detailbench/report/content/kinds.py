"""The kinds of document, by name."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.report.content.arrival import arrival_content
from detailbench.report.content.blocks import DocumentContent
from detailbench.report.content.handover import handover_content
from detailbench.report.content.supplement import supplement_content

KINDS: Mapping[str, Callable[..., DocumentContent]] = {
    "arrival": arrival_content,
    "supplement": supplement_content,
    "handover": handover_content,
}


def content_of(kind: str) -> Callable[..., DocumentContent]:
    """What makes the content of a kind: called as :func:`handover_content`. Raises BadInput for another kind."""
    if kind not in KINDS:
        raise BadInput(
            _("A document is an arrival record, a supplement or a handover report."), field="kind", given=kind
        )
    return KINDS[kind]
