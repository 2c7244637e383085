/** A stretch of numbers, both ends included. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** Lengths that differ by no more count as equal here: far below the geometry's tolerance. */
const SLACK = 1e-9;

/** Halvings of a range of lengths, to below the slack. */
const HALVINGS = 60;

/** Where a length may be cut. */
export interface CutPlaces {
  /** The places that are taken wherever they give as few parts. */
  readonly preferred: readonly Interval[];
  /** All places, the preferred ones among them. */
  readonly all: readonly Interval[];
}

/**
 * Divides a length into as few parts as can be, each at most `longest`, by cuts
 * at the given places. Among those divisions it takes those with the most cuts
 * at preferred places, then the one whose longest part is shortest, then the
 * one whose shortest part is longest.
 *
 * The places that the cut after so many parts can have, if every part is at
 * least so long and at most so long and so many cuts are elsewhere, are
 * intervals too: those of the cut before it, moved and widened by the part,
 * where they overlap the given ones. The length of the parts is closed in on by
 * halving.
 *
 * @returns the cuts, ascending, or undefined if no number of parts up to `mostParts` will do.
 */
export function evenCuts(
  length: number,
  longest: number,
  where: CutPlaces,
  mostParts: number,
): number[] | undefined {
  const fewest = Math.max(1, Math.ceil((length - SLACK) / longest));
  const places = { preferred: merged(where.preferred), all: merged(where.all) };
  for (let parts = fewest; parts <= mostParts; parts++) {
    const elsewhere = leastElsewhere(length, parts, places, longest);
    if (elsewhere === undefined) {
      continue;
    }
    const cuts = (least: number, most: number) =>
      cutsWithin({ length, parts, places, elsewhere, least, most });
    const even = length / parts;
    const most = closest(even, longest, (value) => cuts(0, value) !== undefined);
    const least = closest(even, 0, (value) => cuts(value, most) !== undefined);
    return cuts(least, most);
  }
  return undefined;
}

/** How many cuts at least cannot be at preferred places, or undefined if so many parts will not do. */
function leastElsewhere(
  length: number,
  parts: number,
  places: CutPlaces,
  most: number,
): number | undefined {
  const works = (elsewhere: number) =>
    cutsWithin({ length, parts, places, elsewhere, least: 0, most }) !== undefined;
  if (!works(parts - 1)) {
    return undefined;
  }
  let [fails, enough] = [-1, parts - 1];
  while (enough - fails > 1) {
    const middle = Math.floor((fails + enough) / 2);
    if (works(middle)) {
      enough = middle;
    } else {
      fails = middle;
    }
  }
  return enough;
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

interface Division {
  readonly length: number;
  readonly parts: number;
  readonly places: CutPlaces;
  /** How many cuts may be at places that are not preferred. */
  readonly elsewhere: number;
  /** The shortest and the longest part there may be. */
  readonly least: number;
  readonly most: number;
}

/** The cuts of such a division, as near to even ones as it allows. */
function cutsWithin(division: Division): number[] | undefined {
  const { length, parts, places, elsewhere, least, most } = division;
  const reached = reachedPlaces(division);
  const cuts: number[] = [];
  let next = length;
  let left = elsewhere;
  for (let part = parts - 1; part >= 0; part--) {
    const before = [{ from: next - most - SLACK, to: next - least + SLACK }];
    const possible = overlaps(reached[part]?.[left] ?? [], before);
    const place = nearest(possible, (part * length) / parts);
    if (place === undefined) {
      return undefined;
    }
    cuts.unshift(place);
    next = place;
    const isPreferred = overlaps(places.preferred, [{ from: place, to: place }]).length > 0;
    left -= isPreferred || part === 0 ? 0 : 1;
  }
  // The first is the start itself.
  return cuts.slice(1);
}

/** Where the cut after so many parts can be, with up to so many cuts elsewhere, itself included. */
function reachedPlaces({ parts, places, elsewhere, least, most }: Division): Interval[][][] {
  const start = Array.from({ length: elsewhere + 1 }, (): Interval[] => [{ from: 0, to: 0 }]);
  const reached: Interval[][][] = [start];
  for (let part = 1; part < parts; part++) {
    const moved = (reached[part - 1] ?? []).map((before) => widened(before, least, most));
    reached.push(
      moved.map((own, used) =>
        merged([
          ...overlaps(own, places.preferred),
          ...overlaps(moved[used - 1] ?? [], places.all),
        ]),
      ),
    );
  }
  return reached;
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

/** What both lists share, each ascending and apart; touching within the slack counts. */
function overlaps(some: readonly Interval[], others: readonly Interval[]): Interval[] {
  const shared: Interval[] = [];
  let [one, two] = [0, 0];
  for (let [a, b] = [some[0], others[0]]; a !== undefined && b !== undefined; ) {
    const [from, to] = [Math.max(a.from, b.from), Math.min(a.to, b.to)];
    if (from <= to) {
      shared.push({ from, to });
    } else if (from - to <= SLACK) {
      shared.push({ from: (from + to) / 2, to: (from + to) / 2 });
    }
    if (a.to < b.to) {
      a = some[++one];
    } else {
      b = others[++two];
    }
  }
  return shared;
}

function nearest(places: readonly Interval[], wanted: number): number | undefined {
  const candidates = places.map(({ from, to }) => Math.min(Math.max(wanted, from), to));
  return candidates.reduce<number | undefined>(
    (best, place) =>
      best === undefined || Math.abs(place - wanted) < Math.abs(best - wanted) ? place : best,
    undefined,
  );
}
