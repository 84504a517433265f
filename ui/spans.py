"""Places in a text as Python counts them (characters) and as Qt does (UTF-16 units).

A listing's text is hostile: signs that would reorder, hide or split what is shown are replaced one for
one, so that every span still holds.
"""

from bisect import bisect_right

_SHOWN = {
    ord("\r"): " ",
    ord("\0"): "\u2400",
    0x2028: "\n",
    0x2029: "\n",
    0xFDD0: "\ufffd",
    0xFDD1: "\ufffd",
    **dict.fromkeys([*range(0x202A, 0x202F), *range(0x2066, 0x206A)], "\ufffd"),
}


def shown(text: str) -> str:
    """Return a text of the same length that a text box shows as it stands."""
    return text.translate(_SHOWN)


class Places:
    """Turns places of one text from one count into the other."""

    def __init__(self, text: str) -> None:
        self._wide = [at for at, sign in enumerate(text) if ord(sign) > 0xFFFF]
        self._wide_qt = [at + before for before, at in enumerate(self._wide)]

    def to_qt(self, at: int) -> int:
        """Return the UTF-16 place of a character."""
        return at + bisect_right(self._wide, at - 1)

    def to_text(self, at: int) -> int:
        """Return the character at a UTF-16 place."""
        return at - bisect_right(self._wide_qt, at - 1)
