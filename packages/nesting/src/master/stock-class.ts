import type { Box, BoxLay } from '../pattern/box.js';
import type { KeepValue } from '../pattern/keep-value.js';
import type { Limits } from '../pattern/limits.js';
import { mayBeFreed } from '../pattern/may-be-freed.js';
import type { CuttingProblem, Piece, Rolling, Stock } from '../problem.js';

/** A source of equal pieces of stock at one price. */
export interface Supply {
  /** The id of the sheet or offcut in the problem. */
  readonly stock: string;
  /** How many there are; `Infinity` where any number can be bought. */
  readonly count: number;
  /** How many must be paid for; above 0 only where a search has branched on it. */
  readonly least: number;
  /** They come in packs of so many. */
  readonly unit: number;
  /** Coins for each: the price of one that is bought, the book value of one from the shop. */
  readonly price: number;
  /** True where it has to be bought. */
  readonly bought: boolean;
  /** Coins that one is worth that was bought with a pack and is not cut. */
  readonly leftOver: number;
  /**
   * What using one takes from the shop, in thousandths of the largest sheet. An
   * offcut counts half of its area, so that among plans of equal cost the rack is
   * emptied before whole sheets are opened.
   */
  readonly charge: number;
}

/**
 * Stock of one size on which the same pieces may lie: patterns for it are
 * interchangeable, and its supplies taken in order cost least.
 */
export interface StockClass {
  readonly box: Box;
  /** Those of the shop first, then those to buy; the cheapest first. */
  readonly supplies: readonly Supply[];
}

/**
 * Sorts the stock into classes. Stock with nothing in supply, or whose edges the
 * shear cannot trim, is left out.
 */
export function stockClasses(
  problem: CuttingProblem,
  limits: Limits,
  keep: KeepValue,
): readonly StockClass[] {
  const largest = Math.max(...problem.stock.map((stock) => stock.length * stock.width));
  const classes = new Map<string, { box: Box; supplies: Supply[] }>();
  for (const stock of problem.stock) {
    const box = boxOf(stock, problem, limits);
    if (box === undefined) continue;
    const lays = box.lays.map((lay) => `${lay.piece}${lay.turned ? 'x' : ''}`);
    const key = [box.length, box.width, ...lays].join(' ');
    const entry = classes.get(key) ?? { box, supplies: [] };
    classes.set(key, entry);
    const share = (stock.length * stock.width * 1000) / largest;
    entry.supplies.push(...suppliesOf(stock, share, keep(stock.length, stock.width)));
  }
  return [...classes.values()]
    .map(({ box, supplies }) => ({ box, supplies: supplies.filter(({ count }) => count > 0) }))
    .flatMap(({ box, supplies }) =>
      takenInOrder(supplies).map((supplies) => ({ box, supplies: inOrder(supplies) })),
    )
    .filter((entry) => entry.supplies.length > 0);
}

function inOrder(supplies: readonly Supply[]): readonly Supply[] {
  return [...supplies].sort(
    (a, b) => Number(a.bought) - Number(b.bought) || a.price - b.price || a.charge - b.charge,
  );
}

/**
 * Parts the supplies of one size where taking them in order, the shop first, would
 * not always cost least: where stock in the shop stands in the books at more than
 * another costs to buy, or whole packs are paid for beside others.
 */
function takenInOrder(supplies: readonly Supply[]): readonly (readonly Supply[])[] {
  const shop = supplies.filter(({ bought }) => !bought);
  const dealers = supplies.filter(({ bought }) => bought);
  const single = dealers.length <= 1 || dealers.every(({ unit }) => unit === 1);
  const cheapest = dealers.every(({ stock, unit, price, leftOver }) =>
    // One more of a pack that is paid for costs what it would be worth left over.
    shop.every((own) => own.stock === stock || own.price <= (unit > 1 ? leftOver : price)),
  );
  if (single && cheapest) return [supplies];
  const names = new Set(dealers.map(({ stock }) => stock));
  return [
    shop.filter(({ stock }) => !names.has(stock)),
    ...[...names].map((name) => supplies.filter(({ stock }) => stock === name)),
  ];
}

function suppliesOf(stock: Stock, share: number, whole: number): readonly Supply[] {
  const shop = { stock: stock.id, least: 0, unit: 1, bought: false, leftOver: 0 } as const;
  const price = stock.bookValue ?? whole;
  if (stock.kind === 'offcut') {
    return [{ ...shop, count: 1, price, charge: Math.max(1, Math.round(share / 2)) }];
  }
  const charge = Math.max(1, Math.round(share));
  const unit = stock.packSize ?? 1;
  const count = stock.canBuy === 'any' ? Number.POSITIVE_INFINITY : stock.canBuy;
  return [
    { ...shop, count: stock.onHand, price, charge },
    {
      ...shop,
      count: Math.floor(count / unit) * unit,
      unit,
      price: stock.price,
      bought: true,
      leftOver: unit > 1 ? whole : 0,
      charge,
    },
  ];
}

/**
 * The stock within its trimmed edges; undefined where they cannot be trimmed, leave nothing, or
 * hold no piece that the machine could cut free.
 */
function boxOf(stock: Stock, problem: CuttingProblem, limits: Limits): Box | undefined {
  const trim = stock.kind === 'sheet' ? (problem.shear.trim ?? 0) : 0;
  const [length, width] = [stock.length - 2 * trim, stock.width - 2 * trim];
  if (length < 1 || width < 1) return undefined;
  if (trim > 0 && (stock.width > limits.longestCut || length > limits.longestCut)) return undefined;
  const { firstCut } = problem.shear;
  const gross = { length: length + limits.kerf, width: width + limits.kerf };
  const lays = problem.pieces.flatMap((piece, index) =>
    laysOf(piece, index, stock.rolling, limits.kerf),
  );
  const fitting = lays.filter(
    (lay) =>
      lay.length <= gross.length && lay.width <= gross.width && mayBeFreed(lay, gross, limits),
  );
  if (fitting.length === 0) return undefined;
  return {
    ...gross,
    firstCuts: firstCut === 'either' ? ['along', 'across'] : [firstCut],
    lays: fitting,
  };
}

function laysOf(
  piece: Piece,
  index: number,
  rolled: Rolling | undefined,
  kerf: number,
): readonly BoxLay[] {
  const [length, width] = [piece.length + kerf, piece.width + kerf];
  const straight = { piece: index, turned: false, length, width };
  const turned = { piece: index, turned: true, length: width, width: length };
  const asRolled = piece.rolling === undefined || piece.rolling === rolled;
  const againstIt = piece.rolling === undefined || (rolled !== undefined && !asRolled);
  const lays = [...(asRolled ? [straight] : []), ...(piece.mayTurn && againstIt ? [turned] : [])];
  return length === width ? lays.slice(0, 1) : lays;
}
