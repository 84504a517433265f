"""What the trade knows: rated volts, supplies, currents, frames, numbers, and what can stand in for what."""
