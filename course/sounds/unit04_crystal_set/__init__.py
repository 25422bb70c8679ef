"""The sounds of unit 04."""
