"""The HTML of each thing that a call puts into a page."""
