"""The judge's side of the wall: processes to run submissions in, questions to them, and a trial of the wall."""
