"""`python -m checker`, for where the command is not on the path."""
import sys

from .cli import main

sys.exit(main())
