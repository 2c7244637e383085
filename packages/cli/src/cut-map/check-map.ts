import type { CutMap } from './cut-map.js';

/** A cut map that contradicts itself, so that no one could cut by it. */
export class CutMapError extends Error {
  override readonly name = 'CutMapError';
  constructor(
    /** Where in the map, as `pieces[3].x`. */
    readonly path: string,
    readonly wrong: string,
  ) {
    super(`cut map: ${path} ${wrong}`);
  }
}

/** Room for the rounding of sums of lengths, in millimetres; far finer than a shear's mark. */
const SLACK = 0.01;

/**
 * Makes sure that everything lies on the stock, that each blank has one size, and that the
 * first-stage cuts are parallel to an edge and to each other.
 *
 * @throws {CutMapError} naming the first place that is wrong, with what was got
 */
export function checkMap({ stock, pieces, remnants, cuts }: CutMap): void {
  positive('stock.length', stock.length);
  positive('stock.width', stock.width);
  checkRectangles('pieces', pieces, stock);
  checkRectangles('remnants', remnants, stock);
  checkBlanks(pieces);
  for (const [index, cut] of cuts.entries()) {
    within(`cuts[${index}].x1`, cut.x1, stock.length);
    within(`cuts[${index}].x2`, cut.x2, stock.length);
    within(`cuts[${index}].y1`, cut.y1, stock.width);
    within(`cuts[${index}].y2`, cut.y2, stock.width);
  }
  checkFirstCuts(cuts);
}

function checkRectangles(
  kind: 'pieces' | 'remnants',
  rectangles: CutMap['pieces'] | CutMap['remnants'],
  stock: CutMap['stock'],
): void {
  for (const [index, one] of rectangles.entries()) {
    const path = `${kind}[${index}]`;
    positive(`${path}.length`, one.length);
    positive(`${path}.width`, one.width);
    within(`${path}.x`, one.x, stock.length - one.length);
    within(`${path}.y`, one.y, stock.width - one.width);
  }
}

function checkBlanks(pieces: CutMap['pieces']): void {
  const firsts = new Map<number, CutMap['pieces'][number]>();
  for (const [index, piece] of pieces.entries()) {
    const first = firsts.get(piece.number) ?? piece;
    firsts.set(piece.number, first);
    const same = piece.turned === first.turned;
    const [length, width] = same ? [first.length, first.width] : [first.width, first.length];
    const off = Math.max(Math.abs(piece.length - length), Math.abs(piece.width - width));
    if (off > SLACK) {
      throw new CutMapError(
        `pieces[${index}]`,
        `must be ${length} x ${width} mm, as blank ${piece.number} is elsewhere; ` +
          `got ${piece.length} x ${piece.width}`,
      );
    }
  }
}

function checkFirstCuts(cuts: CutMap['cuts']): void {
  const first = cuts.find((cut) => cut.stage === 1);
  for (const [index, cut] of cuts.entries()) {
    if (cut.stage !== 1 || first === undefined) continue;
    const axis = axisOf(cut);
    if (axis === undefined) {
      throw new CutMapError(
        `cuts[${index}]`,
        `must run along an edge of the stock; ` +
          `got (${cut.x1}, ${cut.y1}) to (${cut.x2}, ${cut.y2})`,
      );
    }
    if (axis !== axisOf(first)) {
      throw new CutMapError(
        `cuts[${index}]`,
        `must run along ${axisOf(first)}, as the first first-stage cut does; got along ${axis}`,
      );
    }
  }
}

const axisOf = ({ x1, y1, x2, y2 }: CutMap['cuts'][number]): 'x' | 'y' | undefined =>
  y1 === y2 ? 'x' : x1 === x2 ? 'y' : undefined;

function positive(path: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new CutMapError(path, `must be more than 0 mm; got ${value}`);
  }
}

function within(path: string, value: number, most: number): void {
  if (!(value >= -SLACK && value <= most + SLACK)) {
    throw new CutMapError(path, `must be from 0 to ${most} mm to lie on the stock; got ${value}`);
  }
}
