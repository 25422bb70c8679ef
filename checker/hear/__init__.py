"""`checker hear`: the sound of a member's own receiver, beside the reference's."""
