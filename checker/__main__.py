"""`python -m checker`, for where the command is not on the path."""

import sys

from .cli import main

if __name__ == "__main__":
    sys.exit(main())
