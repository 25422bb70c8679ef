"""The half of the checker that touches submitted code. It imports nothing from the judging half."""
