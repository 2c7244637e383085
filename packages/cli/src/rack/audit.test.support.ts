import Database from 'better-sqlite3';

/**
 * What is wrong with a rack's file, found by reading its tables without the code that
 * writes them: SQLite's own checks, counts and promises against the ledger, and
 * bookings that are not wholly there.
 */
export function auditRack(path: string): readonly string[] {
  const connection = new Database(path, { fileMustExist: true, timeout: 60_000 });
  try {
    return QUESTIONS.flatMap(([what, sql]) => {
      const rows = connection.prepare(sql).all();
      return rows.map((row) => `${what}: ${JSON.stringify(row)}`);
    });
  } finally {
    connection.close();
  }
}

/** Each finds nothing in a rack that is as it should be. */
const QUESTIONS: readonly (readonly [string, string])[] = [
  ['integrity', "SELECT * FROM pragma_integrity_check() WHERE integrity_check <> 'ok'"],
  ['foreign key', 'SELECT * FROM pragma_foreign_key_check()'],
  [
    'count is not the sum of its changes',
    `SELECT mark, count, total(change) AS changes FROM stock LEFT JOIN event
       ON event.stock = stock.number GROUP BY stock.number HAVING count <> changes`,
  ],
  [
    'promised is not the sum of its changes',
    `SELECT mark, promised, total(promised_change) AS changes FROM stock LEFT JOIN event
       ON event.stock = stock.number GROUP BY stock.number HAVING promised <> changes`,
  ],
  [
    'promised is not the sum of promises',
    `SELECT mark, promised, total(promise.count) AS promises FROM stock LEFT JOIN promise
       ON promise.stock = stock.number GROUP BY stock.number HAVING promised <> promises`,
  ],
  [
    'offcut cut twice',
    `SELECT mark, count(*) AS times FROM event JOIN stock ON stock.number = event.stock
       JOIN booking ON booking.number = event.booking
       WHERE kind = 'offcut' AND deed = 'cut' AND undone_at IS NULL
       GROUP BY stock.number HAVING times > 1`,
  ],
  [
    'layout booked too often',
    `SELECT job.number, layout, sum(times) AS times FROM booked_layout
       JOIN booking ON booking.number = booking JOIN job ON job.number = job
       WHERE undone_at IS NULL GROUP BY job.number, layout
       HAVING sum(times) > json_extract(layouts, '$[' || layout || ']')`,
  ],
  [
    'booking without layouts',
    'SELECT number FROM booking WHERE number NOT IN (SELECT booking FROM booked_layout)',
  ],
  [
    'booking undone in part',
    `SELECT booking.number FROM booking JOIN event ON event.booking = booking.number
       WHERE undone_at IS NOT NULL GROUP BY booking.number, event.stock HAVING sum(change) <> 0`,
  ],
  [
    'booking that stands with something undone',
    `SELECT booking FROM event JOIN booking ON booking.number = booking
       WHERE undone_at IS NULL AND deed = 'undone'`,
  ],
  // Each stock that the plans of the tests cut leaves one offcut.
  [
    'booking that did not keep what it left',
    `SELECT booking.number FROM booking WHERE
       (SELECT sum(times) FROM booked_layout WHERE booking = booking.number) <>
       (SELECT count(*) FROM event WHERE booking = booking.number AND deed = 'kept')`,
  ],
  [
    'booking that did not take what it cut',
    `SELECT booking.number FROM booking WHERE
       (SELECT sum(times) FROM booked_layout WHERE booking = booking.number) <>
       (SELECT ifnull(-sum(change), 0) FROM event WHERE booking = booking.number AND deed = 'cut')`,
  ],
];
