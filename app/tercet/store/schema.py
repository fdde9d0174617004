"""The store's tables, as numbered steps; each runs in one transaction with its number."""

#: One entry a version; never edit an entry that has been released, add one.
MIGRATIONS: tuple[tuple[str, ...], ...] = (
    (
        "CREATE TABLE setting (name TEXT PRIMARY KEY, value TEXT NOT NULL)",
        # status: run, same run, other sport, refused, passed over, season file
        """CREATE TABLE file (
            sha256 TEXT PRIMARY KEY, name TEXT NOT NULL, folder TEXT NOT NULL,
            size INTEGER NOT NULL, format TEXT NOT NULL, status TEXT NOT NULL,
            problem TEXT NOT NULL, taken_in TEXT NOT NULL,
            put_away INTEGER NOT NULL DEFAULT 0)""",
        """CREATE TABLE run (
            id INTEGER PRIMARY KEY AUTOINCREMENT, sha256 TEXT NOT NULL, part INTEGER NOT NULL,
            start_utc REAL NOT NULL, utc_offset_s INTEGER NOT NULL, day TEXT NOT NULL,
            sport TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, device TEXT NOT NULL,
            format TEXT NOT NULL, records INTEGER NOT NULL, channels TEXT NOT NULL,
            elapsed_s REAL NOT NULL, moving_s REAL NOT NULL, distance_m REAL NOT NULL,
            hr_mean REAL, hr_max REAL, climb_m REAL, fingerprint TEXT NOT NULL,
            stops TEXT NOT NULL, laps TEXT NOT NULL, damage TEXT NOT NULL,
            note TEXT NOT NULL DEFAULT '', effort INTEGER,
            notation TEXT NOT NULL DEFAULT '')""",
        "CREATE INDEX run_start ON run (start_utc)",
        """CREATE TABLE attachment (
            sha256 TEXT NOT NULL, part INTEGER NOT NULL, run_id INTEGER NOT NULL,
            PRIMARY KEY (sha256, part))""",
        """CREATE TABLE stream (
            sha256 TEXT NOT NULL, part INTEGER NOT NULL, name TEXT NOT NULL, data BLOB NOT NULL,
            PRIMARY KEY (sha256, part, name)) WITHOUT ROWID""",
        """CREATE TABLE judgement (
            run_id INTEGER PRIMARY KEY, method INTEGER NOT NULL, threshold_id INTEGER,
            easy_s REAL NOT NULL, moderate_s REAL NOT NULL, hard_s REAL NOT NULL,
            not_running_s REAL NOT NULL, unjudged_s REAL NOT NULL,
            easy_m REAL NOT NULL, moderate_m REAL NOT NULL, hard_m REAL NOT NULL,
            not_running_m REAL NOT NULL, unjudged_m REAL NOT NULL,
            shades BLOB NOT NULL, repetitions TEXT NOT NULL, words TEXT NOT NULL,
            mends TEXT NOT NULL, remarks TEXT NOT NULL)""",
        """CREATE TABLE threshold (
            id INTEGER PRIMARY KEY AUTOINCREMENT, start TEXT NOT NULL,
            lt1_hr REAL, lt2_hr REAL, lt1_speed REAL, lt2_speed REAL, hr_rest REAL, hr_max REAL,
            source TEXT NOT NULL, estimated INTEGER NOT NULL, interval TEXT NOT NULL)""",
        """CREATE TABLE block (
            id INTEGER PRIMARY KEY AUTOINCREMENT, start TEXT NOT NULL, "end" TEXT NOT NULL,
            name TEXT NOT NULL, kind TEXT NOT NULL, easy_target REAL NOT NULL)""",
        """CREATE TABLE race (
            id INTEGER PRIMARY KEY AUTOINCREMENT, day TEXT NOT NULL, name TEXT NOT NULL,
            distance_m REAL)""",
    ),
    (
        # Shares by which a block is judged sum to 1; measure: time or metres; weekly in s or m.
        "ALTER TABLE block ADD COLUMN moderate_target REAL",
        "ALTER TABLE block ADD COLUMN hard_target REAL",
        "ALTER TABLE block ADD COLUMN measure TEXT NOT NULL DEFAULT 'time'",
        "ALTER TABLE block ADD COLUMN weekly REAL",
        # Of the weeks after the first: growth from one to the next, their most [as weekly], every
        # which one is easier and what share of itself it is; the longest run [as weekly].
        "ALTER TABLE block ADD COLUMN growth REAL",
        "ALTER TABLE block ADD COLUMN most REAL",
        "ALTER TABLE block ADD COLUMN easier_every INTEGER",
        "ALTER TABLE block ADD COLUMN easier_share REAL",
        "ALTER TABLE block ADD COLUMN longest REAL",
        "ALTER TABLE race ADD COLUMN goal_s REAL",
        "ALTER TABLE race ADD COLUMN main INTEGER NOT NULL DEFAULT 0",
        # change: step, or linear from the entry before
        "ALTER TABLE threshold ADD COLUMN change TEXT NOT NULL DEFAULT 'step'",
        "ALTER TABLE threshold ADD COLUMN top_speed REAL",
        # The day they were found on, if they are in force for runs before it too.
        "ALTER TABLE threshold ADD COLUMN found TEXT NOT NULL DEFAULT ''",
        "ALTER TABLE judgement ADD COLUMN intervals TEXT NOT NULL DEFAULT ''",
        # Moderate seconds by cause with their speeds (JSON), and seconds by intensity (60 x u4).
        "ALTER TABLE judgement ADD COLUMN causes TEXT NOT NULL DEFAULT ''",
        "ALTER TABLE judgement ADD COLUMN spread BLOB",
        # Whether the runner meant the moderate running of a run, and where about it began.
        "ALTER TABLE run ADD COLUMN meant INTEGER",
        "ALTER TABLE run ADD COLUMN place TEXT NOT NULL DEFAULT ''",
        # A paper run's words as they were typed, where notation says them in plain words; the
        # result that they name if it was a race [s], [m]; and the race known when it was kept,
        # that its race paces are reckoned from [s], [m].
        "ALTER TABLE run ADD COLUMN typed TEXT NOT NULL DEFAULT ''",
        "ALTER TABLE run ADD COLUMN race_s REAL",
        "ALTER TABLE run ADD COLUMN race_m REAL",
        "ALTER TABLE run ADD COLUMN known_s REAL",
        "ALTER TABLE run ADD COLUMN known_m REAL",
        # When note, effort or kind were last said, ISO 8601 UTC; copies are merged by it.
        "ALTER TABLE run ADD COLUMN said_at TEXT NOT NULL DEFAULT ''",
        # A session still to run, in the notation of paper logs.
        """CREATE TABLE planned (
            id INTEGER PRIMARY KEY AUTOINCREMENT, day TEXT NOT NULL,
            place INTEGER NOT NULL DEFAULT 0, notation TEXT NOT NULL,
            note TEXT NOT NULL DEFAULT '')""",
        # The runner's word on a stretch of a run [s from its start]; shade: E, M, H, or X for
        # left out; kind: shade, repetition, belt speed (value in m/s).
        """CREATE TABLE correction (
            id INTEGER PRIMARY KEY AUTOINCREMENT, run_id INTEGER NOT NULL, kind TEXT NOT NULL,
            start_s REAL NOT NULL, end_s REAL NOT NULL, shade TEXT NOT NULL DEFAULT '', value REAL,
            said_at TEXT NOT NULL)""",
        "CREATE INDEX correction_run ON correction (run_id)",
        # What was said about what, by fingerprint, in the copies that were handed over or taken
        # in: tells a copy that is merely older from one that says something else.
        """CREATE TABLE shared (
            what TEXT NOT NULL, hash TEXT NOT NULL, PRIMARY KEY (what, hash)) WITHOUT ROWID""",
        # A step test, field test or test by ventilation as it was typed; rows as JSON.
        """CREATE TABLE test (
            id INTEGER PRIMARY KEY AUTOINCREMENT, day TEXT NOT NULL, kind TEXT NOT NULL,
            rows TEXT NOT NULL, note TEXT NOT NULL DEFAULT '')""",
    ),
    (
        # What its local clock follows: "file", "place Zone/Name", "runner Zone/Name", "said
        # Zone/Name"; empty where it was taken in before this was noted.
        "ALTER TABLE run ADD COLUMN zone_from TEXT NOT NULL DEFAULT ''",
        # What is known of the time of day: "" for the start itself, "day", "am" or "pm" where
        # nobody wrote one.
        "ALTER TABLE run ADD COLUMN clock TEXT NOT NULL DEFAULT ''",
        # Questions about a paper run's words that nobody has answered; those pieces are unjudged.
        "ALTER TABLE run ADD COLUMN asks TEXT NOT NULL DEFAULT ''",
        """UPDATE run SET clock = CASE CAST(start_utc + utc_offset_s AS INTEGER) % 86400
            WHEN 43200 THEN 'day' WHEN 25200 THEN 'am' ELSE 'pm' END
            WHERE format = 'paper'
            AND CAST(start_utc + utc_offset_s AS INTEGER) % 86400 IN (43200, 25200, 64800)""",
        """UPDATE run SET clock = 'day' WHERE format = 'table'
            AND CAST(start_utc + utc_offset_s AS INTEGER) % 86400 = 43200""",
    ),
    (
        # Running power at the two lines, by the runner's own meter [W].
        "ALTER TABLE threshold ADD COLUMN lt1_power REAL",
        "ALTER TABLE threshold ADD COLUMN lt2_power REAL",
    ),
)

#: Key columns of the tables that undo follows.
KEYS: dict[str, tuple[str, ...]] = {
    "setting": ("name",),
    "file": ("sha256",),
    "run": ("id",),
    "attachment": ("sha256", "part"),
    "judgement": ("run_id",),
    "threshold": ("id",),
    "block": ("id",),
    "race": ("id",),
    "planned": ("id",),
    "correction": ("id",),
    "test": ("id",),
    "shared": ("what", "hash"),
}
