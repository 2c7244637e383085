import type { Cut, Layout } from './plan.js';
import type { CuttingProblem, Stock } from './problem.js';

/** A rectangle of metal, where it lies on the stock. Ticks. */
export interface CutRectangle {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/**
 * How a stock comes apart: each cut divides the rectangle it is made in. Walked
 * from the root down, the near part before the far one, the cuts can be made in
 * the order in which they come up.
 */
export type CuttingNode =
  /** A rectangle that is a piece: its index among the pieces of the layout. */
  | { readonly kind: 'piece'; readonly index: number }
  /** A rectangle that is left over: its index among the remnants of the layout. */
  | { readonly kind: 'remnant'; readonly index: number }
  | CutNode;

/** A rectangle that a cut divides. */
export interface CutNode {
  readonly kind: 'cut';
  /** Its index among the cuts of the layout. */
  readonly index: number;
  /** What is divided. */
  readonly of: CutRectangle;
  /** What lies nearer the origin; absent where it is a trimmed edge. */
  readonly near?: CuttingNode;
  /** What lies beyond; absent where it is a trimmed edge, or where the kerf takes all of it. */
  readonly far?: CuttingNode;
}

/** Cuts that do not come out as the pieces and remnants of their layout. */
export class CuttingTreeError extends Error {
  override readonly name = 'CuttingTreeError';
}

/**
 * The cutting tree of a layout, derived from its cuts. Its leaves are exactly
 * the pieces and the remnants of the layout.
 * @throws CuttingTreeError where the layout is none of a plan that holds, naming
 *   the cut or the rectangle that does not fit
 */
export function cuttingTree(problem: CuttingProblem, layout: Layout): CuttingNode {
  const stock = problem.stock.find(({ id }) => id === layout.stock);
  if (stock === undefined) {
    throw new CuttingTreeError(`'${layout.stock}' is no stock of this problem`);
  }
  const { kerf = 0 } = problem.shear;
  const root = growing({ x: 0, y: 0, length: stock.length, width: stock.width });
  layout.cuts.forEach((cut, index) => {
    divide(nodeAt(root, cut, index), cut, index, kerf, stock);
  });
  return finished(root, leavesOf(layout));
}

/** A node while cuts are still being made. */
interface Growing {
  readonly of: CutRectangle;
  cut: { readonly index: number; readonly line: Cut } | undefined;
  near: Growing | undefined;
  far: Growing | undefined;
}

function growing(of: CutRectangle): Growing {
  return { of, cut: undefined, near: undefined, far: undefined };
}

/** The rectangle on the bench in which a cut starts. */
function nodeAt(root: Growing, cut: Cut, index: number): Growing {
  let node: Growing | undefined = root;
  while (node?.cut !== undefined) {
    const line: Cut = node.cut.line;
    const beyond: boolean = line.y1 === line.y2 ? cut.y1 >= line.y1 : cut.x1 >= line.x1;
    node = beyond ? node.far : node.near;
  }
  if (node === undefined)
    throw new CuttingTreeError(`${name(cut, index)} lies in metal that is gone`);
  return node;
}

function divide(node: Growing, cut: Cut, index: number, kerf: number, stock: Stock): void {
  const { x, y, length, width } = node.of;
  const level = cut.y1 === cut.y2;
  const fits = level
    ? cut.x1 === x && cut.x2 === x + length && cut.y1 >= y && cut.y1 < y + width
    : cut.x1 === cut.x2 &&
      cut.y1 === y &&
      cut.y2 === y + width &&
      cut.x1 >= x &&
      cut.x1 < x + length;
  if (!fits) {
    throw new CuttingTreeError(
      `${name(cut, index)} does not divide ${place(node.of)} from edge to edge`,
    );
  }
  const near = level ? cut.y1 - y : cut.x1 - x;
  const far = (level ? width : length) - near - kerf;
  const nearPart = level ? { x, y, length, width: near } : { x, y, length: near, width };
  const farPart = level
    ? { x, y: cut.y1 + kerf, length, width: far }
    : { x: cut.x1 + kerf, y, length: far, width };
  node.cut = { index, line: cut };
  // What a trim takes off is at the edge that it is closer to, and no part of the layout.
  const edge = level ? 2 * cut.y1 < stock.width : 2 * cut.x1 < stock.length;
  const nearIsEdge = cut.stage === 0 && edge;
  const farIsEdge = cut.stage === 0 && !edge;
  if (near > 0 && !nearIsEdge) node.near = growing(nearPart);
  if (far > 0 && !farIsEdge) node.far = growing(farPart);
}

type Leaf = Exclude<CuttingNode, CutNode>;

/** The pieces and remnants by their places. */
function leavesOf({ pieces, remnants }: Layout): Map<string, Leaf> {
  const leaves = new Map<string, Leaf>();
  pieces.forEach((piece, index) => {
    leaves.set(place(piece), { kind: 'piece', index });
  });
  remnants.forEach((remnant, index) => {
    leaves.set(place(remnant), { kind: 'remnant', index });
  });
  if (leaves.size < pieces.length + remnants.length) {
    throw new CuttingTreeError('two pieces or remnants lie in one place');
  }
  return leaves;
}

/** The tree as data; every leaf is taken once. Iterative, since trees can be deep. */
function finished(root: Growing, leaves: Map<string, Leaf>): CuttingNode {
  const done = new Map<Growing, CuttingNode>();
  const walk: Growing[] = [root];
  const order: Growing[] = [];
  for (let node = walk.pop(); node !== undefined; node = walk.pop()) {
    order.push(node);
    for (const part of [node.near, node.far]) if (part !== undefined) walk.push(part);
  }
  for (const node of order.reverse()) done.set(node, asData(node, done, leaves));
  const [odd] = leaves.keys();
  if (odd !== undefined) throw new CuttingTreeError(`${odd} is listed, but no cut frees it`);
  return asFound(done, root);
}

function asData(
  node: Growing,
  done: ReadonlyMap<Growing, CuttingNode>,
  leaves: Map<string, Leaf>,
): CuttingNode {
  if (node.cut !== undefined) {
    return {
      kind: 'cut',
      index: node.cut.index,
      of: node.of,
      ...(node.near === undefined ? {} : { near: asFound(done, node.near) }),
      ...(node.far === undefined ? {} : { far: asFound(done, node.far) }),
    };
  }
  const key = place(node.of);
  const leaf = leaves.get(key);
  if (leaf === undefined) {
    throw new CuttingTreeError(`${key} is left by the cuts, but is no piece or remnant`);
  }
  leaves.delete(key);
  return leaf;
}

function asFound(done: ReadonlyMap<Growing, CuttingNode>, node: Growing): CuttingNode {
  const found = done.get(node);
  if (found === undefined) throw new Error('a part of a cutting tree was not finished');
  return found;
}

function name({ x1, y1, x2, y2 }: Cut, index: number): string {
  return `cut ${index + 1} (${x1}, ${y1}) to (${x2}, ${y2})`;
}

function place({ x, y, length, width }: CutRectangle): string {
  return `${length} x ${width} at (${x}, ${y})`;
}
