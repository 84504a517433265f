"""Does the body go in? Hard where the room is known, else soft against the old body."""

from matcher.finding import Finding, Outcome
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads
from matcher.judging.saying import inches
from matcher.limit import over
from matcher.motor import Site

HARD = True
READS = Reads(old=("body_length_in",), new=("body_length_in",), site=("room_length_in",))


def judge(pair: Pair) -> Finding | None:
    """Compare the body with the room, or with the old body where the room isn't known.

    Where the room is known a fail and an unknown are hard; a body that goes in counts as a soft check.
    """
    room = pair.site.room_length_in
    answered = _by_old(pair) if room is None else _in_room(pair, room)
    hard = is_hard(pair.site) and answered.outcome in (Outcome.FAIL, Outcome.UNKNOWN)
    values = (inches(pair.old.body_length_in), inches(pair.new.body_length_in))
    return answer.finding("length", answered, hard=hard, values=values)


def is_hard(site: Site) -> bool:
    """Say whether the length decides at this place: where the room for the body is known."""
    return site.room_length_in is not None


def _in_room(pair: Pair, room: float) -> Answer:
    old, new = pair.old.body_length_in, pair.new.body_length_in
    if new is None:
        return answer.unknown(
            f"There is room for {inches(room)} of body; how long this one is isn't said.", "body_length_in"
        )
    if over(new, room):
        return answer.fails(f"Its body is {inches(new)} long; there is room for {inches(room)}.")
    outcome = Outcome.SAME if old == new else Outcome.OK
    return Answer(outcome, f"Its body is {inches(new)} long; there is room for {inches(room)}.")


def _by_old(pair: Pair) -> Answer:
    old, new = pair.old.body_length_in, pair.new.body_length_in
    if new is None:
        return answer.unknown("How long its body is isn't said.", "body_length_in")
    if old is None:
        return answer.unknown("How long the old one's body is isn't known.", "old.body_length_in")
    words = f"Its body is {inches(new)} long, the old one's {inches(old)}"
    if over(new - old, 2):
        return answer.loses(0.7, f"{words}: measure the room before buying.")
    if over(new - old, 0.5):
        return answer.loses(0.3, f"{words}: see that it goes in.")
    return Answer(Outcome.SAME if old == new else Outcome.OK, f"{words}.")
