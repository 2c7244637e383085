import { type Block, beside, layBlock } from '../box-solver/block.js';
import { type Division, divisions } from '../box-solver/division.js';
import { grouped } from '../box-solver/grouped.js';
import type { RasterPoints } from '../box-solver/raster-points.js';
import type { BoxLay } from '../pattern/box.js';
import type { Rolling } from '../problem.js';

/** Columns solved at a time, so few that all of them stay near the processor. */
const BAND = 64;

/**
 * The most that can be cut from every rectangle between the raster points of a
 * box, when trims are free: any rectangle may be taken for a smaller one.
 *
 * One pass, smaller rectangles first. A rectangle holds one piece, or is cut in
 * two across, or in two along (Gilmore and Gomory 1966; Beasley 1985; Cintra,
 * Miyazawa, Wakabayashi and Xavier 2008, EJOR 191, 61-85). Along one direction
 * that is an unbounded knapsack, so one of the two parts need only be one that
 * is itself not best cut in this direction, and the smaller of such parts: each
 * row and column keeps a list of them, which is far shorter than its points.
 */
export class RasterGrid {
  readonly columns: number;
  readonly rows: number;
  readonly #x: Division;
  readonly #y: Division;
  /** The lays for which a cell is the smallest that holds them, by cell. */
  readonly #cells: ReadonlyMap<number, readonly BoxLay[]>;
  /** Rectangles whose cuts are known: the same ones come again and again. */
  readonly #blocks = new Map<number, Block>();
  #values: ArrayLike<number> = [];
  /** By row: cell [j, i] at j * columns + i. */
  readonly #byRow: Float64Array;
  /** The same by column: cell [j, i] at i * rows + j. */
  readonly #byColumn: Float64Array;
  /** Of each row, the points that are worth parting off, and what they are worth. */
  readonly #rowPoint: Uint16Array;
  readonly #rowWorth: Float64Array;
  /** Of each column, the points that are worth parting off, and what they are worth. */
  readonly #columnPoint: Uint16Array;
  readonly #columnWorth: Float64Array;

  constructor(xs: RasterPoints, ys: RasterPoints, lays: readonly BoxLay[]) {
    this.columns = xs.at.length;
    this.rows = ys.at.length;
    this.#x = divisions(xs);
    this.#y = divisions(ys);
    this.#cells = layCells(xs, ys, lays);
    const { columns, rows } = this;
    this.#byRow = new Float64Array(columns * rows);
    this.#byColumn = new Float64Array(columns * rows);
    const halfRows = this.#y.half[rows - 1] + 1;
    const halfColumns = this.#x.half[columns - 1] + 1;
    this.#rowPoint = new Uint16Array(rows * halfColumns);
    this.#rowWorth = new Float64Array(rows * halfColumns);
    this.#columnPoint = new Uint16Array(columns * halfRows);
    this.#columnWorth = new Float64Array(columns * halfRows);
  }

  /** Solves for values of the lays' pieces, each at least 0. */
  solve(values: ArrayLike<number>): void {
    const byRow = this.#byRow;
    const byColumn = this.#byColumn;
    const rowPoint = this.#rowPoint;
    const rowWorth = this.#rowWorth;
    const columnPoint = this.#columnPoint;
    const columnWorth = this.#columnWorth;
    const { columns, rows } = this;
    const halfRows = this.#y.half[rows - 1] + 1;
    const halfColumns = this.#x.half[columns - 1] + 1;
    const { half: halfX, row: rowX, beyond: beyondX } = this.#x;
    const { half: halfY, row: rowY, beyond: beyondY } = this.#y;
    const inRow = new Int32Array(rows);
    const inColumn = new Int32Array(columns);
    this.#values = Float64Array.from(values);
    this.#blocks.clear();
    byRow.fill(0);
    for (const [cell, lays] of this.#cells) {
      for (const { piece } of lays) byRow[cell] = Math.max(byRow[cell], values[piece]);
    }
    for (let from = 1; from < columns; from += BAND) {
      const to = Math.min(columns, from + BAND);
      for (let j = 1; j < rows; j++) {
        const start = j * columns;
        const mostY = halfY[j];
        const divideY = rowY[j];
        const rowList = j * halfColumns;
        let rowEnd = rowList + inRow[j];
        for (let i = from; i < to; i++) {
          let across = byRow[start + i - 1];
          const mostX = halfX[i];
          const divideX = rowX[i];
          for (let n = rowList; n < rowEnd; n++) {
            const point = rowPoint[n];
            if (point > mostX) break;
            const worth = rowWorth[n] + byRow[start + beyondX[divideX + point]];
            if (worth > across) across = worth;
          }
          let along = byRow[start - columns + i];
          const columnList = i * halfRows;
          const column = i * rows;
          const columnEnd = columnList + inColumn[i];
          for (let n = columnList; n < columnEnd; n++) {
            const point = columnPoint[n];
            if (point > mostY) break;
            const worth = columnWorth[n] + byColumn[column + beyondY[divideY + point]];
            if (worth > along) along = worth;
          }
          let best = byRow[start + i];
          if (across > best) best = across;
          if (along > best) best = along;
          byRow[start + i] = best;
          byColumn[column + j] = best;
          if (best > across && i < halfColumns) {
            rowPoint[rowEnd] = i;
            rowWorth[rowEnd] = best;
            rowEnd++;
          }
          if (best > along && j < halfRows) {
            columnPoint[columnEnd] = j;
            columnWorth[columnEnd] = best;
            inColumn[i]++;
          }
        }
        inRow[j] = rowEnd - rowList;
      }
    }
  }

  /**
   * What the rectangle between two points is worth, as last solved.
   * @param column index of a point of the length
   * @param row index of a point of the width
   */
  worth(column: number, row: number): number {
    return this.#byRow[row * this.columns + column];
  }

  /** How that worth is cut, or nothing where it is 0. */
  block(column: number, row: number): Block | undefined {
    const worth = this.worth(column, row);
    if (worth === 0) return undefined;
    const cell = row * this.columns + column;
    const known = this.#blocks.get(cell);
    if (known !== undefined) return known;
    const block = this.#blockOf(column, row, worth);
    this.#blocks.set(cell, block);
    return block;
  }

  #blockOf(column: number, row: number, worth: number): Block {
    let i = column;
    let j = row;
    for (;;) {
      if (this.worth(i - 1, j) === worth) i--;
      else if (this.worth(i, j - 1) === worth) j--;
      else break;
    }
    return this.#layAt(i, j, worth) ?? this.#divided(i, j, worth);
  }

  #layAt(column: number, row: number, worth: number): Block | undefined {
    const cell = this.#cells.get(row * this.columns + column);
    const lay = cell?.find(({ piece }) => this.#values[piece] === worth);
    return lay === undefined ? undefined : layBlock(lay);
  }

  /**
   * The cut that gave the worth is found again rather than remembered; the one nearest
   * the middle, so that long rows are not taken apart piece by piece.
   */
  #divided(column: number, row: number, worth: number): Block {
    const { half: halfX, row: rowX, beyond: beyondX } = this.#x;
    for (let point = halfX[column]; point > 0; point--) {
      const other = beyondX[rowX[column] + point];
      if (this.worth(point, row) + this.worth(other, row) === worth) {
        return together('across', this.block(point, row), this.block(other, row));
      }
    }
    const { half: halfY, row: rowY, beyond: beyondY } = this.#y;
    for (let point = halfY[row]; point > 0; point--) {
      const other = beyondY[rowY[row] + point];
      if (this.worth(column, point) + this.worth(column, other) === worth) {
        return together('along', this.block(column, point), this.block(column, other));
      }
    }
    throw new Error(`no cut explains the worth of the rectangle at ${column}, ${row}`);
  }
}

function together(cuts: Rolling, ...blocks: readonly (Block | undefined)[]): Block {
  return beside(
    cuts,
    blocks.filter((block) => block !== undefined),
  );
}

function layCells(
  xs: RasterPoints,
  ys: RasterPoints,
  lays: readonly BoxLay[],
): ReadonlyMap<number, readonly BoxLay[]> {
  return grouped(
    lays.filter(
      ({ length, width }) => (xs.above[length] ?? -1) >= 0 && (ys.above[width] ?? -1) >= 0,
    ),
    ({ length, width }) => ys.above[width] * xs.at.length + xs.above[length],
  );
}
