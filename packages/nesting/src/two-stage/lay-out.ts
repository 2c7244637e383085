import type { Cut, Layout, PlacedPiece, Remnant } from '../plan.js';
import type { CuttingProblem } from '../problem.js';
import type { StockClass } from '../stock-classes.js';
import type { FilledSheet } from './filled-sheets.js';
import type { Faces } from './strip-families.js';

type Rectangle = Omit<Remnant, 'keep' | 'value'>;

/**
 * Places the strips of a sheet side by side from its lower left corner, the
 * widest first so that the gauge is reset as seldom as can be, and the pieces
 * of each strip end to end. Cuts come in the order they are made: all strips off
 * the sheet, then strip by strip to length, then trimmed to width.
 */
export function layOut(
  sheet: FilledSheet,
  stock: string,
  count: number,
  problem: CuttingProblem,
  faces: Faces,
  classes: readonly StockClass[],
): Layout {
  const face = faces.faces[sheet.face];
  const family = faces.families[face.family];
  const entry = classes[face.stockClass];
  const straight = face.direction === 'along';
  /** From strip space (along and across the strips) to the sheet. */
  const place = (along: number, across: number, length: number, width: number): Rectangle =>
    straight
      ? { x: along, y: across, length, width }
      : { x: across, y: along, length: width, width: length };
  const cut = (stage: Cut['stage'], from: readonly number[], to: readonly number[]): Cut => ({
    stage,
    x1: straight ? from[0] : from[1],
    y1: straight ? from[1] : from[0],
    x2: straight ? to[0] : to[1],
    y2: straight ? to[1] : to[0],
  });

  const shearing: Cut[] = [];
  const lengths: Cut[] = [];
  const trims: Cut[] = [];
  const pieces: PlacedPiece[] = [];
  const remnants: Rectangle[] = [];
  let base = 0;
  const strips = [...sheet.strips].sort((a, b) => b.width - a.width);
  for (const strip of strips) {
    const width = family.widths[strip.width];
    const top = base + width;
    if (top < face.breadth) shearing.push(cut(1, [0, top], [family.length, top]));
    let along = 0;
    for (const lay of laysInOrder(strip.lays, family.lays)) {
      const end = along + lay.along;
      if (end < family.length) lengths.push(cut(2, [end, base], [end, top]));
      const placed = place(along, base, lay.along, lay.across);
      const piece = problem.pieces[lay.piece];
      pieces.push({ piece: piece.id, ...placed, turned: placed.length !== piece.length });
      if (lay.across < width) {
        trims.push(cut(3, [along, base + lay.across], [end, base + lay.across]));
        remnants.push(place(along, base + lay.across, lay.along, width - lay.across));
      }
      along = end;
    }
    if (along < family.length) remnants.push(place(along, base, family.length - along, width));
    base = top;
  }
  if (base < face.breadth) {
    remnants.push(place(0, base, family.length, face.breadth - base));
  }
  if (entry.length * entry.width !== area([...pieces, ...remnants])) {
    throw new Error(`layout of ${stock} does not cover it`);
  }
  return {
    stock,
    count,
    pieces,
    cuts: [...shearing, ...lengths, ...trims],
    remnants: remnants.map((remnant) => ({ ...remnant, keep: isKept(remnant, problem), value: 0 })),
  };
}

/** Whether a rule that gives no value sends a remnant to the rack. */
function isKept({ length, width }: Rectangle, { keep: [rule] = [] }: CuttingProblem): boolean {
  return (
    rule !== undefined &&
    Math.max(length, width) >= rule.leastLength &&
    Math.min(length, width) >= rule.leastWidth
  );
}

function laysInOrder<T extends { readonly along: number; readonly across: number }>(
  counts: readonly (readonly [number, number])[],
  lays: readonly T[],
): readonly T[] {
  return counts
    .flatMap(([lay, copies]) => new Array<T>(copies).fill(lays[lay]))
    .sort((a, b) => b.across - a.across || b.along - a.along);
}

function area(rectangles: readonly Rectangle[]): number {
  return rectangles.reduce((sum, rectangle) => sum + rectangle.length * rectangle.width, 0);
}
