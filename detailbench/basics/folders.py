"""Where a person's own files lie on this system: the workshop unless another is named, and the log."""

from __future__ import annotations

import os
from pathlib import Path

WORKSHOP_VARIABLE = "DETAILBENCH_WORKSHOP"


def default_workshop() -> Path:
    """The workshop folder named by DETAILBENCH_WORKSHOP, else one among the person's own data."""
    named = os.environ.get(WORKSHOP_VARIABLE)
    if named:
        return Path(named)
    from platformdirs import user_data_path

    return user_data_path("detailbench", appauthor=False) / "workshop"


def log_folder() -> Path:
    """Where the program writes its log."""
    from platformdirs import user_log_path

    return user_log_path("detailbench", appauthor=False)
