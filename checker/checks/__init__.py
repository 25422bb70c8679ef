"""What a check is written with: exercises and questions, what they are given, numbers in words. Imports nothing else of ours."""
