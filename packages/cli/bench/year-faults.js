/** Orders that make a year. */
const WHOLE_YEAR = 60;

/**
 * What must not be after a year with the rack.
 *
 * Nothing is said of fewer orders than make a year. Each order is planned in a limited time, so that
 * one may cost a sheet more than another day, and what was saved by the rack in a few orders is less
 * than that sheet.
 * @param years of the same orders: the first with the rack, the last without
 * @returns a line for each fault
 */
export function faultsOf(years) {
  const withRack = years[0].steps;
  const without = years.at(-1).steps;
  if (withRack.length < WHOLE_YEAR) return [];
  const faults = [];
  if (withRack.at(-1).money > without.at(-1).money)
    faults.push('the year with the rack cost more than the one without');
  if (isGrowing(withRack.map(({ offcuts }) => offcuts)))
    faults.push('the rack has not stopped growing');
  return faults;
}

/**
 * One order may leave many offcuts that the next ones use up, so that single days say little. A rack
 * that grows without end is larger on most days of the last half than on any of the first.
 */
function isGrowing(counts) {
  const half = Math.ceil(counts.length / 2);
  const later = counts.slice(half).sort((one, other) => one - other);
  return later[Math.floor(later.length / 2)] > Math.max(...counts.slice(0, half));
}
