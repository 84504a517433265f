"""Run the command as `python -m matcher.command`."""

from matcher.command import main

main()
