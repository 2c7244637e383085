import type { CuttingPlan, CuttingProblem, KeepRule, Layout, Stock } from '@stripwright/nesting';
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
  const plan: CuttingPlan = {
    layouts: file.layouts.map((layout, index) => layoutOf(layout, ['layouts', index], reader)),
    buy: file.buy.map(({ stock, count, cost }, index) => ({
      stock,
      count,
      cost: reader.coins(cost, ['buy', index, 'cost']),
    })),
    cost: reader.coins(file.cost, ['cost']),
    parts: {
      bought: reader.coins(file.parts.bought, ['parts', 'bought']),
      fromShop: reader.coins(file.parts.fromShop, ['parts', 'fromShop']),
      kept: reader.coins(file.parts.kept, ['parts', 'kept']),
    },
    spares: file.spares.map(({ blank, count }) => ({ piece: blank, count })),
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

  /** Those of the named lengths that an entry has, in ticks. */
  any<Name extends string>(
    entry: Readonly<Partial<Record<Name, unknown>>>,
    names: readonly Name[],
    path: FieldPath,
  ): Partial<Record<Name, number>> {
    return this.#those(entry, names, path, (value, at) => this.ticks(value, at));
  }

  /** Those of the named amounts that an entry has, in coins. */
  anyCoins<Name extends string>(
    entry: Readonly<Partial<Record<Name, unknown>>>,
    names: readonly Name[],
    path: FieldPath,
  ): Partial<Record<Name, number>> {
    return this.#those(entry, names, path, (value, at) => this.coins(value, at));
  }

  #those<Name extends string>(
    entry: Readonly<Partial<Record<Name, unknown>>>,
    names: readonly Name[],
    path: FieldPath,
    read: (value: number, path: FieldPath) => number,
  ): Partial<Record<Name, number>> {
    const found = names.flatMap((name) => {
      const value = entry[name];
      return typeof value === 'number' ? [[name, read(value, [...path, name])] as const] : [];
    });
    return Object.fromEntries(found) as Partial<Record<Name, number>>;
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

/** The fields of an entry that are neither lengths nor money, without those that are absent. */
function given<Entry extends object, Name extends keyof Entry>(
  entry: Entry,
  names: readonly Name[],
): { [Field in Name]?: Exclude<Entry[Field], undefined> } {
  const found = names.filter((name) => entry[name] !== undefined);
  return Object.fromEntries(found.map((name) => [name, entry[name]])) as {
    [Field in Name]?: Exclude<Entry[Field], undefined>;
  };
}

function problemOf(file: PlanFile, reader: UnitReader): CuttingProblem {
  const { stock, blanks, shear, keep, weights } = file;
  return {
    pieces: blanks.map((blank, index) => ({
      id: blank.id,
      ...reader.all(blank, SIZE, ['blanks', index]),
      quantity: blank.quantity,
      mayTurn: blank.mayTurn,
      ...given(blank, ['rolling', 'spares', 'metal', 'thickness']),
    })),
    stock: stock.map((entry, index): Stock => {
      const path = ['stock', index];
      const { id } = entry;
      const common = {
        ...reader.all(entry, SIZE, path),
        ...reader.anyCoins(entry, ['bookValue'], path),
        ...given(entry, ['rolling', 'metal', 'thickness']),
      };
      if (entry.kind === 'offcut') return { kind: 'offcut', id, ...common };
      const { onHand, canBuy } = entry;
      const price = reader.coins(entry.price, [...path, 'price']);
      return { kind: 'sheet', id, ...common, price, onHand, canBuy, ...given(entry, ['packSize']) };
    }),
    shear: {
      firstCut: shear.firstCut,
      ...reader.any(shear, ['longestCut', 'narrowestStrip', 'kerf', 'trim'], ['shear']),
      ...given(shear, ['stages']),
    },
    ...(keep === undefined ? {} : { keep: keep.map((rule, index) => ruleOf(rule, index, reader)) }),
    ...(weights === undefined ? {} : { weights: given(weights, ['layout', 'gauge', 'cut']) }),
  };
}

function ruleOf(
  rule: NonNullable<PlanFile['keep']>[number],
  index: number,
  reader: UnitReader,
): KeepRule {
  const path = ['keep', index];
  return {
    ...reader.all(rule, ['leastLength', 'leastWidth'], path),
    coinsPerMillion: reader.coins(rule.worth, [...path, 'worth']),
    ...reader.anyCoins(rule, ['trouble'], path),
    ...given(rule, ['millions', 'metal', 'thickness']),
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
      value: reader.coins(remnant.value, [...path, 'remnants', index, 'value']),
    })),
  };
}
