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

/** Room for the rounding of sums of lengths; far finer than a shear's mark. */
const SLACK = 0.01;

/**
 * Makes sure that everything lies on the stock and that the first-stage cuts are parallel to an
 * edge and to each other.
 *
 * @throws {CutMapError} naming the first place that is wrong, with what was got
 */
export function checkMap({ stock, pieces, remnants, cuts }: CutMap): void {
  positive('stock.length', stock.length);
  positive('stock.width', stock.width);
  for (const [kind, rectangles] of Object.entries({ pieces, remnants })) {
    for (const [index, one] of rectangles.entries()) {
      const path = `${kind}[${index}]`;
      positive(`${path}.length`, one.length);
      positive(`${path}.width`, one.width);
      within(`${path}.x`, one.x, stock.length - one.length);
      within(`${path}.y`, one.y, stock.width - one.width);
    }
  }
  for (const [index, cut] of cuts.entries()) {
    within(`cuts[${index}].x1`, cut.x1, stock.length);
    within(`cuts[${index}].x2`, cut.x2, stock.length);
    within(`cuts[${index}].y1`, cut.y1, stock.width);
    within(`cuts[${index}].y2`, cut.y2, stock.width);
  }
  const runs = cuts.flatMap((cut, index) => (cut.stage === 1 ? [{ index, runs: run(cut) }] : []));
  for (const { index, runs: way } of runs) {
    if (way === 'askew') {
      throw new CutMapError(`cuts[${index}]`, 'must run along an edge of the stock; it is askew');
    }
    if (way !== runs[0]?.runs) {
      throw new CutMapError(
        `cuts[${index}]`,
        `must run along ${runs[0]?.runs}, as the other first-stage cuts do; it runs along ${way}`,
      );
    }
  }
}

const run = ({ x1, y1, x2, y2 }: CutMap['cuts'][number]): 'x' | 'y' | 'askew' =>
  y1 === y2 ? 'x' : x1 === x2 ? 'y' : 'askew';

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
