"""`python -m checker` is `dryfit`."""

from checker.cli import main

main()
