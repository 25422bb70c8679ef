"""What is wrong with a page, collected while the site is built and told all at once."""


class Fault(ValueError):
    """One sentence for the author: what is wrong, and what to do."""
