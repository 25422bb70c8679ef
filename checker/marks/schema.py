"""The tables of a marks store, as the steps that lead from an empty file to the newest form.

A store's version (`PRAGMA user_version`) is the number of steps it has behind it. Steps are only ever added at the end:
a store that is in use somewhere has taken the ones before. Each step is a few statements.
"""

APPLICATION_ID = 0x43325253  # tells a marks store from any other SQLite file

STEPS = (
    (
        """
        CREATE TABLE verdicts (             -- each judged once, whoever handed it in and however often it is marked
            id          INTEGER PRIMARY KEY,
            submission  TEXT NOT NULL,      -- hash of the submitted file and of those it uses
            judged_by   TEXT NOT NULL,      -- hash of reference, check and engine
            seed        TEXT NOT NULL,
            verdict     TEXT NOT NULL,      -- JSON; marks are exact fractions
            seal        TEXT NOT NULL,      -- hash of the other columns: a damaged row is found out
            UNIQUE (submission, judged_by, seed)
        )
        """,
        """
        CREATE TABLE runs (
            id          INTEGER PRIMARY KEY,
            folder      TEXT NOT NULL,
            seed        TEXT NOT NULL,
            started     TEXT NOT NULL,      -- UTC, ISO 8601
            finished    TEXT                -- NULL: still going, or cut short
        )
        """,
        """
        CREATE TABLE members (              -- who was marked in a run
            id          INTEGER PRIMARY KEY,
            run         INTEGER NOT NULL,
            name        TEXT NOT NULL,
            problems    TEXT NOT NULL,      -- JSON: sentences about the files
            verdicts    TEXT NOT NULL,      -- JSON: for each exercise a verdict's id, or what stands in its place
            seal        TEXT NOT NULL,      -- hash of run, name, problems and the seals of those verdicts, and of identity and notes
            UNIQUE (run, name)
        )
        """,
        """
        CREATE TABLE overrides (            -- marks set by a person; the newest row of a member and exercise holds
            id          INTEGER PRIMARY KEY,
            member      TEXT NOT NULL,      -- identity
            exercise    TEXT NOT NULL,
            mark        TEXT,               -- exact fraction "n/d"; NULL: the override is withdrawn
            reason      TEXT NOT NULL,
            who         TEXT NOT NULL,
            at          TEXT NOT NULL,      -- UTC, ISO 8601
            seal        TEXT NOT NULL
        )
        """,
    ),
    (
        # JSON: class, club, school year, pairs nearly alike; NULL in a run of the first form, which was not told
        "ALTER TABLE runs ADD COLUMN details TEXT",
        # hash of the run's number, seed and details
        "ALTER TABLE runs ADD COLUMN seal TEXT",
    ),
    (
        # who it is, whatever the name looks like; NULL in a run of an earlier form, whose members were told apart by name
        "ALTER TABLE members ADD COLUMN identity TEXT",
    ),
    (
        # JSON: sentences about files that were read all the same; NULL in a run of an earlier form, which has them among the problems
        "ALTER TABLE members ADD COLUMN notes TEXT",
    ),
)
