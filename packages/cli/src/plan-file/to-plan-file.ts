import type { Cut, CuttingPlan, CuttingProblem, Layout, Stock } from '@stripwright/nesting';
import {
  type EdgeTreatment,
  foodWarning,
  roundMarks,
  type Seam,
} from '@stripwright/strip-geometry';
import { roundMillimetres, ticksToMillimetres, ticksUp } from '../length/ticks.js';
import { amountOf } from '../money.js';
import type { Shop } from '../order/order.js';
import type { Blank, SizedOrder } from '../order/strips.js';
import { isKept } from './kept-offcut.js';
import {
  type PlanFile,
  type PlanFileBlank,
  type PlanFileLayout,
  type PlanFileStrip,
  SCHEMA_VERSION,
} from './plan-file.js';

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
    blanks: blanks.map((blank) => blankEntry(blank, rule.mark)),
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
export function blankEntry(blank: Blank, mark: number): PlanFileBlank {
  const { name, quantity, mayTurn, cutter } = blank;
  return {
    id: name,
    length: ticksToMillimetres(blank.length, mark),
    width: ticksToMillimetres(blank.width, mark),
    quantity,
    mayTurn,
    ...(cutter === undefined ? {} : { strip: stripEntry(cutter, mark) }),
  };
}

/** The strip as it is marked out: each mark rounded by itself, so that errors do not add up. */
function stripEntry({ family, strip }: NonNullable<Blank['cutter']>, mark: number): PlanFileStrip {
  const onMark = (at: number) => roundMillimetres(roundMarks([at], mark)[0] ?? at);
  return {
    outline: family,
    depth: roundMillimetres(strip.depth),
    hem: roundMillimetres(strip.hem),
    tab: roundMillimetres(strip.tab),
    developed: roundMillimetres(strip.developed),
    edge: edgeEntry(strip.edge),
    seam: seamEntry(strip.seam, strip.length),
    sizeIs: strip.sizeIs,
    bends: strip.bends.map(({ number, at, direction, angle }) => ({
      number,
      at: onMark(at),
      direction,
      angle: roundMillimetres(angle),
    })),
    curves: strip.curves.map(({ from, to, radius, direction, angle }) => ({
      from: onMark(from),
      to: onMark(to),
      radius: roundMillimetres(radius),
      direction,
      angle: roundMillimetres(angle),
    })),
  };
}

function edgeEntry({ name, foldLines, wire }: EdgeTreatment): NonNullable<PlanFileStrip['edge']> {
  return {
    kind: name,
    foldLines: foldLines.map(roundMillimetres),
    ...(wire === 0 ? {} : { wire: roundMillimetres(wire) }),
  };
}

function seamEntry(
  { name, atStart, atEnd, overlap, openHem, lines }: Seam,
  length: number,
): NonNullable<PlanFileStrip['seam']> {
  return {
    kind: name,
    atStart: roundMillimetres(atStart),
    atEnd: roundMillimetres(atEnd),
    overlap: roundMillimetres(overlap),
    openHem: roundMillimetres(openHem),
    lines: lines.map(({ purpose, end, from }) => ({
      purpose,
      at: roundMillimetres(end === 'start' ? from : length - from),
    })),
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
