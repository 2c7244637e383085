import type { Cut, CuttingPlan, CuttingProblem, Layout, Stock } from '@stripwright/nesting';
import { foodWarning } from '@stripwright/strip-geometry';
import { roundMillimetres, ticksToMillimetres, ticksUp } from '../length/ticks.js';
import { amountOf } from '../money.js';
import type { Shop } from '../order/order.js';
import type { Blank, SizedOrder } from '../order/strips.js';
import { isKept } from './kept-offcut.js';
import {
  type PlanFile,
  type PlanFileBlank,
  type PlanFileLayout,
  SCHEMA_VERSION,
} from './plan-file.js';
import { type Bench, stripEntry } from './strip-entry.js';

/** A plan as its file: ticks as millimetres, coins as decimals, and the strips to bend. */
export function toPlanFile(
  { order, blanks }: SizedOrder,
  problem: CuttingProblem,
  plan: CuttingPlan,
): PlanFile {
  const { rule, currency, keepFrom } = order.shop;
  const long = (ticks: number) => ticksToMillimetres(ticks, rule.mark);
  const up = (millimetres: number) => long(ticksUp(millimetres, rule.mark));
  const least = keepFrom && { length: up(keepFrom.length), width: up(keepFrom.width) };
  const { firstCut, longestCut } = problem.shear;
  return {
    schemaVersion: SCHEMA_VERSION,
    order: {
      name: order.name,
      units: rule.units,
      smallestMark: rule.mark,
      metal: metalEntry(order.shop),
      currency,
      ...(least === undefined ? {} : { keepFrom: least }),
    },
    shear: { firstCut, ...(longestCut === undefined ? {} : { longestCut: long(longestCut) }) },
    stock: problem.stock.map((stock) => stockEntry(stock, long)),
    blanks: blanks.map((blank) => blankEntry(blank, order.shop)),
    layouts: plan.layouts.map((layout) => layoutEntry(layout, problem, long, least)),
    buy: plan.buy.map(({ stock, count, cost }) => ({ stock, count, cost: amountOf(cost) })),
    cost: amountOf(plan.cost),
    bound: { cost: amountOf(plan.bound.cost), proven: plan.bound.proven },
    effort: { ...plan.effort },
  };
}

type InMillimetres = (ticks: number) => number;

function metalEntry({ metal, thickness, bendRule }: Shop): NonNullable<PlanFile['order']['metal']> {
  const warning = foodWarning(metal);
  return {
    name: metal.name,
    ...(thickness === undefined ? {} : { thickness: roundMillimetres(thickness) }),
    bendRule: bendRule.name,
    ...(warning === undefined ? {} : { foodWarning: warning }),
  };
}

function stockEntry(stock: Stock, long: InMillimetres): PlanFile['stock'][number] {
  const { id } = stock;
  const size = { length: long(stock.length), width: long(stock.width) };
  if (stock.kind === 'offcut') return { id, kind: 'offcut', ...size };
  const { onHand, canBuy } = stock;
  return { id, kind: 'sheet', ...size, price: amountOf(stock.price), onHand, canBuy };
}

/** A blank as its file has it: millimetres, and the strip of a cutter. */
export function blankEntry(blank: Blank, bench: Bench): PlanFileBlank {
  const { mark } = bench.rule;
  const { name, quantity, mayTurn, cutter } = blank;
  return {
    id: name,
    length: ticksToMillimetres(blank.length, mark),
    width: ticksToMillimetres(blank.width, mark),
    quantity,
    mayTurn,
    ...(cutter === undefined ? {} : { strip: stripEntry(cutter, bench) }),
  };
}

function layoutEntry(
  layout: Layout,
  problem: CuttingProblem,
  long: InMillimetres,
  keepFrom: PlanFile['order']['keepFrom'],
): PlanFileLayout {
  const stock = problem.stock.find(({ id }) => id === layout.stock);
  if (stock === undefined) {
    throw new Error(`The plan cuts the stock "${layout.stock}", which the problem does not have.`);
  }
  return {
    stock: {
      id: stock.id,
      kind: stock.kind,
      length: long(stock.length),
      width: long(stock.width),
    },
    count: layout.count,
    pieces: layout.pieces.map(({ piece, x, y, length, width, turned }) => ({
      blank: piece,
      x: long(x),
      y: long(y),
      length: long(length),
      width: long(width),
      turned,
    })),
    cuts: layout.cuts.map((cut) => cutEntry(cut, long)),
    remnants: layout.remnants.map((remnant) => {
      const length = long(remnant.length);
      const width = long(remnant.width);
      const keep = isKept({ length, width }, keepFrom);
      return { x: long(remnant.x), y: long(remnant.y), length, width, keep };
    }),
  };
}

function cutEntry({ stage, x1, y1, x2, y2 }: Cut, long: InMillimetres) {
  return { stage, x1: long(x1), y1: long(y1), x2: long(x2), y2: long(y2) };
}
