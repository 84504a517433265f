"""Where the bundled program starts."""

from multiprocessing import freeze_support

from matcher.command import main

if __name__ == "__main__":
    freeze_support()  # the window judges lots in a process of its own; a bundle starts it through here
    main()
