"""An instructor's run: many members marked, their marks kept, and those that a person has set."""
