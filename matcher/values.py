"""One value of a field, checked by the model that holds it: a form, a job and a file take values alike."""

from pydantic import JsonValue, ValidationError

from matcher.errors import BadValue, UnknownField
from matcher.motor import Facts
from matcher.plain import plain_json
from matcher.refusal import first_fault


def _known(model: type[Facts], field: str) -> None:
    if field in model.model_fields:
        return
    from matcher.meant import meant  # only a fault pays for it

    hint = meant(field, model.model_fields)
    raise UnknownField(f"{field!r:.60} is no fact of a {model.__name__.lower()}{hint}")


def value_for(model: type[Facts], field: str, value: object) -> JsonValue:
    """Return a value as the field of `model` (`Motor`, `Offer` or `Site`) would hold it in JSON.

    Raises `UnknownField` for a name that isn't one, `BadValue` for a value that the field can't hold.
    """
    _known(model, field)
    if value is None:
        return None
    try:
        return plain_json(model.model_validate({field: plain_json(value)}).said()[field])
    except ValidationError as fault:
        reason = first_fault(fault).partition(": ")[2]
        raise BadValue(f"{field}: {value!r:.60} can't be right: {reason}") from None
    except ValueError as fault:
        raise BadValue(f"{field}: {fault}") from None
