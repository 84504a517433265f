"""Papers of a finished job: its record, and the note that a customer signs for a substitute."""

from matcher.dossier.record import record_page
from matcher.dossier.substitution import substitution_note

__all__ = ["record_page", "substitution_note"]
