import type { CuttingProblem, Metal, Piece, Shear, Stock } from '@stripwright/nesting';
import { roundMillimetres, ticksDown, ticksUp } from '../length/ticks.js';
import { keepRule } from './keep-rule.js';
import type { OffcutLine, SheetLine, Shop } from './order.js';
import type { Blank, SizedOrder } from './strips.js';

/**
 * The order as the planner takes it: ticks and coins, ids that are the order's
 * names. Blanks are already rounded up; stock and the shear's reach round down,
 * and what every cut takes, what edges lose and what the shear can hold round up.
 */
export function orderToProblem({ order, blanks }: SizedOrder): CuttingProblem {
  const { shop } = order;
  const down = (millimetres: number) => ticksDown(millimetres, shop.rule.mark);
  const keep = keepRule(shop);
  // Where all is of one metal, nothing is said of it.
  const isMixed = [...order.sheets, ...order.offcuts].some(({ own }) => own !== undefined);
  const shopMetal = isMixed ? named(shop) : {};
  const metalOf = ({ own }: SheetLine | OffcutLine): Metal =>
    own === undefined ? shopMetal : named({ thickness: shop.thickness, ...own });
  return {
    pieces: blanks.map((blank) => ({ ...pieceOf(blank), ...shopMetal })),
    stock: [
      ...order.sheets.map((sheet) => ({ ...sheetOf(sheet, down), ...metalOf(sheet) })),
      ...order.offcuts.map((offcut) => ({ ...offcutOf(offcut, down), ...metalOf(offcut) })),
    ],
    shear: shearOf(shop),
    // Offcuts of other metals are not cut, so that no rule is needed for them.
    ...(keep === undefined ? {} : { keep: [{ ...keep, ...shopMetal }] }),
  };
}

/** A metal by its name and its thickness in millimetres. */
function named({ metal, thickness }: Pick<Shop, 'metal' | 'thickness'>): Metal {
  const millimetres = thickness === undefined ? undefined : roundMillimetres(thickness);
  return {
    metal: metal.name,
    ...(millimetres === undefined ? {} : { thickness: millimetres }),
  };
}

type Rounding = (millimetres: number) => number;

function pieceOf({ name, length, width, quantity, mayTurn, rolled, spares }: Blank): Piece {
  return {
    id: name,
    length,
    width,
    quantity,
    mayTurn,
    ...(rolled === undefined ? {} : { rolling: rolled }),
    ...(spares === undefined ? {} : { spares }),
  };
}

function sheetOf(sheet: SheetLine, down: Rounding): Stock {
  const { name, size, price, onHand, canBuy, packSize } = sheet;
  return {
    kind: 'sheet',
    id: name,
    length: down(size.length),
    width: down(size.width),
    price,
    onHand,
    canBuy,
    ...(packSize === undefined ? {} : { packSize }),
    ...bookAndRolling(sheet),
  };
}

function offcutOf(offcut: OffcutLine, down: Rounding): Stock {
  const { name, size } = offcut;
  return {
    kind: 'offcut',
    id: name,
    length: down(size.length),
    width: down(size.width),
    ...bookAndRolling(offcut),
  };
}

function bookAndRolling({ bookValue, rolled }: SheetLine | OffcutLine) {
  return {
    ...(bookValue === undefined ? {} : { bookValue }),
    ...(rolled === undefined ? {} : { rolling: rolled }),
  };
}

function shearOf({ shear, rule }: Shop): Shear {
  const up = (millimetres: number) => ticksUp(millimetres, rule.mark);
  const { firstCut, longestCut, narrowestStrip, kerf, edgeTrim, stages } = shear;
  return {
    firstCut,
    ...(longestCut === undefined ? {} : { longestCut: ticksDown(longestCut, rule.mark) }),
    ...(narrowestStrip === undefined ? {} : { narrowestStrip: up(narrowestStrip) }),
    ...(kerf === undefined ? {} : { kerf: up(kerf) }),
    ...(edgeTrim === undefined ? {} : { trim: up(edgeTrim) }),
    ...(stages === undefined ? {} : { stages }),
  };
}
