/** A rectangle of metal, with the stage of the cut that freed it (0 before the first). */
export interface BenchMetal {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
  readonly stage: number;
}

/** A straight line across the bench. */
export interface Line {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/**
 * The rectangles that lie on the bench. None overlaps another, so those that
 * start and end at the same two places one way lie in a row the other way; rows
 * are kept in order, so that the rectangle a cut divides is found by bisection.
 */
export interface Bench {
  /** The rectangle that a level line divides from edge to edge, or an upright one does. */
  dividedBy(line: Line): BenchMetal | undefined;
  /** Takes one rectangle away and lays down others within it. */
  replace(metal: BenchMetal, parts: readonly BenchMetal[]): void;
  all(): readonly BenchMetal[];
}

export function benchWith(first: BenchMetal): Bench {
  const columns = rows((metal) => [metal.x, metal.x + metal.length, metal.y, metal.width]);
  const bands = rows((metal) => [metal.y, metal.y + metal.width, metal.x, metal.length]);
  columns.add(first);
  bands.add(first);
  return {
    dividedBy: ({ x1, y1, x2, y2 }) =>
      y1 === y2 ? columns.around(x1, x2, y1) : bands.around(y1, y2, x1),
    replace: (metal, parts) => {
      columns.remove(metal);
      bands.remove(metal);
      for (const part of parts) {
        columns.add(part);
        bands.add(part);
      }
    },
    all: () => columns.all(),
  };
}

/** Where a rectangle starts and ends one way, and starts and how far it goes the other way. */
type Spans = readonly [from: number, to: number, start: number, extent: number];

function rows(spans: (metal: BenchMetal) => Spans) {
  const rowsByEnds = new Map<string, BenchMetal[]>();
  /** How many of a row start before a place. */
  const before = (row: readonly BenchMetal[], place: number): number => {
    let low = 0;
    let high = row.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (spans(row[middle])[2] < place) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return {
    add(metal: BenchMetal): void {
      const [from, to, start] = spans(metal);
      const key = `${from} ${to}`;
      const row = rowsByEnds.get(key);
      if (row === undefined) rowsByEnds.set(key, [metal]);
      else row.splice(before(row, start), 0, metal);
    },
    remove(metal: BenchMetal): void {
      const [from, to, start] = spans(metal);
      const row = rowsByEnds.get(`${from} ${to}`);
      if (row !== undefined) row.splice(before(row, start), 1);
    },
    around(from: number, to: number, place: number): BenchMetal | undefined {
      const row = rowsByEnds.get(`${from} ${to}`);
      if (row === undefined) return undefined;
      const index = before(row, place) - 1;
      if (index < 0) return undefined;
      const metal = row[index];
      const [, , start, extent] = spans(metal);
      return start < place && place < start + extent ? metal : undefined;
    },
    all: (): readonly BenchMetal[] => [...rowsByEnds.values()].flat(),
  };
}
