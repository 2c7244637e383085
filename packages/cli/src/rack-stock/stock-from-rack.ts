import type { CuttingProblem, KeepRule, Metal, Stock } from '@stripwright/nesting';
import type { Fault } from '../faults/fault.js';
import { roundMillimetres, ticksDown } from '../length/ticks.js';
import { printMoney } from '../money.js';
import { rackWorth } from '../order/keep-rule.js';
import type { Shop } from '../order/order.js';
import type { RackStock } from '../rack/rack.js';
import { chooseCandidates } from './candidates.js';
import { idOnRack } from './id-on-rack.js';
import { rackKeepRule } from './rack-keep-rule.js';
import type { RackView } from './rack-view.js';
import { type Pile, sheetsOfLines } from './sheets-of-lines.js';

/** A problem with what the rack has for it. */
export interface ProblemWithRack {
  readonly problem: CuttingProblem;
  readonly used: UseOfRack;
  /** What the order says that the rack contradicts; not to be planned then. */
  readonly faults: readonly Fault[];
}

/** What a plan says of the rack that it was made from. */
export interface UseOfRack {
  readonly id: string;
  readonly revision: number;
  /** How many on the rack can hold a blank, without sheets of sizes that the order names. */
  readonly fitting: number;
  /** How many of them the planner was given. */
  readonly considered: number;
  /** How many would fit, but only one of rack and order tells how thick they are. */
  readonly unsureThickness: number;
  /** Under which mark a stock of the problem lies on the rack, and where, by its id. */
  readonly onRack: ReadonlyMap<string, { readonly mark: string; readonly place: string }>;
}

/** More marks than a planner can reckon with; metal of such a size is passed over. */
const LONGEST_TICKS = 200_000;

/**
 * Adds to a problem what a rack has for it: offcuts and sheets of the metal and the
 * thickness that the cutters are made of. What is of unknown thickness goes with an
 * order that tells none, and only with that, as an order's own stock does. Where the
 * order has no rule for keeping offcuts, the rack's holds.
 */
export function withStockFromRack(
  ordered: CuttingProblem,
  shop: Pick<Shop, 'metal' | 'thickness' | 'rule' | 'currency'>,
  view: RackView,
): ProblemWithRack {
  const { mark } = shop.rule;
  const { metal, thickness } = shop;
  const wanted = thickness === undefined ? undefined : roundMillimetres(thickness);
  const label: Metal = labelOf(ordered);
  const keep =
    ordered.keep?.[0] ??
    rackKeepRule(
      view.keepRules,
      { metal: metal.name, ...(wanted === undefined ? {} : { thickness: wanted }) },
      mark,
    );
  const asStock = (onRack: RackStock) => ({ onRack, stock: stockOf(onRack, label, mark, keep) });
  const isOfThickness = (onRack: RackStock) => onRack.thickness === wanted;

  const piles = view.sheets.filter(isOfThickness).map(asStock).filter(isPile);
  const lined = sheetsOfLines(
    ordered.stock,
    piles.map(({ onRack, stock }) => ({ onRack, sheet: stock })),
  );
  const problem: CuttingProblem = {
    ...ordered,
    stock: lined.stock.map((stock) => withBookValue(stock, label, keep)),
    ...(keep === undefined ? {} : { keep: [{ ...keep, ...label }] }),
  };
  const offered = [
    ...view.offcuts.filter(isOfThickness).map(asStock),
    ...lined.others.map(({ onRack, sheet }) => ({ onRack, stock: sheet })),
  ].filter(({ stock }) => isReckonable(stock));
  const choice = chooseCandidates(
    problem,
    offered.map(({ stock }) => stock),
  );
  const chosen = choice.chosen.flatMap((place) => offered[place] ?? []);
  const unsure = [...view.offcuts, ...view.sheets.filter(({ count, promised }) => count > promised)]
    .filter((onRack) => (onRack.thickness === undefined) !== (wanted === undefined))
    .map((onRack) => asStock(onRack).stock)
    .filter(isReckonable);
  const places = [
    ...[...lined.ofLines].map(([id, onRack]) => [id, onRack] as const),
    ...chosen.map(({ onRack }) => [idOnRack(onRack.mark), onRack] as const),
  ];
  return {
    problem: { ...problem, stock: [...problem.stock, ...chosen.map(({ stock }) => stock)] },
    used: {
      id: view.id,
      revision: view.revision,
      fitting: choice.fitting,
      considered: chosen.length,
      unsureThickness: chooseCandidates(problem, unsure, 0).fitting,
      onRack: new Map(
        places.map(([id, { mark: written, place }]) => [id, { mark: written, place }]),
      ),
    },
    faults: [
      ...lined.faults,
      ...(ordered.keep === undefined ? cheapSheets(problem, shop.currency) : []),
      ...namesLikeTheRack(ordered.stock, chosen, sheetCount(ordered)),
    ],
  };
}

/** How a problem names the metal of its pieces; empty where all is of one. */
function labelOf({ pieces: [piece] }: CuttingProblem): Metal {
  return {
    ...(piece?.metal === undefined ? {} : { metal: piece.metal }),
    ...(piece?.thickness === undefined ? {} : { thickness: piece.thickness }),
  };
}

function stockOf(onRack: RackStock, label: Metal, mark: number, keep?: KeepRule): Stock {
  const { kind, rolled, bookValue, count, promised } = onRack;
  const common = {
    id: idOnRack(onRack.mark),
    length: ticksDown(onRack.length, mark),
    width: ticksDown(onRack.width, mark),
    ...(rolled === undefined ? {} : { rolling: rolled }),
    ...label,
    ...(bookValue === undefined ? {} : { bookValue }),
  };
  const stock: Stock =
    kind === 'offcut'
      ? { kind: 'offcut', ...common }
      : { kind: 'sheet', ...common, price: 0, onHand: count - promised, canBuy: 0 };
  return withBookValue(stock, label, keep);
}

function isPile(entry: {
  readonly onRack: RackStock;
  readonly stock: Stock;
}): entry is { readonly onRack: RackStock; readonly stock: Pile['sheet'] } {
  return entry.stock.kind === 'sheet';
}

/** A stock may not stand in the books for less than it would be kept for. */
function withBookValue<Kind extends Stock>(stock: Kind, label: Metal, keep?: KeepRule): Kind {
  const isOfPieces = stock.metal === label.metal && stock.thickness === label.thickness;
  if (stock.bookValue === undefined || keep === undefined || !isOfPieces) return stock;
  const worth = rackWorth(stock.length, stock.width, keep);
  return { ...stock, bookValue: Math.max(stock.bookValue, worth) };
}

function isReckonable({ length, width }: Stock): boolean {
  return Math.min(length, width) >= 1 && Math.max(length, width) <= LONGEST_TICKS;
}

/** A shop would gain by cutting up sheets that the rack's rule makes worth more than they cost. */
function cheapSheets({ stock, keep: [keep] = [] }: CuttingProblem, currency: string) {
  if (keep === undefined) return [];
  return stock.flatMap((sheet, index): readonly Fault[] => {
    if (sheet.kind !== 'sheet' || sheet.canBuy === 0) return [];
    if (sheet.metal !== keep.metal || sheet.thickness !== keep.thickness) return [];
    const worth = rackWorth(sheet.length, sheet.width, keep);
    if (worth <= sheet.price) return [];
    const expected = `at least ${printMoney(worth, currency)}, what the rack's rule for keeping offcuts makes a whole one worth; lower that, or give "keep offcuts from" under shop`;
    return [{ complaint: { code: 'disagrees', expected }, path: ['sheets', index, 'price'] }];
  });
}

const sheetCount = ({ stock }: CuttingProblem): number =>
  stock.filter(({ kind }) => kind === 'sheet').length;

/** Stock of the order's own that is called as one of the rack would be. */
function namesLikeTheRack(
  own: readonly Stock[],
  chosen: readonly { readonly stock: Stock }[],
  sheets: number,
): readonly Fault[] {
  const taken = new Set(chosen.map(({ stock }) => stock.id));
  return own.flatMap(({ id }, index): readonly Fault[] => {
    if (!taken.has(id)) return [];
    const path = index < sheets ? ['sheets', index] : ['offcuts', index - sheets];
    const expected = 'another name: the report calls metal from the rack so';
    return [{ complaint: { code: 'disagrees', expected }, path: [...path, 'name'] }];
  });
}
