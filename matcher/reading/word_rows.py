"""Rows of the word tables that stand for many phrases: `[i|we] [pay|cover] [|the] shipping`.

Each bracket is one choice of words, an empty one among them where it may be left out.
"""

import re
from collections.abc import Iterator
from itertools import product

from matcher.reading.scan import scan

_PIECES = re.compile(r"\[([^\]]*)\]")


def phrases(row: str) -> Iterator[list[str]]:
    """Yield the phrases that a row stands for, each as its folded words.

    >>> [" ".join(words) for words in phrases("[i|we] pay [|the] freight")]
    ['i pay freight', 'i pay the freight', 'we pay freight', 'we pay the freight']
    """
    if "[" not in row:
        yield scan(row).words
        return
    # Odd pieces stand in brackets.
    choices = [
        [scan(words.strip()).words for words in (piece.split("|") if k % 2 else [piece])]
        for k, piece in enumerate(_PIECES.split(row))
    ]
    for chosen in product(*choices):
        yield [word for words in chosen for word in words]
