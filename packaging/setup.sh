# shellcheck shell=sh disable=SC2034
# Shared by packaging/run and packaging/test; to be sourced, with the checkout as working directory.
# Gives: system_packages NAME...  |  environment LAYER REQUIREMENTS  |  $PYTHON of the virtual environment.
# A layer's stamp in .venv holds the digest of what it was made from; while that fits, set-up is skipped.

VENV=.venv
PYTHON=$VENV/bin/python

WINDOW_PACKAGES="libegl1 libgl1 libglib2.0-0 libdbus-1-3 libfontconfig1 libfreetype6 libxkbcommon0 libx11-6
    libxcb-cursor0 libxcb-icccm4 libxcb-image0 libxcb-keysyms1 libxcb-randr0 libxcb-render-util0 libxcb-shape0
    libxcb-sync1 libxcb-xfixes0 libxcb-xkb1 libxkbcommon-x11-0 libx11-xcb1"
TEST_PACKAGES="xvfb xauth poppler-utils qpdf"

say() { printf '%s\n' "detailbench: $*" >&2; }

stop() {
    say "$*"
    exit 1
}

# Debian and its relations only: on another system the libraries are taken to be there.
system_packages() {
    command -v dpkg-query >/dev/null 2>&1 || return 0
    # names that installed packages provide count too: libglib2.0-0 is libglib2.0-0t64 in later releases
    installed=$(dpkg-query -W -f '${db:Status-Status} ${Package},${Provides}\n' |
        sed -n 's/^installed //p' | tr ',' '\n' | sed 's/^ *//; s/[ (].*//')
    missing=
    for name in "$@"; do
        printf '%s\n' "$installed" | grep -Fqx "$name" || missing="$missing $name"
    done
    [ -n "$missing" ] || return 0
    if [ "$(id -u)" = 0 ]; then
        as_root=
    elif command -v sudo >/dev/null 2>&1; then
        as_root=sudo
    else
        stop "system packages are missing, and there is neither root nor sudo to install them:$missing"
    fi
    say "installing system packages:$missing"
    # shellcheck disable=SC2086  # lists of words
    {
        $as_root apt-get update -qq </dev/null >/dev/null || say "the package lists could not be renewed; trying the old ones"
        $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends \
            -o Dpkg::Use-Pty=0 $missing </dev/null >/dev/null || stop "these system packages could not be installed:$missing"
    }
}

# What a layer is made from: its pins, our own metadata, and the Python below it.
digest_of() {
    { cat "$1" pyproject.toml packaging/setup.sh; readlink -f "$(command -v python3)"; pwd; } | sha256sum | cut -d ' ' -f 1
}

fresh_python() {
    command -v python3 >/dev/null 2>&1 || stop "python3 is missing (3.11 or later is needed)"
    python3 -c 'import sys; sys.exit(not (3, 11) <= sys.version_info[:2] < (3, 15))' ||
        stop "Python 3.11 to 3.14 is needed; python3 is $(python3 -c 'import platform; print(platform.python_version())')"
    if ! "$PYTHON" -c 'import pip' 2>/dev/null; then
        say "making the virtual environment $VENV"
        rm -rf "$VENV"
        python3 -m venv "$VENV" || stop "the virtual environment could not be made (is python3-venv installed?)"
    fi
}

# environment LAYER REQUIREMENTS: true when the stamp fits already, else installs and stamps.
environment() {
    stamp=$VENV/.stamp-$1
    made_from=$(digest_of "$2")
    [ -x "$PYTHON" ] && [ "$(cat "$stamp" 2>/dev/null)" = "$made_from" ] && return 0
    fresh_python
    say "installing the pinned packages of $2"
    # The pins are complete, so nothing is to be resolved: an older pip takes a newer release of "name[extra]" for a
    # requirement without a pin, and stops. That they are complete is checked afterwards.
    "$PYTHON" -m pip install --quiet --disable-pip-version-check --no-build-isolation --no-deps --require-hashes -r "$2" >&2 ||
        stop "the packages of $2 could not be installed"
    "$PYTHON" -m pip install --quiet --disable-pip-version-check --no-build-isolation --no-deps -e . >&2 ||
        stop "detailbench itself could not be installed"
    "$PYTHON" -m pip check --quiet --disable-pip-version-check >&2 || stop "the pins of $2 do not fit together"
    printf '%s\n' "$made_from" >"$stamp"
}
