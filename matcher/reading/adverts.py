"""Adverts that a page sets beside a listing: `Customers also bought: ...`, `Similar items`, `Sponsored`.

What they praise isn't for sale here, so they are passed over as if they weren't there.
"""

from matcher.reading.vocabulary import Roles

_LEADS_ON = frozenset(":-–—»→▸>")


def passed_over(words: list[str], roles: Roles, token: int, after: int) -> tuple[Roles, int]:
    """Return no roles and the end of the advert that the words from `token` up to `after` begin.

    It goes on to the end of its line; under a heading of its own to the next blank line, and where one
    stands right below the heading, to the end of the text. Where none begins, all stays as it is.
    """
    if "advert" not in roles:
        return roles, after
    is_heading = _is_alone(words, after)
    if roles["advert"] != "anywhere" and not (
        token  # else the listing was itself copied from among adverts
        and (is_heading or _announces(words, roles, token, after))
    ):
        return roles, after
    line = _line_end(words, after)
    return {}, _block_end(words, line) if is_heading else line


def _is_alone(words: list[str], after: int) -> bool:
    """Say whether no word follows on the line: `Similar items (12)`."""
    for k in range(after, len(words)):
        if words[k] == "\n":
            return True
        if words[k][0].isalpha():
            return False
    return True


def _announces(words: list[str], roles: Roles, token: int, after: int) -> bool:
    """Say whether words that may stand in any sentence announce an advert: `Related items: ...`."""
    if words[after : after + 1] and words[after] in _LEADS_ON:
        return True
    return roles["advert"] == "opens" and words[token - 1] in ("\n", "|") and words[after] != "by"


def _block_end(words: list[str], line: int) -> int:
    """Return the end of what stands below a heading that ends with its line."""
    if words[line + 1 : line + 2] == ["\n"]:
        return len(words)
    while words[line + 1 : line + 2] not in ([], ["\n"]):
        line = _line_end(words, line + 1)
    return line


def _line_end(words: list[str], token: int) -> int:
    try:
        return words.index("\n", token)
    except ValueError:
        return len(words)
