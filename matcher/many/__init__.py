"""One old motor against many offers, or many against many, by the very rules that judge one pair.

No rule has a second copy for speed. Each check declares the facts that it reads; candidates alike in those
are judged once, and the answers are spread back with index arrays.
"""

from matcher.many.columns import Pile
from matcher.many.pairs import best_pairs
from matcher.many.ranking import Ranking, rank_pile

__all__ = ["Pile", "Ranking", "best_pairs", "rank_pile"]
