"""Where the bundled program starts."""

from matcher.command import main

main()
