/** A stretch of numbers, both ends included. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** Lengths that differ by no more count as equal here: far below the geometry's tolerance. */
const SLACK = 1e-9;

/** Halvings of a range of lengths, to below the slack. */
const HALVINGS = 60;

/**
 * Divides a length into as few parts as can be, each at most `longest`, by cuts
 * that lie in the given intervals; among those divisions it takes the one whose
 * longest part is shortest, then the one whose shortest part is longest.
 *
 * The places that the cut after so many parts can have, if every part is at
 * least so long and at most so long, are intervals too: those of the cut before
 * it, moved and widened by the part, where they overlap the given ones. The
 * length of the parts is closed in on by halving.
 *
 * @returns the cuts, ascending, or undefined if no number of parts up to `mostParts` will do.
 */
export function evenCuts(
  length: number,
  longest: number,
  allowed: readonly Interval[],
  mostParts: number,
): number[] | undefined {
  const fewest = Math.max(1, Math.ceil((length - SLACK) / longest));
  for (let parts = fewest; parts <= mostParts; parts++) {
    const cuts = (least: number, most: number) => cutsWithin(length, parts, allowed, least, most);
    if (cuts(0, longest) === undefined) {
      continue;
    }
    const even = length / parts;
    const most = closest(even, longest, (value) => cuts(0, value) !== undefined);
    const least = closest(even, 0, (value) => cuts(value, most) !== undefined);
    return cuts(least, most);
  }
  return undefined;
}

/** The value nearest to `wanted` for which `works` holds, given that it does for `known`. */
function closest(wanted: number, known: number, works: (value: number) => boolean): number {
  if (works(wanted)) {
    return wanted;
  }
  let [good, bad] = [known, wanted];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (good + bad) / 2;
    if (works(middle)) {
      good = middle;
    } else {
      bad = middle;
    }
  }
  return good;
}

/** Cuts that leave every part between `least` and `most`, as near to even ones as that allows. */
function cutsWithin(
  length: number,
  parts: number,
  allowed: readonly Interval[],
  least: number,
  most: number,
): number[] | undefined {
  const reached: Interval[][] = [[{ from: 0, to: 0 }]];
  for (let part = 1; part < parts; part++) {
    reached.push(overlaps(widened(reached[part - 1] ?? [], least, most), allowed));
  }
  const cuts: number[] = [];
  let next = length;
  for (let part = parts - 1; part >= 0; part--) {
    const before = [{ from: next - most - SLACK, to: next - least + SLACK }];
    const places = overlaps(reached[part] ?? [], before);
    const place = nearest(places, (part * length) / parts);
    if (place === undefined) {
      return undefined;
    }
    cuts.unshift(place);
    next = place;
  }
  // The first is the start itself.
  return cuts.slice(1);
}

function widened(places: readonly Interval[], least: number, most: number): Interval[] {
  return merged(places.map(({ from, to }) => ({ from: from + least, to: to + most })));
}

/** The same numbers in ascending intervals that keep apart. */
function merged(places: readonly Interval[]): Interval[] {
  const sorted = [...places].sort((a, b) => a.from - b.from);
  const result: Interval[] = [];
  for (const place of sorted) {
    const last = result.at(-1);
    if (last !== undefined && place.from <= last.to) {
      result[result.length - 1] = { from: last.from, to: Math.max(last.to, place.to) };
    } else {
      result.push(place);
    }
  }
  return result;
}

/** What both lists share; touching within the slack counts. */
function overlaps(some: readonly Interval[], others: readonly Interval[]): Interval[] {
  return some.flatMap((a) =>
    others.flatMap((b): Interval[] => {
      const [from, to] = [Math.max(a.from, b.from), Math.min(a.to, b.to)];
      if (from <= to) {
        return [{ from, to }];
      }
      return from - to <= SLACK ? [{ from: (from + to) / 2, to: (from + to) / 2 }] : [];
    }),
  );
}

function nearest(places: readonly Interval[], wanted: number): number | undefined {
  const candidates = places.map(({ from, to }) => Math.min(Math.max(wanted, from), to));
  return candidates.reduce<number | undefined>(
    (best, place) =>
      best === undefined || Math.abs(place - wanted) < Math.abs(best - wanted) ? place : best,
    undefined,
  );
}
