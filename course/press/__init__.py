"""What turns the lessons into pages: the parts that `hooks.py` hands to MkDocs.

Reading order: `calls` (the `{{ … }}` form), `markdown` (what our Markdown adds), `made` and `sources` (pictures and
sounds, kept until their code changes), `formulas`, `numbers`, `words` (the two vocabularies), `boxes`, `exercise_box`,
`pages` (their order), `palette`, `links`, and `edition`, which holds them together for one build.
"""
