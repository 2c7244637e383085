/**
 * The schema of a rack, one step a version: step n turns version n into n + 1. What
 * has been released is never changed; a new step is added below it.
 *
 * Lengths are whole nanometres (millionths of a millimetre, as finely as plan.json
 * writes them), money is whole coins, times are ISO 8601 texts in UTC.
 */
export const MIGRATIONS: readonly string[] = [
  `
  CREATE TABLE rack (
    only INTEGER PRIMARY KEY CHECK (only = 1),
    id TEXT NOT NULL,
    revision INTEGER NOT NULL
  ) STRICT;

  -- What lies there and what did: rows stay when their count is 0, so that no mark is used again.
  CREATE TABLE stock (
    number INTEGER PRIMARY KEY,
    mark TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL CHECK (kind IN ('offcut', 'sheets')),
    name TEXT NOT NULL,
    length INTEGER NOT NULL CHECK (length >= width),
    width INTEGER NOT NULL CHECK (width > 0),
    metal TEXT NOT NULL,
    thickness INTEGER CHECK (thickness > 0),
    rolled TEXT CHECK (rolled IN ('along', 'across')),
    place TEXT NOT NULL,
    origin TEXT NOT NULL,
    added_at TEXT NOT NULL,
    book_value INTEGER CHECK (book_value >= 0),
    count INTEGER NOT NULL CHECK (count >= 0 AND (kind = 'sheets' OR count <= 1)),
    promised INTEGER NOT NULL DEFAULT 0 CHECK (promised BETWEEN 0 AND count)
  ) STRICT;
  CREATE INDEX stock_here ON stock (metal, thickness, width) WHERE count > 0;
  -- Sheets of one size lie under one mark.
  CREATE UNIQUE INDEX sheets_of_a_size
    ON stock (length, width, metal, ifnull(thickness, 0), ifnull(rolled, '')) WHERE kind = 'sheets';

  -- A plan that was held or booked.
  CREATE TABLE job (
    number INTEGER PRIMARY KEY,
    plan TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL,
    since TEXT NOT NULL,
    -- How often each layout is to be cut: a JSON list.
    layouts TEXT NOT NULL,
    -- Whether the sheets bought for it have come to the rack.
    received INTEGER NOT NULL DEFAULT 0 CHECK (received IN (0, 1)),
    let_go INTEGER NOT NULL DEFAULT 0 CHECK (let_go IN (0, 1)),
    times_let_go INTEGER NOT NULL DEFAULT 0
  ) STRICT;
  CREATE TABLE promise (
    job INTEGER NOT NULL REFERENCES job,
    stock INTEGER NOT NULL REFERENCES stock,
    count INTEGER NOT NULL CHECK (count >= 0),
    PRIMARY KEY (job, stock)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE booking (
    number INTEGER PRIMARY KEY,
    job INTEGER NOT NULL REFERENCES job,
    at TEXT NOT NULL,
    scrap_area REAL NOT NULL CHECK (scrap_area >= 0),
    scrap_grams REAL CHECK (scrap_grams >= 0),
    -- Whether nothing was promised to the job before, and how often it had been let go.
    opened INTEGER NOT NULL CHECK (opened IN (0, 1)),
    times_let_go INTEGER NOT NULL,
    undone_at TEXT
  ) STRICT;
  CREATE INDEX bookings_of_a_job ON booking (job);
  CREATE TABLE booked_layout (
    booking INTEGER NOT NULL REFERENCES booking,
    layout INTEGER NOT NULL,
    times INTEGER NOT NULL CHECK (times > 0),
    PRIMARY KEY (booking, layout)
  ) STRICT, WITHOUT ROWID;

  -- The ledger: counts and promises are the sums of its changes.
  CREATE TABLE event (
    number INTEGER PRIMARY KEY,
    at TEXT NOT NULL,
    stock INTEGER NOT NULL REFERENCES stock,
    deed TEXT NOT NULL,
    change INTEGER NOT NULL,
    promised_change INTEGER NOT NULL,
    job INTEGER REFERENCES job,
    booking INTEGER REFERENCES booking,
    note TEXT NOT NULL
  ) STRICT;
  CREATE INDEX events_of_stock ON event (stock);
  CREATE INDEX events_of_a_job ON event (job, stock) WHERE job IS NOT NULL;
  CREATE INDEX events_of_a_booking ON event (booking) WHERE booking IS NOT NULL;
  `,
  `
  -- The shop's rule of what is worth keeping, for each metal; thickness 0 where it is not told.
  CREATE TABLE keep_rule (
    metal TEXT NOT NULL,
    thickness INTEGER NOT NULL CHECK (thickness >= 0),
    least_length INTEGER NOT NULL CHECK (least_length >= least_width),
    least_width INTEGER NOT NULL CHECK (least_width > 0),
    worth INTEGER NOT NULL CHECK (worth >= 0),
    trouble INTEGER NOT NULL CHECK (trouble >= 0),
    PRIMARY KEY (metal, thickness)
  ) STRICT, WITHOUT ROWID;
  `,
];

/** The version that this program reads and writes. */
export const NEWEST_VERSION = MIGRATIONS.length;
