"""`checker see`: what a member's own function does, as a number and as a picture, before anybody judges it."""
