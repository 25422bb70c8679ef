"""The sounds of unit 06."""
