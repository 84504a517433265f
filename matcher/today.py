"""The calendar day where the user is."""

from datetime import UTC, date, datetime


def today() -> date:
    """Return it."""
    return datetime.now(UTC).astimezone().date()
