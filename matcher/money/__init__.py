"""Judgements weighed: the chance of a fit, what it costs, what to ask, and in which order to try."""
