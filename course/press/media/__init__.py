"""Pictures and sounds: made once, kept until their code changes, and handed out with a label."""
