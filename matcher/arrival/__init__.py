"""After the delivery: measure again, judge again, keep it or send it back in time."""
