"""Numbers written in words of several pieces: `sixty-five`, `one hundred and twenty`, `eleven fifty`."""

from matcher.reading.vocabulary import entries

_TENS = frozenset(range(20, 100, 10))


def spelled(figures: str, words: list[str], after: int) -> tuple[str, int]:
    """Return the whole number that starts with `figures` (before `after`) and where it ends."""
    if not figures.isdigit() or words[after - 1].isdigit():
        return figures, after
    value = int(figures)
    if value < 20 and _at(words, after) == "hundred":
        value, after = value * 100, after + 1
    if value in _TENS:
        value, after = _with_ones(value, words, after)
    elif value >= 100 and value % 100 == 0:
        value, after = _with_rest(value, words, after)
    elif 0 < value < 20 and _said(words, after) in _TENS:  # `eight fifty`, `eleven forty`
        tens, after = _with_ones(_said(words, after), words, after + 1)
        value = value * 100 + tens
    return str(value), after


def _at(words: list[str], token: int) -> str:
    return words[token] if token < len(words) else ""


def _said(words: list[str], token: int) -> int:
    """Return the whole number that one word says; 0 when it says none."""
    word = _at(words, token)
    figures = entries()[word].roles.get("num", "") if word.isalpha() else ""
    return int(figures) if figures.isdigit() else 0


def _with_ones(tens: int, words: list[str], after: int) -> tuple[int, int]:
    ones = _said(words, after)
    return (tens + ones, after + 1) if 0 < ones < 10 else (tens, after)


def _with_rest(hundreds: int, words: list[str], after: int) -> tuple[int, int]:
    """`one hundred twenty five`, `two hundred and ten`; `a hundred and two belts` are told apart by none."""
    start = after + (_at(words, after) == "and")
    rest = _said(words, start)
    if rest in _TENS:
        rest, start = _with_ones(rest, words, start + 1)
    elif 0 < rest < 20:
        start += 1
    else:
        return hundreds, after
    return hundreds + rest, start
