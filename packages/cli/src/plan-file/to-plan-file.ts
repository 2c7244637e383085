import type {
  Cut,
  CuttingPlan,
  CuttingProblem,
  KeepRule,
  Layout,
  Piece,
  Shear,
  Stock,
} from '@stripwright/nesting';
import { foodWarning } from '@stripwright/strip-geometry';
import { roundMillimetres, ticksToMillimetres } from '../length/ticks.js';
import { amountOf } from '../money.js';
import type { Shop } from '../order/order.js';
import type { Blank, SizedOrder } from '../order/strips.js';
import type { UseOfRack } from '../rack-stock/stock-from-rack.js';
import {
  type PlanFile,
  type PlanFileBlank,
  type PlanFileLayout,
  SCHEMA_VERSION,
} from './plan-file.js';
import { type Bench, stripEntry } from './strip-entry.js';

/**
 * A plan as its file: ticks as millimetres, coins as decimals, and the strips to bend.
 * @param rack the one that the plan was made from
 */
export function toPlanFile(
  { order, blanks }: SizedOrder,
  problem: CuttingProblem,
  plan: CuttingPlan,
  rack?: UseOfRack,
): PlanFile {
  const { rule, currency } = order.shop;
  const long = (ticks: number) => ticksToMillimetres(ticks, rule.mark);
  const { keep, weights } = problem;
  return {
    schemaVersion: SCHEMA_VERSION,
    order: {
      name: order.name,
      units: rule.units,
      smallestMark: rule.mark,
      metal: metalEntry(order.shop),
      currency,
    },
    shear: shearEntry(problem.shear, long),
    ...(rack === undefined ? {} : { rack: rackEntry(rack) }),
    stock: problem.stock.map((stock) => ({
      ...stockEntry(stock, long),
      ...onRackEntry(rack?.onRack.get(stock.id)),
    })),
    blanks: blanks.map((blank, index) => ({
      ...blankEntry(blank, order.shop),
      ...wishesOf(problem.pieces[index]),
    })),
    layouts: plan.layouts.map((layout) => layoutEntry(layout, problem, long)),
    ...(keep === undefined ? {} : { keep: keep.map((entry) => keepEntry(entry, long)) }),
    ...(weights === undefined ? {} : { weights: { ...weights } }),
    buy: plan.buy.map(({ stock, count, cost }) => ({ stock, count, cost: amountOf(cost) })),
    spares: plan.spares.map(({ piece, count }) => ({ blank: piece, count })),
    cost: amountOf(plan.cost),
    parts: {
      bought: amountOf(plan.parts.bought),
      fromShop: amountOf(plan.parts.fromShop),
      kept: amountOf(plan.parts.kept),
    },
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

/** Fields that are there, without those that are not. */
function given<Fields extends object>(
  fields: Fields,
): { [Name in keyof Fields]?: Exclude<Fields[Name], undefined> } {
  const entries = Object.entries(fields).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as {
    [Name in keyof Fields]?: Exclude<Fields[Name], undefined>;
  };
}

const ifAny = (value: number | undefined, read: (value: number) => number): number | undefined =>
  value === undefined ? undefined : read(value);

function shearEntry(shear: Shear, long: InMillimetres): PlanFile['shear'] {
  const { firstCut, longestCut, narrowestStrip, kerf, trim, stages } = shear;
  return {
    firstCut,
    ...given({
      longestCut: ifAny(longestCut, long),
      narrowestStrip: ifAny(narrowestStrip, long),
      kerf: ifAny(kerf, long),
      trim: ifAny(trim, long),
      stages,
    }),
  };
}

function stockEntry(stock: Stock, long: InMillimetres): PlanFile['stock'][number] {
  const { id, metal, thickness, rolling } = stock;
  const size = { length: long(stock.length), width: long(stock.width) };
  const bookValue = ifAny(stock.bookValue, amountOf);
  const more = given({ bookValue, rolling, metal, thickness });
  if (stock.kind === 'offcut') return { id, kind: 'offcut', ...size, ...more };
  const { onHand, canBuy, packSize } = stock;
  const price = amountOf(stock.price);
  return { id, kind: 'sheet', ...size, price, onHand, canBuy, ...given({ packSize }), ...more };
}

function rackEntry(used: UseOfRack): NonNullable<PlanFile['rack']> {
  const { id, revision, fitting, considered, unsureThickness } = used;
  return { id, revision, fitting, considered, unsureThickness };
}

function onRackEntry(there: { readonly mark: string; readonly place: string } | undefined) {
  if (there === undefined) return {};
  const { mark, place } = there;
  return place === '' ? { mark } : { mark, place };
}

/** What is asked of a piece besides its size. */
function wishesOf(piece: Piece | undefined) {
  if (piece === undefined) return {};
  const { rolling, spares, metal, thickness } = piece;
  return given({ rolling, spares, metal, thickness });
}

function keepEntry(rule: KeepRule, long: InMillimetres): NonNullable<PlanFile['keep']>[number] {
  const { metal, thickness, millions } = rule;
  return {
    leastLength: long(rule.leastLength),
    leastWidth: long(rule.leastWidth),
    worth: amountOf(rule.coinsPerMillion),
    ...given({ millions, trouble: ifAny(rule.trouble, amountOf), metal, thickness }),
  };
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

function layoutEntry(layout: Layout, problem: CuttingProblem, long: InMillimetres): PlanFileLayout {
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
    remnants: layout.remnants.map(({ x, y, length, width, keep, value }) => ({
      x: long(x),
      y: long(y),
      length: long(length),
      width: long(width),
      keep,
      value: amountOf(value),
    })),
  };
}

function cutEntry({ stage, x1, y1, x2, y2 }: Cut, long: InMillimetres) {
  return { stage, x1: long(x1), y1: long(y1), x2: long(x2), y2: long(y2) };
}
