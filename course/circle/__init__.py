"""The Circle: the invented stations, what they send, and the sets that the course plays."""
