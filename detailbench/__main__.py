"""``python -m detailbench``: the same door as the command."""

from __future__ import annotations

import io
import sys


def main() -> int:
    """Run the command line with the process's own arguments; returns the exit code."""
    from detailbench.cli import run

    for stream in (sys.stdout, sys.stderr):  # a name in letters the terminal does not know is no reason to stop
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")
    return run(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
