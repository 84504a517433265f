"""Is there a screen to open a window on?"""

import os
import sys


def has_display() -> bool:
    """Tell whether a window could be seen; on Linux that takes a display server."""
    if sys.platform in ("win32", "darwin"):
        return True
    if os.environ.get("QT_QPA_PLATFORM") in ("offscreen", "minimal"):
        return False
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))
