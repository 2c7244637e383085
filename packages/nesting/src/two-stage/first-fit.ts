import type { StockClass } from '../stock-classes.js';
import type { IntegerPlan } from './integer-master.js';
import { pieceCounts } from './linear-master.js';
import { classCost, type Objective, totalCost } from './objective.js';
import { type CutPattern, onTwoLevels, type StripPattern } from './patterns.js';
import type { Face, Faces, StripFamily } from './strip-families.js';

export interface FirstFit {
  readonly cuts: readonly CutPattern[];
  /** Undefined where the stock ran out before the demand was met. */
  readonly plan: IntegerPlan | undefined;
}

/**
 * A plan by the rule of thumb, as a start for the search and a floor under it:
 * open a strip as wide as the widest piece still wanted, fill it with pieces by
 * descending width, fill the sheet with such strips; take stock that costs
 * nothing first, then the sheet that gives most metal used for its cost
 * (first fit decreasing height on strips, as in Coffman, Garey, Johnson and
 * Tarjan 1980, "Performance bounds for level-oriented two-dimensional packing
 * algorithms").
 */
export function firstFit(
  faces: Faces,
  classes: readonly StockClass[],
  demand: readonly number[],
  objective: Objective,
): FirstFit {
  const wanted = [...demand];
  const used: number[] = new Array(classes.length).fill(0);
  const orders = faces.families.map(layOrder);
  const cuts: [CutPattern, number][] = [];
  while (wanted.some((count) => count > 0)) {
    let best: { cut: CutPattern; rank: number } | undefined;
    for (const [index, face] of faces.faces.entries()) {
      const entry = classes[face.stockClass];
      const before = classCost(entry, used[face.stockClass], objective.cost);
      const cost = classCost(entry, used[face.stockClass] + 1, objective.cost) - before;
      if (!Number.isFinite(cost)) continue;
      const family = faces.families[face.family];
      const { cut, area } = fillSheet(index, face, family, orders[face.family], wanted);
      if (area === 0) continue;
      // Free stock ranks above all priced stock, fuller sheets above emptier ones.
      const rank = cost === 0 ? 2 + area / (entry.length * entry.width) : area / cost / 1e12;
      if (best === undefined || rank > best.rank) best = { cut, rank };
    }
    if (best === undefined) return { cuts: cuts.map(([cut]) => cut), plan: undefined };
    const { stockClass } = faces.faces[best.cut.face];
    const counts = pieceCounts(faces, best.cut);
    const times = sameAgain(classes[stockClass], used[stockClass], counts, wanted);
    for (const [piece, count] of counts) wanted[piece] -= count * times;
    used[stockClass] += times;
    cuts.push([best.cut, times]);
  }
  const cost = totalCost(classes, used, objective.cost);
  return { cuts: cuts.map(([cut]) => cut), plan: { cost, ...onTwoLevels(cuts) } };
}

/** Lays in the order in which they are tried: long side along the strip first, wide before narrow. */
function layOrder(family: StripFamily): readonly number[] {
  const upright = (index: number) => family.lays[index].along < family.lays[index].across;
  return family.lays
    .map((_, index) => index)
    .sort(
      (a, b) =>
        Number(upright(a)) - Number(upright(b)) ||
        family.lays[b].across - family.lays[a].across ||
        family.lays[b].along - family.lays[a].along,
    );
}

function fillSheet(
  index: number,
  face: Face,
  family: StripFamily,
  order: readonly number[],
  demand: readonly number[],
): { cut: CutPattern; area: number } {
  const wanted = [...demand];
  const strips: [StripPattern, number][] = [];
  let room = face.breadth;
  let area = 0;
  for (;;) {
    const first = order.find(
      (lay) => family.lays[lay].across <= room && wanted[family.lays[lay].piece] > 0,
    );
    if (first === undefined) break;
    const width = family.lays[first].across;
    const lays = new Map<number, number>();
    let length = family.length;
    for (const lay of [first, ...order]) {
      const { piece, along, across } = family.lays[lay];
      const copies = Math.min(wanted[piece], Math.floor(length / along));
      if (across > width || copies <= 0) continue;
      lays.set(lay, (lays.get(lay) ?? 0) + copies);
      wanted[piece] -= copies;
      length -= copies * along;
      area += copies * along * across;
    }
    strips.push([
      {
        family: face.family,
        width: family.widths.indexOf(width),
        lays: [...lays].sort((a, b) => a[0] - b[0]),
      },
      1,
    ]);
    room -= width;
  }
  return { cut: { face: index, strips }, area };
}

/** How often the same cut serves again: while it is wanted and the supply's price does not change. */
function sameAgain(
  entry: StockClass,
  used: number,
  counts: ReadonlyMap<number, number>,
  wanted: readonly number[],
): number {
  let left = used;
  let supply = 0;
  for (const { count } of entry.supplies) {
    if (left < count) {
      supply = count - left;
      break;
    }
    left -= count;
  }
  const wants = [...counts].map(([piece, count]) => Math.floor(wanted[piece] / count));
  return Math.max(1, Math.min(supply, ...wants));
}
