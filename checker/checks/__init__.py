"""What a check is written with: exercises, questions, what they are given, numbers in words. It imports nothing of ours."""
