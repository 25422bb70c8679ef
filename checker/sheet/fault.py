"""What is wrong with a builder's file."""


class SheetFault(Exception):
    """A sheet cannot be made of a file. The text is one sentence: file, line, what, what to do."""
