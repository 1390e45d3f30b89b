"""Documents: a job's picture in, plain content out, then pages. Loaded when first asked for."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from detailbench.report.content.blocks import HandoverContent
    from detailbench.report.content.handover import handover_content
    from detailbench.report.pages.handover import HandoverPdf, handover_pdf
    from detailbench.report.pages.signatures import OWNER_BOX, SEAL_BOX

__all__ = ["OWNER_BOX", "SEAL_BOX", "HandoverContent", "HandoverPdf", "handover_content", "handover_pdf"]

_WHERE = {
    "HandoverContent": "content.blocks",
    "handover_content": "content.handover",
    "HandoverPdf": "pages.handover",
    "handover_pdf": "pages.handover",
    "OWNER_BOX": "pages.signatures",
    "SEAL_BOX": "pages.signatures",
}


def __getattr__(name: str) -> Any:
    if name not in _WHERE:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{_WHERE[name]}"), name)
