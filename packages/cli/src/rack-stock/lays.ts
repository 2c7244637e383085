import type { Piece, Rolling, Shear, Stock } from '@stripwright/nesting';

/** A rectangle in ticks. */
export interface Box {
  readonly length: number;
  readonly width: number;
}

/** The ways a piece may lie on metal that is rolled so, or of which nobody knows how. */
export function laysOf(piece: Piece, rolled: Rolling | undefined): readonly Box[] {
  const { length, width, rolling, mayTurn } = piece;
  const asRolled = rolling === undefined || rolling === rolled;
  const turned = rolling === undefined || (rolled !== undefined && rolling !== rolled);
  return [
    ...(asRolled ? [{ length, width }] : []),
    ...(turned && mayTurn && length !== width ? [{ length: width, width: length }] : []),
  ];
}

/** What can be cut up of a stock: all of an offcut, a sheet within its trim; undefined for nothing. */
export function usableBox(stock: Stock, { trim = 0, longestCut }: Shear): Box | undefined {
  const { length, width } = stock;
  if (stock.kind === 'offcut' || trim === 0) return { length, width };
  const inner = { length: length - 2 * trim, width: width - 2 * trim };
  // The ends are trimmed first.
  if (longestCut !== undefined && Math.max(inner.length, width) > longestCut) return undefined;
  return Math.min(inner.length, inner.width) > 0 ? inner : undefined;
}

/** Whether the shear can get one piece, as it lies, out of a box. */
export function canHold(box: Box, lay: Box, shear: Shear): boolean {
  const endwise = box.length - lay.length;
  const sidewise = box.width - lay.width;
  if (endwise < 0 || sidewise < 0) return false;
  if (endwise > 0 && !canPart(lay.length, endwise, shear)) return false;
  if (sidewise > 0 && !canPart(lay.width, sidewise, shear)) return false;
  // Whichever way the first cuts must run: a stage may pass without one.
  const { longestCut: reach = Number.POSITIVE_INFINITY } = shear;
  const alongFirst =
    (sidewise === 0 || box.length <= reach) && (endwise === 0 || lay.width <= reach);
  const acrossFirst =
    (endwise === 0 || box.width <= reach) && (sidewise === 0 || lay.length <= reach);
  return alongFirst || acrossFirst;
}

/** Neither what is cut off nor what remains is too narrow for the shear to hold. */
function canPart(extent: number, rest: number, { kerf = 0, narrowestStrip = 0 }: Shear): boolean {
  return extent >= narrowestStrip && (rest <= kerf || rest - kerf >= narrowestStrip);
}
