/** What of a strip lies on one page, millimetres along it or across it. */
export interface Tile {
  /** From join to join; a tile is drawn on a little past each. */
  readonly from: number;
  readonly to: number;
}

/** What keeps a tile from being as long as the page. */
export interface TileLimits {
  /** The most from join to join, and from the last join to the end. */
  readonly toJoin: number;
  readonly toEnd: number;
  /** Places that are labelled, ascending, and the most of them on one page. */
  readonly labels: readonly number[];
  readonly mostLabels: number;
}

/** A join keeps so far from marks, so that no pair of scissors takes one away. */
const CLEAR = 3;
/** How much shorter a tile may be to find such a place, and the step it is looked for in. */
const SEARCH = 30;
const STEP = 0.5;
/** However dense the labels, every page takes the strip on by this much. */
const LEAST = 5;

/** Divides a strip over pages, each as full as can be, with joins clear of marks where that can be. */
export function tilesOf(
  length: number,
  { toJoin, toEnd, labels, mostLabels }: TileLimits,
): readonly Tile[] {
  const tiles: Tile[] = [];
  let from = 0;
  for (;;) {
    const waiting = labels.filter((label) => label >= from);
    const tooMany = waiting[mostLabels] ?? Number.POSITIVE_INFINITY;
    if (length - from <= toEnd && tooMany === Number.POSITIVE_INFINITY) {
      return [...tiles, { from, to: length }];
    }
    const furthest = Math.min(from + toJoin, Math.max(tooMany - STEP, from + LEAST), length - STEP);
    const to = joinBefore(furthest, Math.max(from + LEAST, furthest - SEARCH), labels);
    tiles.push({ from, to });
    from = to;
  }
}

function joinBefore(furthest: number, nearest: number, labels: readonly number[]): number {
  for (let at = furthest; at >= nearest; at -= STEP) {
    if (labels.every((label) => Math.abs(label - at) >= CLEAR)) return at;
  }
  return furthest;
}

/** Divides the width of a strip evenly over pages side by side, which overlap where there are several. */
export function tilesAcross(width: number, room: number, overlap: number): readonly Tile[] {
  const count = width <= room ? 1 : Math.ceil(width / (room - overlap));
  return Array.from({ length: count }, (_, index) => ({
    from: (width * index) / count,
    to: (width * (index + 1)) / count,
  }));
}
