"""Which finding decides the verdict, and the one sentence that says why."""

from collections.abc import Mapping, Sequence

from matcher.finding import Finding, Outcome, Verdict


def deciding(verdict: Verdict, findings: Sequence[Finding], priors: Mapping[str, float]) -> Finding | None:
    """Return the finding that decides the verdict; None where there is none.

    It is the first fail; the dearest that allows at best `poor`; the least likely to match among those that
    ask; else the largest weighted loss; else the turn.
    """
    if verdict == Verdict.WONT_FIT:
        return next(finding for finding in findings if finding.outcome is Outcome.FAIL)
    if verdict == Verdict.ASK:
        asking = [finding for finding in findings if finding.asks]
        return min(asking, key=lambda finding: priors.get(finding.check, 1.0))
    poor = [finding for finding in findings if finding.at_best_poor]
    costs = poor or [finding for finding in findings if finding.loss > 0]
    if costs:
        return max(costs, key=lambda finding: finding.weight * finding.loss)
    return next((finding for finding in findings if finding.check == "rotation"), None) or next(
        iter(findings), None
    )


def reason(verdict: Verdict, decider: Finding | None, findings: Sequence[Finding]) -> str:
    """Return the one sentence that matters most."""
    if decider is None:
        return "Nothing is known of either motor."
    if verdict != Verdict.FITS:
        return decider.why
    open_checks = [finding.check for finding in findings if finding.outcome is Outcome.UNKNOWN]
    rest = f" Not known, but soft: {', '.join(open_checks)}." if open_checks else ""
    if decider.loss <= 0:
        return f"Every hard check holds and nothing else costs much.{rest}"
    more = minds(verdict, findings) - 1
    others = f" Mind {more} more that cost less." if more else ""
    return f"Mind: {decider.why}{others} Every hard check holds and nothing else costs much.{rest}"


def minds(verdict: Verdict | None, findings: Sequence[Finding]) -> int:
    """Return how many small losses stand under a "fits": each is something to do or to live with."""
    return sum(finding.loss > 0 for finding in findings) if verdict == Verdict.FITS else 0
