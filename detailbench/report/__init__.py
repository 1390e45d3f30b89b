"""Documents: a job's picture in, plain content out, then pages. Loaded when first asked for."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from detailbench.report.content.arrival import arrival_content
    from detailbench.report.content.blocks import DocumentContent
    from detailbench.report.content.handover import handover_content
    from detailbench.report.content.kinds import KINDS, content_of
    from detailbench.report.content.supplement import supplement_content
    from detailbench.report.pages.document import DocumentPdf, document_pdf
    from detailbench.report.pages.signatures import OWNER_BOX, SEAL_BOX

__all__ = [
    "KINDS",
    "OWNER_BOX",
    "SEAL_BOX",
    "DocumentContent",
    "DocumentPdf",
    "arrival_content",
    "content_of",
    "document_pdf",
    "handover_content",
    "supplement_content",
]

_WHERE = {
    "KINDS": "content.kinds",
    "content_of": "content.kinds",
    "DocumentContent": "content.blocks",
    "arrival_content": "content.arrival",
    "handover_content": "content.handover",
    "supplement_content": "content.supplement",
    "DocumentPdf": "pages.document",
    "document_pdf": "pages.document",
    "OWNER_BOX": "pages.signatures",
    "SEAL_BOX": "pages.signatures",
}


def __getattr__(name: str) -> Any:
    if name not in _WHERE:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{_WHERE[name]}"), name)
