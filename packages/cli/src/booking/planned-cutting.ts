import type { Layout, Stock } from '@stripwright/nesting';
import { ticksToMillimetres } from '../length/ticks.js';
import type { Rolled } from '../order/order.js';
import { USUAL_METAL } from '../order/thickness.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import type { PlanOnFile } from '../plan-file/read-plan-file.js';
import type {
  PlannedCutting,
  PlannedKeep,
  PlannedStock,
  RackMetal,
  RackSize,
} from '../rack/rack.js';
import { acrossOf } from '../rack-stock/sheets-of-lines.js';
import { planDigest } from './plan-digest.js';

/**
 * A plan as a rack takes it: what it cuts, what it keeps, and how much it leaves as
 * scrap, which is the area of a stock without its pieces and its kept offcuts; kerf
 * and trimmed edges are in it.
 *
 * @param onFile a plan that was verified
 */
export function toPlannedCutting({ file, problem, plan }: PlanOnFile): PlannedCutting {
  const { order, rack } = file;
  const mark = order.smallestMark;
  const squareMark = mark * mark;
  const metals = problem.stock.map((stock) => metalOf(stock, order));
  const places = new Map(problem.stock.map(({ id }, index) => [id, index]));
  const timesCut = problem.stock.map(({ id }) =>
    plan.layouts.reduce((sum, { stock, count }) => sum + (stock === id ? count : 0), 0),
  );
  return {
    plan: planDigest(file),
    name: order.name,
    ...(rack === undefined ? {} : { rackId: rack.id }),
    smallestMark: mark,
    stock: problem.stock.map((stock, index): PlannedStock => {
      const written = file.stock[index]?.mark;
      const onHand = stock.kind === 'offcut' ? 1 : stock.onHand;
      const used = Math.min(timesCut[index] ?? 0, onHand);
      return {
        id: stock.id,
        kind: stock.kind === 'offcut' ? 'offcut' : 'sheets',
        ...sizeOf(stock, stock.rolling, metals[index] ?? metalOf(stock, order), mark),
        ...(written === undefined ? {} : { mark: written }),
        fromRack: written === undefined ? 0 : used,
        beside: written === undefined ? used : 0,
        bought: plan.buy.reduce(
          (sum, { stock: id, count }) => sum + (id === stock.id ? count : 0),
          0,
        ),
        ...(stock.kind === 'sheet' && stock.canBuy !== 0 ? { price: stock.price } : {}),
      };
    }),
    layouts: plan.layouts.map((layout) => {
      const index = places.get(layout.stock) ?? -1;
      const stock = problem.stock[index];
      const metal = metals[index];
      if (stock === undefined || metal === undefined) {
        throw new Error(`The plan cuts the stock "${layout.stock}", which it does not list.`);
      }
      return {
        stock: index,
        times: layout.count,
        keeps: keepsOf(layout, stock, metal, mark),
        scrap: scrapTicks(layout, stock) * squareMark,
      };
    }),
  };
}

/** What a stock is of, in full: a plan says nothing of it where all is of one. */
function metalOf({ metal, thickness }: Stock, { metal: shop }: PlanFile['order']): RackMetal {
  if (metal === undefined) {
    return { metal: shop?.name ?? USUAL_METAL, ...thick(shop?.thickness) };
  }
  return { metal, ...thick(thickness) };
}

const thick = (thickness: number | undefined) => (thickness === undefined ? {} : { thickness });

interface Extent {
  readonly length: number;
  readonly width: number;
}

/** With the longer side as its length; how it is rolled is seen along it. */
function sizeOf(
  { length, width }: Extent,
  rolled: Rolled | undefined,
  metal: RackMetal,
  mark: number,
): RackSize {
  const isTurned = width > length;
  const seen = isTurned && rolled !== undefined ? acrossOf(rolled) : rolled;
  return {
    length: ticksToMillimetres(Math.max(length, width), mark),
    width: ticksToMillimetres(Math.min(length, width), mark),
    ...metal,
    ...(seen === undefined ? {} : { rolled: seen }),
  };
}

function keepsOf(
  { remnants }: Layout,
  { rolling }: Stock,
  metal: RackMetal,
  mark: number,
): readonly PlannedKeep[] {
  return remnants
    .filter(({ keep }) => keep)
    .map((remnant) => ({ ...sizeOf(remnant, rolling, metal, mark), value: remnant.value }));
}

const areaOf = ({ length, width }: Extent): number => length * width;

const total = (rectangles: readonly Extent[]): number =>
  rectangles.reduce((sum, rectangle) => sum + areaOf(rectangle), 0);

function scrapTicks({ pieces, remnants }: Layout, stock: Stock): number {
  return areaOf(stock) - total(pieces) - total(remnants.filter(({ keep }) => keep));
}
