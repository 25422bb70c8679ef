"""The sounds of unit 00."""
