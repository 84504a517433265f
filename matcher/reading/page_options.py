"""Of every choice on a page what is chosen: options of a list, radio buttons, check boxes, swatches."""

from matcher.reading.amounts import sums
from matcher.reading.page_tree import Element, drop
from matcher.reading.page_words import any_name, is_just


def keep_chosen(root: Element) -> None:
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
        if child.tag == "button" and _is_chosen(child) is None and not sums(child.text(2000)):
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

    drop(root, unwanted)
