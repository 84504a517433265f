"""Between facts and a verdict: the pair made ready, what is presumed, answers, words, questions."""
