"""`python -m assistant` is `counterhand`."""

from assistant.cli import main

main()
