import fc from 'fast-check';
import { keepValue } from './keep-value.test.support.js';
import type { CuttingProblem, KeepRule, Metal, Piece, Rolling, Shear, Stock } from './problem.js';

/** What a random problem may have besides pieces and stock of one metal at a price. */
export interface Features {
  /** Besides two stages. */
  readonly stages?: 'three' | 'free' | 'any';
  readonly kerf?: boolean;
  readonly trim?: boolean;
  readonly longestCut?: boolean;
  readonly narrowestStrip?: boolean;
  /** Sheets on hand, few to buy. */
  readonly limitedStock?: boolean;
  readonly offcuts?: boolean;
  readonly packs?: boolean;
  readonly bookValues?: boolean;
  /** A rule for keeping offcuts. */
  readonly keep?: boolean;
  readonly metals?: boolean;
  readonly rolling?: boolean;
  readonly spares?: boolean;
}

export interface Size {
  /** The longest side of the stock in ticks; pieces go up to a little over half of it. */
  readonly side: number;
  readonly pieceTypes: number;
  readonly quantity: number;
  /** Pieces in all. */
  readonly total: number;
  readonly sheetSizes: number;
  readonly offcuts: number;
}

/** Small enough for trying every cut. */
export const SMALL: Size = {
  side: 12,
  pieceTypes: 4,
  quantity: 4,
  total: 8,
  sheetSizes: 2,
  offcuts: 2,
};

export const LARGE: Size = {
  side: 60,
  pieceTypes: 8,
  quantity: 30,
  total: 240,
  sheetSizes: 3,
  offcuts: 4,
};

/** Random problems that make sense as data; some cannot be cut. */
export function randomOfKind(features: Features, size: Size): fc.Arbitrary<CuttingProblem> {
  return fc
    .record({
      pieces: fc.array(pieces(features, size), { minLength: 1, maxLength: size.pieceTypes }),
      sheets: fc.array(sheets(features, size), { minLength: 1, maxLength: size.sheetSizes }),
      offcuts: fc.array(offcuts(features, size), {
        maxLength: features.offcuts ? size.offcuts : 0,
      }),
      shear: shears(features, size),
      rules: rules(features, size),
    })
    .filter(({ pieces }) => pieces.some(({ quantity }) => quantity > 0))
    .map(({ pieces, sheets, offcuts, shear, rules }): CuttingProblem => {
      let left = size.total;
      const few = pieces.flatMap((piece, i): Piece[] => {
        const quantity = Math.min(piece.quantity, left);
        left -= quantity;
        const wanted = quantity > 0 || (piece.quantity === 0 && left > 0);
        return wanted ? [{ ...piece, id: `piece ${i + 1}`, quantity }] : [];
      });
      const keep = rules.length > 0 ? { keep: rules } : {};
      const stock = [
        ...sheets.map((sheet, i) => ({ ...sheet, id: `sheet ${i + 1}` })),
        ...offcuts.map((offcut, i) => ({ ...offcut, id: `offcut ${i + 1}` })),
      ];
      const unpriced = { pieces: few, stock, shear, ...keep };
      return { ...unpriced, stock: stock.map((entry) => sensiblyPriced(unpriced, entry)) };
    });
}

/** No whole sheet is worth more in the rack than its price or its book value. */
function sensiblyPriced(problem: CuttingProblem, stock: Stock): Stock {
  const whole = keepValue(problem, stock, stock.length, stock.width);
  const book = stock.bookValue === undefined ? {} : { bookValue: stock.bookValue + whole };
  return stock.kind === 'offcut'
    ? { ...stock, ...book }
    : { ...stock, ...book, price: stock.price + whole };
}

const METALS: readonly Metal[] = [
  {},
  { metal: 'tinplate', thickness: 0.3 },
  { metal: 'tinplate', thickness: 0.4 },
];

/** Mostly one metal, so that most problems can be cut. */
function metal(features: Features, weight: number): fc.Arbitrary<Metal> {
  return features.metals
    ? fc.oneof(
        { weight: 1, arbitrary: fc.constantFrom(METALS[0], METALS[2]) },
        { weight, arbitrary: fc.constant(METALS[1]) },
      )
    : fc.constant({});
}

function rolling(features: Features, weight: number): fc.Arbitrary<{ rolling?: Rolling }> {
  if (!features.rolling) return fc.constant({});
  return fc.oneof(
    { weight, arbitrary: fc.constantFrom({ rolling: 'along' as const }, { rolling: 'across' }) },
    { weight: 1, arbitrary: fc.constant({}) },
  ) as fc.Arbitrary<{ rolling?: Rolling }>;
}

function pieces(features: Features, size: Size): fc.Arbitrary<Omit<Piece, 'id'>> {
  const least = features.narrowestStrip ? Math.max(2, Math.ceil(size.side / 10)) : 1;
  const side = fc.integer({ min: least, max: Math.ceil(size.side * 0.5) });
  const quantity = fc.integer({ min: 1, max: size.quantity });
  const spares = fc.integer({ min: 1, max: size.quantity });
  const piece = fc.record({ length: side, width: side, quantity, mayTurn: fc.boolean() });
  const more = features.spares
    ? fc.oneof(
        fc.constant({}),
        fc.record({ spares }),
        fc.record({ spares, quantity: fc.constant(0) }),
      )
    : fc.constant({});
  return fc
    .tuple(piece, metal(features, 12), rolling(features, 1), more)
    .map(([entry, ...others]) => Object.assign({}, entry, ...others));
}

type Unnamed<S> = S extends Stock ? Omit<S, 'id'> : never;

function sheets(features: Features, size: Size): fc.Arbitrary<Unnamed<Stock & { kind: 'sheet' }>> {
  const side = fc.integer({ min: Math.ceil(size.side * 0.55), max: size.side });
  const sheet = fc.record({
    kind: fc.constant('sheet' as const),
    length: side,
    width: side,
    price: fc.integer({ min: 0, max: 12 }),
    onHand: features.limitedStock
      ? fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 3 }))
      : fc.constant(0),
    canBuy: features.limitedStock
      ? fc.oneof(fc.constant('any' as const), fc.integer({ min: 0, max: 4 }))
      : fc.constant('any' as const),
  });
  const packs = features.packs
    ? fc.oneof(fc.constant({}), fc.record({ packSize: fc.integer({ min: 1, max: 4 }) }))
    : fc.constant({});
  return fc
    .tuple(sheet, metal(features, 4), rolling(features, 4), packs, bookValues(features))
    .map(([entry, ...others]) => {
      const made = Object.assign({}, entry, ...others);
      // Sheets are sold by the pack.
      const { canBuy, packSize = 1 } = made;
      return canBuy === 'any' ? made : { ...made, canBuy: canBuy * packSize };
    });
}

function offcuts(
  features: Features,
  size: Size,
): fc.Arbitrary<Unnamed<Stock & { kind: 'offcut' }>> {
  const side = fc.integer({ min: Math.ceil(size.side * 0.3), max: Math.ceil(size.side * 0.8) });
  const offcut = fc.record({ kind: fc.constant('offcut' as const), length: side, width: side });
  return fc
    .tuple(offcut, metal(features, 4), rolling(features, 4), bookValues(features))
    .map(([entry, ...others]) => Object.assign({}, entry, ...others));
}

/** Above what the rule for keeping gives; that is added later. */
function bookValues(features: Features): fc.Arbitrary<{ bookValue?: number }> {
  if (!features.bookValues) return fc.constant({});
  return fc.oneof(
    fc.constant({}),
    fc.record({ bookValue: fc.integer({ min: 0, max: 15 }) }),
  ) as fc.Arbitrary<{ bookValue?: number }>;
}

function shears(features: Features, size: Size): fc.Arbitrary<Shear> {
  const firstCut = fc.constantFrom('along' as const, 'across' as const, 'either' as const);
  const small = Math.max(2, Math.ceil(size.side / 20));
  const choices: Record<string, fc.Arbitrary<unknown>> = {};
  if (features.stages === 'three') choices.stages = fc.constant(3);
  if (features.stages === 'free') choices.stages = fc.constant('free');
  if (features.stages === 'any') choices.stages = fc.constantFrom(2, 3, 'free');
  if (features.kerf) choices.kerf = fc.integer({ min: 1, max: small });
  if (features.narrowestStrip) {
    choices.narrowestStrip = fc.integer({ min: 2, max: Math.max(3, Math.ceil(size.side / 8)) });
  }
  if (features.longestCut) {
    choices.longestCut = fc.integer({ min: Math.ceil(size.side * 0.65), max: size.side });
  }
  if (features.trim) choices.trim = fc.integer({ min: 1, max: small });
  return fc.record({ firstCut, ...choices }).map((shear): Shear => {
    const { kerf = 0, trim = 0 } = shear as Shear;
    // The blade's dust must lie within the trim.
    return trim > 0 && trim < kerf ? { ...shear, trim: kerf } : shear;
  });
}

function rules(features: Features, size: Size): fc.Arbitrary<readonly KeepRule[]> {
  if (!features.keep) return fc.constant([]);
  const rule = fc.record({
    leastLength: fc.integer({ min: 1, max: Math.ceil(size.side * 0.6) }),
    leastWidth: fc.integer({ min: 1, max: Math.ceil(size.side * 0.4) }),
    coinsPerMillion: fc.integer({ min: 50_000, max: 2_000_000 }),
    millions: fc.constantFrom(1, 1, 1, 2, 3),
    trouble: fc.integer({ min: 0, max: 8 }),
  });
  const metals = features.metals ? METALS : METALS.slice(0, 1);
  return fc
    .array(rule, { minLength: metals.length, maxLength: metals.length })
    .map((entries) => entries.map((entry, i) => ({ ...entry, ...metals[i] })));
}
