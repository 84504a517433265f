"""The note to the seller: what the listing says in its own words against what was measured."""

from matcher.arrival.deadline import Deadline
from matcher.arrival.looks import BAD, Look
from matcher.arrival.measured import Deviation
from matcher.arrival.window import names_a_return
from matcher.motor import Offer
from matcher.record import Record
from matcher.verdict import USELESS, Judgement


def send_back_note(
    candidate: Record,
    after: Judgement,
    differing: tuple[Deviation, ...],
    looks: tuple[Look, ...],
    window: Deadline | None,
    photos: tuple[str, ...] = (),
) -> str:
    """Return the note, plain text, ready to copy; polite, and it claims nothing that wasn't measured.

    Without a difference it doesn't say that the listing was wrong: it asks for a return under its terms.
    """
    title = " ".join(candidate.title.split())[:160]
    faults = [look.bad for look in looks if look.answer == BAD]
    lines = ["Hello,", "", _arrived(title, window)]
    if differing:
        lines += ["On checking it I found that it differs from the listing:"]
        lines += [f"- {one.says}" for one in differing]
    if faults:
        lines += ["Besides:" if differing else "On checking it I found:"]
        lines += [f"- {fault}." for fault in faults]
    if not differing and not faults:
        useless = after.verdict in USELESS and after.reason
        lines += [f"I can't use it here: {after.reason}" if useless else "I have decided not to keep it."]
    lines += ["", _request(candidate, window, is_wrong=bool(differing or faults))]
    if photos:
        lines += [f"I can send pictures of this: {', '.join(photos[:12])}."]
    return "\n".join([*lines, "", "Thank you, and kind regards"]) + "\n"


def _arrived(title: str, window: Deadline | None) -> str:
    name = f'the motor from your listing "{title}"' if title else "the motor that I bought from you"
    day = window.delivered if window else None
    when = f" arrived on {day.day} {day:%B %Y}." if day else " has arrived."
    return f"{name[0].upper()}{name[1:]}{when}"


def _request(candidate: Record, window: Deadline | None, *, is_wrong: bool) -> str:
    offer = candidate.facts
    if window is not None:
        ask = (
            f"I would like to return it within the {offer.return_days} days that the listing gives, and can "
            f"hand it to the carrier by {window.day}."
        )
    elif offer.return_days:
        ask = f"I would like to return it within the {offer.return_days} days that the listing gives."
    elif is_wrong:
        ask = "Since it is not as listed, I would like to return it for a refund."
    elif names_a_return(candidate):
        ask = "I would like to return it; how many days does that have?"
    else:
        ask = "Would you take it back? The listing names no return that covers this."
    return f"{ask} {_way(offer, is_wrong=is_wrong)}"


def _way(offer: Offer, *, is_wrong: bool) -> str:
    if offer.return_shipping == "seller":
        return "The listing says that you pay the way back, so please send me a label and the address."
    if is_wrong:
        return "Please send me the address, and since it isn't as listed, a label for the way back."
    return "Please send me the address for it."
