#!/usr/bin/env python3
"""Set up Samespin in this checkout and start it: `python3 packaging/start.py demo` or `... test`.

Standard library only. It makes `.venv` beside `pyproject.toml`, installs the project there, checks that
Qt can load, and hands over. A stamp in `.venv` remembers what was installed for, so that a second start
compares one hash and goes. Any other words are handed to the `samespin` command as they are.
"""

import hashlib
import os
import platform
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
OLDEST = (3, 11)
QT_LIBRARIES = """
    libegl1 libgl1 libdbus-1-3 libfontconfig1 libglib2.0-0 libxkbcommon0 libxkbcommon-x11-0 libxcb-cursor0
    libxcb-icccm4 libxcb-image0 libxcb-keysyms1 libxcb-randr0 libxcb-render-util0 libxcb-shape0
    libxcb-xinerama0 libxcb-xkb1 fonts-dejavu-core
""".split()  # noqa: SIM905 - a list of packages reads best as one
USAGE = """usage: python3 packaging/start.py demo      the whole job on the shipped example
       python3 packaging/start.py test      every check and test of the project
       python3 packaging/start.py [WORDS]   the samespin command, e.g. read, rank; none opens the window"""


class SetupFailed(Exception):
    """Something is missing that this script can't mend; the message is for people."""


def say(line: str) -> None:
    """Print one line of progress where it doesn't mix with a command's output."""
    print(f"samespin set-up: {line}", file=sys.stderr, flush=True)


def run(*words: str) -> None:
    """Run a command and stop with one plain line when it fails."""
    done = subprocess.run(words, cwd=ROOT, stdout=sys.stderr, check=False)
    if done.returncode:
        raise SetupFailed(f"this command ended with status {done.returncode}: {' '.join(words)}")


def check_python() -> None:
    """Stop early on a Python that is too old."""
    if sys.version_info < OLDEST:
        found, wanted = platform.python_version(), ".".join(map(str, OLDEST))
        raise SetupFailed(f"Python {found} is too old; start this with Python {wanted} or later")


def may_install_packages() -> bool:
    """Tell whether Debian packages can be installed without asking anybody."""
    return hasattr(os, "geteuid") and os.geteuid() == 0 and shutil.which("apt-get") is not None


def install_packages(names: list[str], why: str) -> None:
    """Install Debian packages when we may, else stop with the one line to run."""
    if not shutil.which("apt-get"):
        raise SetupFailed(f"{why}; install it with your system's package manager, then start again")
    if not may_install_packages():
        raise SetupFailed(
            f"{why}; run this line, then start again:\n  sudo apt-get install -y {' '.join(names)}"
        )
    say(f"{why}: installing {len(names)} system package{'s' if len(names) > 1 else ''}")
    run("apt-get", "update", "-q")
    run("env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "install", "-q", "-y", *names)


def works(statement: str) -> bool:
    """Tell whether the Python in `.venv` runs a statement."""
    return subprocess.run([PYTHON, "-c", statement], capture_output=True, check=False).returncode == 0


def make_venv() -> None:
    """Make `.venv` unless a working one is there."""
    if PYTHON.exists() and works("import pip"):
        return
    say(f"making {VENV.name} with Python {platform.python_version()}")
    words = [sys.executable, "-m", "venv", "--clear", str(VENV)]
    if subprocess.run(words, cwd=ROOT, capture_output=True, check=False).returncode:
        version = f"python{sys.version_info.major}.{sys.version_info.minor}-venv"
        install_packages([version], "Python's own venv module is incomplete here")
        run(*words)


def fingerprint() -> str:
    """Return a hash of all that decides what has to be installed."""
    return hashlib.sha256(
        (ROOT / "pyproject.toml").read_bytes() + f"{ROOT} {sys.version}".encode()
    ).hexdigest()


def install(extra: str) -> None:
    """Install the project with its dependencies, editable, unless the stamp says it was done."""
    stamp = VENV / f"installed-{extra or 'plain'}.stamp"
    if PYTHON.exists() and stamp.exists() and stamp.read_text(encoding="utf-8") == fingerprint():
        return
    make_venv()
    say("installing the project and what it needs; this takes a minute the first time")
    run(
        str(PYTHON),
        "-m",
        "pip",
        "install",
        "-q",
        "--disable-pip-version-check",
        "-e",
        f".[{extra}]" if extra else ".",
    )
    check_qt()
    stamp.write_text(fingerprint(), encoding="utf-8")


def qt_fault() -> str:
    """Return why Qt can't be loaded, empty when it can."""
    words = [str(PYTHON), "-c", "import PySide6.QtWidgets, PySide6.QtPrintSupport, PySide6.QtSvg"]
    done = subprocess.run(words, capture_output=True, text=True, check=False)
    return "" if done.returncode == 0 else (done.stderr.strip().splitlines() or ["no reason given"])[-1]


def check_qt() -> None:
    """See that Qt loads; on Debian-like systems bring the libraries it lacks."""
    fault = qt_fault()
    if not fault:
        return
    say(f"Qt can't load yet ({fault})")
    install_packages(QT_LIBRARIES, "Qt needs libraries that this system lacks")
    if fault := qt_fault():
        raise SetupFailed(f"Qt still can't load: {fault}")


def hand_over(words: list[str]) -> int:
    """Run the command in `.venv` in this process's place (on Windows, as its child)."""
    if os.name == "nt":
        return subprocess.run([str(PYTHON), *words], check=False).returncode
    return os.execv(PYTHON, [str(PYTHON), *words])  # noqa: S606 - no shell is wanted


def main(words: list[str]) -> int:
    """Set up what the words need and hand over; return an exit status."""
    if words[:1] in (["-h"], ["--help"]):
        print(USAGE)
        return 0
    testing = words[:1] == ["test"]
    try:
        check_python()
        install("test" if testing else "")
    except SetupFailed as fault:
        say(str(fault))
        return 1
    if testing:
        os.chdir(ROOT)
        return hand_over(["-m", "pytest", *words[1:]])
    return hand_over(["-m", "matcher.command", *words])


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
