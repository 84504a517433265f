"""What of a page can't be seen, or is struck out: by attributes, by the page's own style sheet, by name."""

import re
from dataclasses import dataclass

from matcher.reading.page_tree import Element

_BRACES = re.compile(r"([{}])")
_SIMPLE = re.compile(r"(?:[a-z][a-z0-9]*)?([.#][A-Za-z_][\w-]{0,60})")
_HIDES = re.compile(r"(?:^|;)\s*(?:display\s*:\s*none|visibility\s*:\s*hidden)", re.IGNORECASE)
_STRIKES = re.compile(r"text-decoration(?:-line)?\s*:[^;]{0,40}line-through", re.IGNORECASE)
_HIDDEN_NAMES = frozenset(
    [
        "hidden",
        "d-none",
        "is-hidden",
        "hide",
        "visually-hidden",
        "visuallyhidden",
        "sr-only",
        "screen-reader-text",
        "screenreader",
        "invisible",
        "u-hidden",
        "offscreen",
        "off-screen",
        "collapsed-content",
    ]
)
_SHOWN_WIDE = re.compile(r"(?:^|\s)(?:sm|md|lg|xl):(?:block|flex|inline|inline-block|grid|table)(?:\s|$)")


@dataclass(frozen=True, slots=True)
class Styles:
    """Classes and ids (`.old`, `#x`) that the page's own style sheet hides or strikes out."""

    hidden: frozenset[str]
    struck: frozenset[str]


def styles(sheet: str) -> Styles:
    """Read the plain rules of a style sheet: one class or id, alone or with a tag.

    Rules for another medium (`@media print`) stand one level deeper and are passed over.
    """
    hidden: set[str] = set()
    struck: set[str] = set()
    depth, selectors = 0, ""
    for piece in _BRACES.split(sheet):
        if piece == "{":
            depth += 1
        elif piece == "}":
            depth = max(0, depth - 1)
        elif depth == 0:
            selectors = piece.rpartition("}")[2].rpartition(">")[2] if "<" in piece else piece
        elif depth == 1 and "@" not in selectors:
            names = _simple_names(selectors)
            hidden |= names if _HIDES.search(piece) else set()
            struck |= names if _STRIKES.search(piece) else set()
    return Styles(frozenset(hidden), frozenset(struck))


def _simple_names(selectors: str) -> set[str]:
    simple = [_SIMPLE.fullmatch(selector.strip()) for selector in selectors[:2000].split(",")]
    return {match.group(1) for match in simple if match}


def _names(element: Element) -> list[str]:
    names = [f".{name}" for name in element.attributes.get("class", "").split()]
    identity = element.attributes.get("id", "").strip()
    return [*names, f"#{identity}"] if identity else names


def is_hidden(element: Element, sheet: Styles) -> bool:
    """Say whether an element is hidden or struck out."""
    attributes = element.attributes
    style = attributes.get("style", "")
    if "hidden" in attributes or attributes.get("aria-hidden", "").lower() == "true":
        return True
    if style and (_HIDES.search(style) or _STRIKES.search(style)):
        return True
    if element.tag in {"s", "del", "strike"} or (element.tag == "dialog" and "open" not in attributes):
        return True
    classes = attributes.get("class", "")
    if not classes and "id" not in attributes:
        return False
    if any(name in sheet.hidden or name in sheet.struck for name in _names(element)):
        return True
    return not _HIDDEN_NAMES.isdisjoint(classes.lower().split()) and not _SHOWN_WIDE.search(classes)
