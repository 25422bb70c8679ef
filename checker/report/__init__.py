"""Marks to read: as text for a terminal, as pages for each member and for the class."""
