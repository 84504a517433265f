"""Texts by name, as one section of a job keeps what was typed: whatever else stands there is passed over."""

from collections.abc import Collection, Mapping

from pydantic import JsonValue


def texts(
    section: JsonValue | Mapping[str, JsonValue], known: Collection[str] | None = None
) -> dict[str, str]:
    """Return the texts that aren't blank, as typed; with `known` only those of these names.

    >>> texts({"tons": "3", "rpm": " ", "x": 1}), texts({"tons": "3", "x": "y"}, {"tons"}), texts("")
    ({'tons': '3'}, {'tons': '3'}, {})
    """
    if not isinstance(section, Mapping):
        return {}
    return {
        name: text
        for name, text in section.items()
        if isinstance(text, str) and text.strip() and (known is None or name in known)
    }


def with_text(section: Mapping[str, JsonValue], name: str, text: str) -> dict[str, JsonValue]:
    """Return the section with one text as typed; emptied, it is taken out."""
    rest = {key: value for key, value in section.items() if key != name}
    return rest | {name: text} if text.strip() else rest
