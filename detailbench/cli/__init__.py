"""The shell's face: every walk, every document, every check. With no word it opens the window."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from detailbench.basics.errors import DetailbenchError

TROUBLE = 1
WRONG_WORDS = 2


def run(argv: Sequence[str]) -> int:
    """Carry out a command line; returns the exit code. A fault a person can act on becomes one sentence."""
    from detailbench.cli.words import parser

    words = parser().parse_args(list(argv))
    try:
        return int(words.carry_out(words))
    except DetailbenchError as error:
        print(str(error), file=sys.stderr)
        return TROUBLE
    except BrokenPipeError:
        return 0
    except OSError as error:  # a name too long for the disk, say: what no command looks for by itself
        print(f"{error.filename}: {error.strerror}" if error.filename else str(error), file=sys.stderr)
        return TROUBLE
