import fc from 'fast-check';
import type { Cut, CuttingPlan, Layout, PlacedPiece, Remnant } from '../plan.js';
import type { CuttingProblem, KeepRule, Piece, Rolling, Shear, Stock } from '../problem.js';

/** A plan with the problem that it answers. */
export interface DrawnPlan {
  readonly problem: CuttingProblem;
  readonly plan: CuttingPlan;
}

type Draw = fc.GeneratorValue;

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/**
 * Random good plans of every kind, drawn backwards: sheets and offcuts are cut up
 * at random within the shear's limits, and what comes off is then what was wanted.
 */
export const drawnPlan: fc.Arbitrary<DrawnPlan> = fc.gen().map(draw);

function draw(g: Draw): DrawnPlan {
  const whole = (min: number, max: number) => g(fc.integer, { min, max });
  const maybe = () => g(fc.boolean);
  const kerf = whole(0, 2);
  const trim = maybe() ? 0 : whole(Math.max(1, kerf), 4);
  const stages = g(fc.constantFrom, 2 as const, 3 as const, 'free' as const);
  const firstCut = g(fc.constantFrom, 'along' as const, 'across' as const, 'either' as const);
  const shear: Shear = {
    firstCut,
    kerf,
    trim,
    stages,
    narrowestStrip: whole(0, 4),
    longestCut: whole(50, 60),
  };
  const metal = maybe() ? { metal: 'tinplate', thickness: 0.3 } : {};
  const rule: KeepRule | undefined = maybe()
    ? {
        ...metal,
        leastLength: whole(1, 12),
        leastWidth: whole(1, 6),
        coinsPerMillion: whole(0, 99_000),
        millions: whole(1, 3),
        trouble: whole(0, 3),
      }
    : undefined;
  const stock = [0, 1, 2].map((i): Stock => {
    const size = { length: whole(30, 50), width: whole(30, 50) };
    const value = coins(rule, size.length, size.width).value;
    const common = {
      ...size,
      ...metal,
      id: `stock ${i + 1}`,
      ...(maybe() ? { rolling: g(fc.constantFrom, 'along' as const, 'across' as const) } : {}),
      ...(maybe() ? { bookValue: value + whole(0, 5) } : {}),
    };
    if (i > 0 && maybe()) return { ...common, kind: 'offcut' };
    return {
      ...common,
      kind: 'sheet',
      price: value + whole(0, 20),
      onHand: whole(0, 3),
      canBuy: 'any',
      packSize: whole(1, 4),
    };
  });
  const pieces: Piece[] = [];
  const cutUp = stock.slice(0, whole(1, 3)).map((entry, i): Layout => {
    const runs =
      firstCut === 'either' ? g(fc.constantFrom, 'along' as const, 'across' as const) : firstCut;
    const drawn = new Sketch(g, entry, shear, runs, pieces);
    return { ...drawn.layout(), count: entry.kind === 'offcut' || i > 1 ? 1 : whole(1, 4) };
  });
  const layouts = cutUp.map((layout) => ({
    ...layout,
    remnants: layout.remnants.map((remnant) => ({
      ...remnant,
      ...coins(rule, remnant.length, remnant.width),
    })),
  }));
  const spares: { piece: string; count: number }[] = [];
  const wanted = pieces.map((piece, i): Piece => {
    const made = layouts.reduce((sum, layout) => sum + layout.count * copies(layout, piece.id), 0);
    const count = i > 0 && maybe() ? whole(1, made) : 0;
    if (count > 0) spares.push({ piece: piece.id, count });
    return { ...piece, quantity: made - count, spares: count + whole(0, 1) };
  });
  const problem: CuttingProblem = {
    pieces: wanted,
    stock,
    shear,
    ...(rule === undefined ? {} : { keep: [rule] }),
  };
  return { problem, plan: { ...priced(problem, layouts), spares } };
}

function copies(layout: Layout, piece: string): number {
  return layout.pieces.filter((placed) => placed.piece === piece).length;
}

function coins(rule: KeepRule | undefined, length: number, width: number) {
  const sides = [length, width].sort((a, b) => b - a);
  if (rule === undefined || sides[0] < rule.leastLength || sides[1] < rule.leastWidth) {
    return { keep: false, value: 0 };
  }
  const gross = BigInt(length * width) * BigInt(rule.coinsPerMillion);
  return {
    keep: true,
    value: Math.max(
      0,
      Number(gross / (1_000_000n * BigInt(rule.millions ?? 1))) - (rule.trouble ?? 0),
    ),
  };
}

/** Pays for layouts sheet by sheet, as one would at a counter. */
function priced(problem: CuttingProblem, layouts: readonly Layout[]): CuttingPlan {
  const buy: { stock: string; count: number; cost: number }[] = [];
  const parts = { bought: 0, fromShop: 0, kept: 0 };
  for (const stock of problem.stock) {
    const whole = coins(problem.keep?.[0], stock.length, stock.width).value;
    let onHand = stock.kind === 'offcut' ? 1 : stock.onHand;
    let opened = 0;
    let packs = 0;
    for (const layout of layouts.filter((entry) => entry.stock === stock.id)) {
      for (let i = 0; i < layout.count; i++) {
        for (const remnant of layout.remnants) parts.kept += remnant.value;
        if (onHand > 0) {
          onHand--;
          parts.fromShop += stock.bookValue ?? whole;
          continue;
        }
        if (stock.kind === 'offcut') throw new Error('an offcut is cut twice');
        if (opened === 0) {
          packs++;
          opened = stock.packSize ?? 1;
        }
        opened--;
      }
    }
    parts.kept += opened * whole;
    if (stock.kind === 'offcut' || packs === 0) continue;
    const count = packs * (stock.packSize ?? 1);
    buy.push({ stock: stock.id, count, cost: count * stock.price });
    parts.bought += count * stock.price;
  }
  const cost = parts.bought + parts.fromShop - parts.kept;
  return {
    layouts,
    buy,
    cost,
    parts,
    spares: [],
    bound: { cost, proven: true },
    effort: { rounds: 0, patterns: 0, integerMasters: 0, nodes: 0, ending: 'bound met' },
  };
}

/** Cuts up one stock at random. */
class Sketch {
  private readonly cuts: Cut[] = [];
  private readonly placed: PlacedPiece[] = [];
  private readonly remnants: Remnant[] = [];

  constructor(
    private readonly g: Draw,
    private readonly stock: Stock,
    private readonly shear: Shear,
    private readonly runs: Rolling,
    private readonly pieces: Piece[],
  ) {}

  layout(): Omit<Layout, 'count'> {
    const { kerf = 0, trim = 0 } = this.shear;
    const { length, width } = this.stock;
    const t = this.stock.kind === 'sheet' ? trim : 0;
    if (t > 0) {
      this.cuts.push(
        { stage: 0, x1: t - kerf, y1: 0, x2: t - kerf, y2: width },
        { stage: 0, x1: length - t, y1: 0, x2: length - t, y2: width },
        { stage: 0, x1: t, y1: t - kerf, x2: length - t, y2: t - kerf },
        { stage: 0, x1: t, y1: width - t, x2: length - t, y2: width - t },
      );
    }
    this.cutUp({ x: t, y: t, length: length - 2 * t, width: width - 2 * t }, 0);
    return {
      stock: this.stock.id,
      cuts: this.cuts,
      pieces: this.placed,
      remnants: this.remnants,
    };
  }

  private whole(min: number, max: number): number {
    return this.g(fc.integer, { min, max });
  }

  private cutUp(metal: Rectangle, stage: number): void {
    const { stages = 2, kerf = 0, narrowestStrip = 1, longestCut = 0 } = this.shear;
    const last = stages === 'free' ? Number.POSITIVE_INFINITY : stages + 1;
    const next = this.whole(Math.max(1, stage), Math.min(last, Math.max(stage, 1) + 1));
    const level = (next % 2 === 1) === (this.runs === 'along');
    const extent = level ? metal.width : metal.length;
    const span = level ? metal.length : metal.width;
    const least = Math.max(1, narrowestStrip);
    const near = least > extent - 1 ? 0 : this.whole(least, extent - 1);
    const far = extent - near - kerf;
    const holds = near > 0 && span <= longestCut && (far <= 0 || far >= least);
    if (!holds || (stage > 0 && this.whole(0, 5) === 0)) {
      if (this.placed.length === 0 || this.whole(0, 2) > 0) this.piece(metal);
      else this.remnant(metal);
      return;
    }
    const { x, y, length, width } = metal;
    this.cuts.push(
      level
        ? { stage: next, x1: x, y1: y + near, x2: x + length, y2: y + near }
        : { stage: next, x1: x + near, y1: y, x2: x + near, y2: y + width },
    );
    const parts: readonly Rectangle[] = level
      ? [
          { x, y, length, width: near },
          { x, y: y + near + kerf, length, width: far },
        ]
      : [
          { x, y, length: near, width },
          { x: x + near + kerf, y, length: far, width },
        ];
    // What lost its edge to the kerf is cut no more: a second kerf might take the place of the first.
    if (next === last || far <= 0) {
      this.piece(parts[0]);
      if (far > 0) this.remnant(parts[1]);
      return;
    }
    this.cutUp(parts[0], next);
    this.cutUp(parts[1], next);
  }

  private remnant(metal: Rectangle): void {
    this.remnants.push({ ...metal, keep: false, value: 0 });
  }

  private piece(metal: Rectangle): void {
    const { stock, pieces } = this;
    const turned = this.g(fc.boolean);
    const [length, width] = turned ? [metal.width, metal.length] : [metal.length, metal.width];
    const seen = stock.rolling === undefined || !turned ? stock.rolling : opposite(stock.rolling);
    const rolling = this.g(fc.boolean) ? seen : undefined;
    const same = pieces.find(
      (piece) =>
        piece.length === length &&
        piece.width === width &&
        piece.rolling === rolling &&
        piece.mayTurn === turned,
    );
    const id = same?.id ?? `piece ${pieces.length + 1}`;
    if (same === undefined) {
      pieces.push({
        id,
        length,
        width,
        quantity: 0,
        mayTurn: turned,
        ...(rolling === undefined ? {} : { rolling }),
        ...(stock.metal === undefined ? {} : { metal: stock.metal }),
        ...(stock.thickness === undefined ? {} : { thickness: stock.thickness }),
      });
    }
    this.placed.push({ ...metal, piece: id, turned });
  }
}

function opposite(rolling: Rolling): Rolling {
  return rolling === 'along' ? 'across' : 'along';
}
