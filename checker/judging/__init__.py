"""From an exercise and a seed to a plan, and from a worker's answers to a verdict."""
