"""Table models over what the engine says; they hold no rule."""
