/** An upright rectangle. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

interface Node extends Box {
  readonly first: number;
  /** The two halves, or none for a single box. */
  readonly halves: readonly [Node, Node] | undefined;
}

/** Told of a pair of boxes, by their indices, the lower one first. */
type Visit = (first: number, second: number) => void;

/**
 * Tells `visit` of every pair of boxes that touch or overlap. Boxes next to each other in the list should lie next to each other on
 * the plane, as the segments of a path do: the list is halved again and again,
 * and halves that lie apart are never looked into.
 */
export function overlappingPairs(boxes: readonly Box[], visit: Visit): void {
  if (boxes.length > 0) {
    within(treeOf(boxes, 0, boxes.length), visit);
  }
}

function treeOf(boxes: readonly Box[], first: number, end: number): Node {
  if (end - first === 1) {
    const { left = NaN, right = NaN, bottom = NaN, top = NaN } = boxes[first] ?? {};
    return { left, right, bottom, top, first, halves: undefined };
  }
  const middle = (first + end) >> 1;
  const [a, b] = [treeOf(boxes, first, middle), treeOf(boxes, middle, end)];
  return {
    left: Math.min(a.left, b.left),
    right: Math.max(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
    top: Math.max(a.top, b.top),
    first,
    halves: [a, b],
  };
}

function within({ halves }: Node, visit: Visit): void {
  if (halves !== undefined) {
    within(halves[0], visit);
    within(halves[1], visit);
    between(halves[0], halves[1], visit);
  }
}

/** All boxes of `a` come before those of `b` in the list. */
function between(a: Node, b: Node, visit: Visit): void {
  if (a.left > b.right || b.left > a.right || a.bottom > b.top || b.bottom > a.top) {
    return;
  }
  if (a.halves === undefined && b.halves === undefined) {
    visit(a.first, b.first);
  } else if (b.halves === undefined || (a.halves !== undefined && span(a) >= span(b))) {
    for (const half of a.halves ?? []) {
      between(half, b, visit);
    }
  } else {
    between(a, b.halves[0], visit);
    between(a, b.halves[1], visit);
  }
}

function span({ left, right, bottom, top }: Box): number {
  return right - left + top - bottom;
}
