"""The one place where the shell opens the window."""

from __future__ import annotations

from argparse import Namespace


def open_it(words: Namespace) -> int:
    """Open the window on a workshop; returns when it is closed."""
    from detailbench.screens.app import start

    return start([] if words.folder is None else [str(words.folder)])
