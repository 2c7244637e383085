import type { Layout, PlacedPiece } from '../plan.js';
import type { KeepRule, Metal, Piece, Stock } from '../problem.js';
import type { LayoutFault } from './plan-fault.js';
import { inTheRack } from './rack-value.js';

/** Whatever in a layout's numbers is no whole number, or is below the least it can be. */
export function numberFaults(layout: Layout, stock: Stock): readonly LayoutFault[] {
  const faults: LayoutFault[] = [];
  const fault = (message: string) => faults.push({ code: 'not a whole number', message });
  if (!Number.isInteger(layout.count) || layout.count < 1) {
    fault(`count must be a whole number of at least 1; got ${layout.count}`);
  }
  if (stock.kind === 'offcut' && layout.count > 1) {
    fault(`'${stock.id}' is an offcut, so count must be 1; got ${layout.count}`);
  }
  for (const { x, y, length, width } of [...layout.pieces, ...layout.remnants]) {
    const whole = [x, y, length, width].every(Number.isInteger);
    if (whole && x >= 0 && y >= 0 && length > 0 && width > 0) continue;
    fault(`${length} x ${width} at (${x}, ${y}) is no rectangle of whole ticks`);
  }
  layout.cuts.forEach(({ x1, y1, x2, y2 }, i) => {
    if ([x1, y1, x2, y2].every(Number.isInteger)) return;
    fault(`cut ${i + 1} (${x1}, ${y1}) to (${x2}, ${y2}) is not in whole ticks`);
  });
  return faults;
}

/** Pieces of the wrong size or metal, or that lie as they must not. */
export function pieceFaults(
  layout: Layout,
  stock: Stock,
  pieces: ReadonlyMap<string, Piece>,
): readonly LayoutFault[] {
  return layout.pieces.flatMap((placed): readonly LayoutFault[] => {
    const piece = pieces.get(placed.piece);
    if (piece !== undefined) return faultsOf(placed, piece, stock);
    return [{ code: 'unknown piece', message: `'${placed.piece}' is no piece of this problem` }];
  });
}

function faultsOf(placed: PlacedPiece, piece: Piece, stock: Stock): readonly LayoutFault[] {
  const faults: LayoutFault[] = [];
  const [length, width] = placed.turned ? [piece.width, piece.length] : [piece.length, piece.width];
  if (placed.length !== length || placed.width !== width) {
    const message = `'${piece.id}' is ${length} x ${width} as it lies; drawn ${placed.length} x ${placed.width}`;
    faults.push({ code: 'wrong size', message });
  }
  if (placed.turned && !piece.mayTurn) {
    faults.push({ code: 'must not turn', message: `'${piece.id}' lies turned and must not` });
  }
  if (piece.metal !== stock.metal || piece.thickness !== stock.thickness) {
    const message = `'${piece.id}' is of ${inWords(piece)} and lies on '${stock.id}' of ${inWords(stock)}`;
    faults.push({ code: 'other metal', message });
  }
  const rolled = seenAlong(stock, placed.turned);
  if (piece.rolling !== undefined && rolled !== piece.rolling) {
    const message = `'${piece.id}' must be rolled ${piece.rolling} its length; as it lies on '${stock.id}' that is ${rolled ?? 'not known'}`;
    faults.push({ code: 'against the rolling', message });
  }
  return faults;
}

/** The rolling of a stock as seen along the length of a piece on it. */
function seenAlong(stock: Stock, turned: boolean): Stock['rolling'] {
  if (stock.rolling === undefined || !turned) return stock.rolling;
  return stock.rolling === 'along' ? 'across' : 'along';
}

function inWords({ metal, thickness }: Metal): string {
  return `${metal ?? 'no named metal'}, ${thickness ?? 'no stated thickness'}`;
}

/** Remnants that are not kept, or not valued, as the rule says. */
export function remnantFaults(layout: Layout, rule: KeepRule | undefined): readonly LayoutFault[] {
  return layout.remnants.flatMap((remnant): readonly LayoutFault[] => {
    const { x, y, length, width } = remnant;
    const right = inTheRack(rule, length, width);
    if (remnant.keep === right.keep && remnant.value === right.value) return [];
    const found = `${remnant.keep ? 'kept' : 'scrap'} at ${remnant.value}`;
    const message = `remnant ${length} x ${width} at (${x}, ${y}) is ${found}; by the rule ${right.keep ? 'kept' : 'scrap'} at ${right.value}`;
    return [{ code: 'wrong remnant', message }];
  });
}
