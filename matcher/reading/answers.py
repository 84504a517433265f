"""Short answers to one question, understood only where every word of them is known.

Beside its question an answer needs no sentence: `the end with the wires`, `no plug, just wires`, `half inch`.
A word that nobody here knows (`not`, `or`, `maybe`) leaves the whole answer unread.
"""

import re

from matcher.reading.cell_words import is_word, meanings
from matcher.reading.listing import read_listing
from matcher.reading.table_headers import folded
from matcher.reading.vocabulary import entries

LONGEST = 80
"""Characters of a short answer; longer ones are prose."""
_PARTS = re.compile(r"[,;.]| and | but ")


def view(text: str) -> str:
    """Return the end that an answer names, `lead_end` or `shaft_end`; empty if it names none surely.

    >>> view("the end with the wires"), view("not the lead end")
    ('lead_end', '')
    """
    words = folded(text)
    if len(text) > LONGEST or "?" in text:
        return ""
    if known := meanings("view").get(words):
        return known
    named = {word for word in words.split() if not is_word("about_end", word)}
    if len(named) != 1:
        return ""
    return read_listing(f"Rotation CW seen from {named.pop()}").facts.seen_from or ""


def is_leads(text: str) -> bool:
    """Say whether an answer names loose wires and no plug.

    >>> is_leads("no plug, just wires"), is_leads("wires with a plug")
    (True, False)
    """
    parts = [part.strip() for part in _PARTS.split(text.casefold()) if part.strip()]
    short = bool(parts) and len(text) <= LONGEST and "?" not in text
    return short and all(is_word("loose", part) for part in parts)


def inches(text: str) -> str:
    """Return the figures of inches in words, empty if there are none.

    >>> inches("half inch"), inches("five eighths of an inch"), inches("half inch or so")
    ('1/2', '5/8', '')
    """
    words = [word for word in text.casefold().strip(" .").split() if len(text) <= LONGEST]
    while words and is_word("about_inch", words[-1]):
        words.pop()
    if not words:
        return ""
    word = entries()[words[0]]
    for following in words[1:]:
        if following not in word.longer:
            return ""
        word = word.longer[following]
    return word.roles.get("num", "")
