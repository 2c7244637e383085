import type { CuttingPlan, CuttingProblem, Layout, Stock } from '@stripwright/nesting';
import type { Fault, FieldPath } from '../faults/fault.js';
import { ticksExactly } from '../length/ticks.js';
import { coinsOf } from '../money.js';
import type { PlanFile, PlanFileLayout } from './plan-file.js';

export type TicksOutcome =
  | { readonly ok: true; readonly problem: CuttingProblem; readonly plan: CuttingPlan }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** A plan file in ticks and coins, or every length off the marks and every amount off the coins. */
export function toTicks(file: PlanFile): TicksOutcome {
  const reader = new UnitReader(file.order.smallestMark);
  const problem = problemOf(file, reader);
  const cost = reader.coins(file.cost, ['cost']);
  const plan: CuttingPlan = {
    layouts: file.layouts.map((layout, index) => layoutOf(layout, ['layouts', index], reader)),
    buy: file.buy.map(({ stock, count, cost }, index) => ({
      stock,
      count,
      cost: reader.coins(cost, ['buy', index, 'cost']),
    })),
    cost,
    parts: { bought: cost, fromShop: 0, kept: 0 },
    spares: [],
    bound: {
      cost: reader.coins(file.bound.cost, ['bound', 'cost']),
      proven: file.bound.proven,
    },
    effort: file.effort,
  };
  return reader.faults.length > 0
    ? { ok: false, faults: reader.faults }
    : { ok: true, problem, plan };
}

/** Turns millimetres into ticks and amounts into coins, and collects what does not come out whole. */
class UnitReader {
  readonly faults: Fault[] = [];
  readonly #mark: number;

  constructor(mark: number) {
    this.#mark = mark;
  }

  ticks(millimetres: number, path: FieldPath): number {
    const ticks = ticksExactly(millimetres, this.#mark);
    if (ticks !== undefined) return ticks;
    const complaint = { code: 'not marks', mark: this.#mark } as const;
    this.faults.push({ complaint, path, found: `${millimetres}` });
    return 0;
  }

  coins(amount: number, path: FieldPath): number {
    const coins = coinsOf(amount);
    if (coins !== undefined) return coins;
    this.faults.push({ complaint: { code: 'not a price' }, path, found: `${amount}` });
    return 0;
  }

  /** The named lengths of an entry, in ticks. */
  all<Name extends string>(
    entry: Readonly<Record<Name, number>>,
    names: readonly Name[],
    path: FieldPath,
  ): Record<Name, number> {
    const read = names.map((name) => [name, this.ticks(entry[name], [...path, name])] as const);
    return Object.fromEntries(read) as Record<Name, number>;
  }
}

const SIZE = ['length', 'width'] as const;
const RECTANGLE = ['x', 'y', 'length', 'width'] as const;
const ENDS = ['x1', 'y1', 'x2', 'y2'] as const;

function problemOf({ stock, blanks, shear }: PlanFile, reader: UnitReader): CuttingProblem {
  const { firstCut, longestCut } = shear;
  return {
    pieces: blanks.map((blank, index) => ({
      id: blank.id,
      ...reader.all(blank, SIZE, ['blanks', index]),
      quantity: blank.quantity,
      mayTurn: blank.mayTurn,
    })),
    stock: stock.map((entry, index): Stock => {
      const path = ['stock', index];
      const size = reader.all(entry, SIZE, path);
      if (entry.kind === 'offcut') return { kind: 'offcut', id: entry.id, ...size };
      const { id, onHand, canBuy } = entry;
      const price = reader.coins(entry.price, [...path, 'price']);
      return { kind: 'sheet', id, ...size, price, onHand, canBuy };
    }),
    shear: {
      firstCut,
      ...(longestCut === undefined
        ? {}
        : { longestCut: reader.ticks(longestCut, ['shear', 'longestCut']) }),
    },
  };
}

function layoutOf(layout: PlanFileLayout, path: FieldPath, reader: UnitReader): Layout {
  return {
    stock: layout.stock.id,
    count: layout.count,
    pieces: layout.pieces.map((piece, index) => ({
      piece: piece.blank,
      ...reader.all(piece, RECTANGLE, [...path, 'pieces', index]),
      turned: piece.turned,
    })),
    cuts: layout.cuts.map((cut, index) => ({
      stage: cut.stage,
      ...reader.all(cut, ENDS, [...path, 'cuts', index]),
    })),
    remnants: layout.remnants.map((remnant, index) => ({
      ...reader.all(remnant, RECTANGLE, [...path, 'remnants', index]),
      keep: remnant.keep,
      value: 0,
    })),
  };
}
