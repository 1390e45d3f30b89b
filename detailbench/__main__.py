"""``python -m detailbench``: the same door as the command."""

from __future__ import annotations

import sys


def main() -> int:
    """Run the command line with the process's own arguments; returns the exit code."""
    from detailbench.cli import run

    return run(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
