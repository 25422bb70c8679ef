"""What a reader may answer in numbers, with nothing installed: instances of the exercises' own questions."""
