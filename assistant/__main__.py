"""`python -m assistant` is the command `counterhand`."""

from assistant.cli import main

main()
