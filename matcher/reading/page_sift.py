"""What of a saved page is not said to the buyer, or not about the thing for sale: hidden text, options
that aren't chosen, struck-out prices, navigation, related goods, reviews, questions and answers.

`sift` takes all of it out of the tree. What holds the page's own title is never taken for an aside.
"""

import re
from collections.abc import Callable
from collections.abc import Set as AbstractSet
from dataclasses import dataclass

from matcher.reading.page_thread import drop_answers
from matcher.reading.page_tree import Element
from matcher.reading.page_words import any_name, has, is_just

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
_ROLES = frozenset(
    [
        "navigation",
        "banner",
        "contentinfo",
        "complementary",
        "search",
        "dialog",
        "alertdialog",
        "menu",
        "menubar",
        "tooltip",
        "alert",
        "status",
        "toolbar",
    ]
)
_TYPES = re.compile(
    r"(?:Review|Question|Answer|Comment|BreadcrumbList|WPFooter|WPHeader|SiteNavigationElement|WPSideBar|FAQPage)$",
    re.IGNORECASE,
)
_HEADINGS = frozenset({"h1", "h2", "h3", "h4", "h5", "h6"})
_MOST_ASIDES = 300
"""Sections that are looked for; each one costs a walk along its neighbours."""
_MONEY = re.compile(r"[$€£]\s?\d|\d\s?[€£]|\b(?:USD|EUR|GBP|CAD)\s?\d|\d\s?(?:USD|EUR|GBP|CAD)\b")


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


def sift(root: Element, sheet: Styles, *, about_one: bool = False) -> None:
    """Take out of the tree all that gives nothing; `root` stays.

    On a page that is known to be `about_one` thing, sections such as `Popular` are about others.
    """
    # Options first: what is chosen is told by attributes that the other rules don't look at.
    _keep_chosen(root)
    _drop(root, lambda element: _is_hidden(element, sheet))
    drop_answers(root)
    protected = _around_titles(root)
    _drop(root, lambda element: element not in protected and _is_aside(element))
    _drop_headed(root, protected, about_one)


def _drop(root: Element, unwanted: Callable[[Element], bool]) -> None:
    for element in list(root.walk()):
        if any(isinstance(child, Element) for child in element.children):
            element.children = [
                child for child in element.children if isinstance(child, str) or not unwanted(child)
            ]


def remove(root: Element, elements: AbstractSet[Element]) -> None:
    """Take elements out of the tree, all in one walk."""
    if elements:
        _drop(root, lambda element: element in elements)


def _names(element: Element) -> list[str]:
    names = [f".{name}" for name in element.attributes.get("class", "").split()]
    identity = element.attributes.get("id", "").strip()
    return [*names, f"#{identity}"] if identity else names


def _is_hidden(element: Element, sheet: Styles) -> bool:
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


# Options


def _keep_chosen(root: Element) -> None:
    """Leave of every choice what is chosen: options of a list, radio buttons, check boxes, swatches."""
    for element in list(root.walk()):
        if element.tag == "select":
            element.children = [
                child for child in element.walk() if child.tag == "option" and "selected" in child.attributes
            ]
        elif any(isinstance(child, Element) for child in element.children):
            element.children = _without_unchosen(element)
    _drop_labels(root)


def _without_unchosen(group: Element) -> list[Element | str]:
    """Return the children of an element without options that aren't chosen."""
    kept: list[Element | str] = []
    unchosen_before = False
    options = [child for child in group.elements() if _is_chosen(child) is not None]
    of_options = any_name("options", group.names) or group.attributes.get("role") in {"radiogroup", "listbox"}
    named = (
        of_options
        and len(list(group.elements())) > 1
        and any(_is_choosable(child) for child in group.elements())
    )
    for child in group.children:
        if isinstance(child, str):
            # The words behind a radio button that isn't pressed belong to it.
            if not unchosen_before:
                kept.append(child)
            continue
        unchosen_before = _is_box(child) and "checked" not in child.attributes
        if _is_chosen(child) is False or (named and _is_choosable(child) and child not in options):
            continue
        if child.tag == "button" and _is_chosen(child) is None and not _MONEY.search(child.text(2000)):
            continue
        kept.append(child)
    return kept


def _is_choosable(element: Element) -> bool:
    return element.tag in {"button", "li", "a", "span", "div", "label"} and not _holds_box(element)


def _holds_box(element: Element) -> bool:
    return any(inner.tag in {"input", "select"} for inner in element.near())


def _is_chosen(element: Element) -> bool | None:
    """Say whether an element marks itself as chosen (or not); `None` if it says nothing of it."""
    attributes = element.attributes
    for name in ("aria-checked", "aria-selected", "aria-pressed", "data-selected", "data-checked"):
        said = attributes.get(name, "").lower()
        if said in {"true", "false"}:
            return said == "true"
    if "aria-current" in attributes:
        return attributes["aria-current"].lower() != "false"
    in_group = element.parent is not None and any_name("options", element.parent.names)
    if in_group and any(is_just("chosen", name) for name in attributes.get("class", "").split()):
        return True
    return None


def _is_box(element: Element) -> bool:
    """Say whether an element is a radio button or a check box."""
    return element.tag == "input" and element.attributes.get("type", "").lower() in {"radio", "checkbox"}


def _drop_labels(root: Element) -> None:
    """Drop the labels of boxes that aren't checked, wherever they stand."""
    unchecked: set[str] = set()
    for element in root.walk():
        if _is_box(element) and "checked" not in element.attributes:
            unchecked.add(element.attributes.get("id") or "-")

    def unwanted(element: Element) -> bool:
        if element.tag != "label":
            return False
        if element.attributes.get("for") in unchecked:
            return True
        boxes = [inner for inner in element.near() if _is_box(inner)]
        return bool(boxes) and not any("checked" in box.attributes for box in boxes)

    _drop(root, unwanted)


# Asides


def _around_titles(root: Element) -> set[Element]:
    """Return the elements that hold a main heading: whatever their names, they are the page itself."""
    around: set[Element] = {root}
    headings = [element for element in root.walk() if element.tag == "h1" and not _in_aside(element)]
    # A shop may put its own name into an h1 too: the one that names goods by a figure is the page's.
    telling = [heading for heading in headings if any(map(str.isdigit, heading.text(300)))]
    for element in (*(telling or headings), *root.elements()):
        around.add(element)
        around.update(element.ancestors())
    around.update(element for element in root.walk() if element.tag in {"body", "main"})
    return around


def _in_aside(element: Element) -> bool:
    return any(above.tag in {"nav", "footer", "aside"} for above in element.ancestors())


def _is_aside(element: Element) -> bool:
    """Say whether tag, role, type or name mark an element as not about the thing for sale."""
    tag, attributes = element.tag, element.attributes
    if tag in {"nav", "footer", "aside", "menu"} or attributes.get("role", "").lower() in _ROLES:
        return True
    if tag == "header" and not any(
        above.tag in {"article", "main", "section"} for above in element.ancestors()
    ):
        return True
    if _TYPES.search(attributes.get("itemtype", "").strip()) or attributes.get("itemprop") in {
        "review",
        "comment",
        "isRelatedTo",
        "isSimilarTo",
    }:
        return True
    label = attributes.get("aria-label", "")
    if label and len(label) <= 80 and has("heading", label):
        return True
    return bool(element.names.strip()) and _is_named_aside(element)


def _is_named_aside(element: Element) -> bool:
    return any(has("name", name) and not has("own_words", name) for name in element.names.split())


# Sections under a heading


def _drop_headed(root: Element, protected: set[Element], about_one: bool) -> None:
    """Drop the sections whose heading says that they are about something else."""
    gone: set[Element] = set()
    count = 0
    for heading in list(root.walk()):
        if heading in protected or not _is_aside_heading(heading, about_one):
            continue
        if heading in gone or any(above in gone for above in heading.ancestors()):
            continue
        gone.update(_drop_section(heading, protected))
        count += 1
        if count >= _MOST_ASIDES:
            return


def _is_aside_heading(element: Element, about_one: bool) -> bool:
    words = element.text(400)
    if not words or has("own_words", words):
        return False
    if _is_heading(element):
        # A listing's own title may hold such a word: `Motor similar to GS-11, 1/2 HP`.
        is_title = has("goods", words) and any(map(str.isdigit, words))
        told = has("heading", words) or (about_one and has("soft_heading", words))
        return told and len(words.split()) <= 9 and not is_title
    if element.tag in {"p", "div", "strong", "b", "span", "dt", "th"} and len(words) <= 60:
        plain = words.rstrip(":?")
        return is_just("heading", plain) or (about_one and is_just("soft_heading", plain))
    return False


def _is_heading(element: Element) -> bool:
    is_named = element.attributes.get("role") == "heading"
    return is_named or element.tag in _HEADINGS or element.tag in {"legend", "summary", "caption"}


def _drop_section(heading: Element, protected: set[Element]) -> list[Element]:
    """Remove the section of a heading from the tree; return the elements that went."""
    block = heading
    while block.parent is not None and block.parent not in protected and _is_first(block):
        if _holds_next_heading(block.parent, block, heading):
            break
        block = block.parent
    if block is not heading and not _is_alone(block, heading):
        _remove(block)
        return [block]
    return _remove_following(block, heading)


def _is_first(element: Element) -> bool:
    """Say whether nothing that can be read stands before an element in its parent."""
    for child in element.parent.children if element.parent else ():
        if child is element:
            return True
        if isinstance(child, str) and child.strip():
            return False
        if isinstance(child, Element) and child.text(50):
            return False
    return False


def _is_alone(block: Element, heading: Element) -> bool:
    return block.text(500) == heading.text(500)


def _holds_next_heading(parent: Element, block: Element, heading: Element) -> bool:
    """Say whether another section of the same rank begins among an element's own children."""
    after = False
    for child in parent.children:
        if child is block:
            after = True
        elif after and isinstance(child, Element) and _ends_section(child, heading):
            return True
    return False


def _ends_section(element: Element, heading: Element) -> bool:
    """Say whether an element is a heading of the same or a higher rank that isn't one of an aside."""
    if element.tag not in _HEADINGS:
        return element.tag == "hr" if heading.tag not in _HEADINGS else False
    if heading.tag in _HEADINGS and element.tag > heading.tag:
        return False
    return not has("heading", element.text(200))


def _remove(element: Element) -> None:
    if element.parent is not None:
        element.parent.children = [child for child in element.parent.children if child is not element]


def _remove_following(block: Element, heading: Element) -> list[Element]:
    """Remove a heading and what follows it on its level, up to the next heading; return what went."""
    parent = block.parent
    if parent is None:
        return []
    kept: list[Element | str] = []
    gone: list[Element] = []
    dropping = False
    for child in parent.children:
        if child is block:
            dropping = True
        elif dropping and isinstance(child, Element) and _ends_section(child, heading):
            dropping = False
        if not dropping:
            kept.append(child)
        elif isinstance(child, Element):
            gone.append(child)
    parent.children = kept
    return gone
