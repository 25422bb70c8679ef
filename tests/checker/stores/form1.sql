-- A marks store of form 1, as `sqlite3 .dump` writes it.
BEGIN TRANSACTION;
CREATE TABLE members (              -- who was marked in a run
            id          INTEGER PRIMARY KEY,
            run         INTEGER NOT NULL,
            name        TEXT NOT NULL,
            problems    TEXT NOT NULL,      -- JSON: sentences about files that could not be read
            verdicts    TEXT NOT NULL,      -- JSON: ids of verdicts, one for each exercise marked
            seal        TEXT NOT NULL,      -- hash of run, name, problems and the seals of those verdicts
            UNIQUE (run, name)
        );
INSERT INTO "members" VALUES(1,1,'Isla Marrow','["notes.txt is not Python; it was left."]','[1]','a6511c5db8f3ec859422bdb1');
CREATE TABLE overrides (            -- marks set by a person; the newest row of a member and exercise holds
            id          INTEGER PRIMARY KEY,
            member      TEXT NOT NULL,
            exercise    TEXT NOT NULL,
            mark        TEXT,               -- exact fraction "n/d"; NULL: the override is withdrawn
            reason      TEXT NOT NULL,
            who         TEXT NOT NULL,
            at          TEXT NOT NULL,      -- UTC, ISO 8601
            seal        TEXT NOT NULL
        );
INSERT INTO "overrides" VALUES(1,'Isla Marrow','unit03_tuned_circuit/resonance','15/2','Right idea, shown on the blackboard.','Wren Dalby','2026-11-25T09:45:29+00:00','edb2df20f34d1b4aa6e4df96');
CREATE TABLE runs (
            id          INTEGER PRIMARY KEY,
            folder      TEXT NOT NULL,
            seed        TEXT NOT NULL,
            started     TEXT NOT NULL,      -- UTC, ISO 8601
            finished    TEXT                -- NULL: still going, or cut short
        );
INSERT INTO "runs" VALUES(1,'autumn','7','2026-11-25T09:45:29+00:00','2026-11-25T09:45:29+00:00');
CREATE TABLE verdicts (             -- each judged once, whoever handed it in and however often it is marked
            id          INTEGER PRIMARY KEY,
            submission  TEXT NOT NULL,      -- hash of the submitted file and of those it uses
            judged_by   TEXT NOT NULL,      -- hash of reference, check and engine
            seed        TEXT NOT NULL,
            verdict     TEXT NOT NULL,      -- JSON; marks are exact fractions
            seal        TEXT NOT NULL,      -- hash of the other columns: a damaged row is found out
            UNIQUE (submission, judged_by, seed)
        );
INSERT INTO "verdicts" VALUES(1,'0000000000000000000000000000000000000000000000000000000000000001','bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb','1','{"exercise":"unit03_tuned_circuit/resonance","kind":"wrong","marks":10,"parts":[{"function":"resonant_frequency","what":"numbers","worth":"10","earned":"1/2"}],"findings":[{"kind":"wrong","function":"resonant_frequency","says":"number 1","inputs":[],"got":"","wanted":"","remark":"","slip":"","line":null}],"printed":"","earned":"1/2"}','27472194e8c03610ca3c0189');
COMMIT;
PRAGMA application_id = 1127371347;
PRAGMA user_version = 1;
