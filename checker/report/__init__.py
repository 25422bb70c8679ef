"""Marks as pages to read: one for each member, one for the class."""

from .pages import write_reports

__all__ = ["write_reports"]
