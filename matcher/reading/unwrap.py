"""Undo the hard line breaks of a text that some mail program folded at a fixed width.

A line was folded where the first word of the next one had no room on it. Lists and plates have lines
that end early, so they keep their breaks. A break becomes a blank: every character keeps its place.
"""

_NARROWEST = 36  # characters; shorter lines are a list
_WIDEST = 132
_FEWEST = 2  # folds; one long line above a short one proves nothing
_MANY = 4
_SHARE_OF_FEW, _SHARE = 0.75, 0.5  # of the breaks between two lines, the others end paragraphs
_MOST_BREAKS = 400  # more is a page's text, which keeps its lines
_COLUMNS = "   "  # between the columns of a plate or a table
_BULLETS = frozenset("-*•–>·|#+=~")
_SENTENCE_ENDS = frozenset(".!?:;")


def unwrapped(text: str) -> str:
    """Return the text with blanks for the breaks at which it was folded, as long as before.

    >>> folded = "the shaft is half an inch, about five\\ninches long with a flat, the body is five\\nacross"
    >>> unwrapped(folded)
    'the shaft is half an inch, about five inches long with a flat, the body is five across'
    """
    breaks = text.count("\n")
    if not _FEWEST <= breaks <= _MOST_BREAKS:
        return text
    lines = text.split("\n")
    width = max(len(line.rstrip()) for line in lines)
    if not _NARROWEST <= width <= _WIDEST:
        return text
    folds = [k for k in range(breaks) if _is_fold(lines[k], lines[k + 1], width)]
    inner = sum(1 for k in range(breaks) if lines[k].strip() and lines[k + 1].strip())
    share = _SHARE_OF_FEW if len(folds) < _MANY else _SHARE
    if len(folds) < max(_FEWEST, share * inner):
        return text
    everywhere = len(folds) == inner and len(folds) > _FEWEST
    return _joined(lines, set(folds)) if everywhere or _amid_sentences(lines, folds) else text


def _is_fold(line: str, following: str, width: int) -> bool:
    """Say whether the first word of the following line had no room on a line."""
    word = following.partition(" ")[0]
    if not word or following[0] in _BULLETS or line[:1] in _BULLETS or _COLUMNS in line:
        return False
    return len(line.rstrip()) + 1 + len(word) > width


def _amid_sentences(lines: list[str], folds: list[int]) -> bool:
    """Say whether most folds part a sentence: the next line doesn't begin one."""
    amid = sum(
        1 for k in folds if not lines[k + 1][0].isupper() and lines[k].rstrip()[-1] not in _SENTENCE_ENDS
    )
    return 2 * amid >= len(folds)


def _joined(lines: list[str], folds: set[int]) -> str:
    last = len(lines) - 1
    return "".join(
        line if k == last else f"{line} " if k in folds else f"{line}\n" for k, line in enumerate(lines)
    )
