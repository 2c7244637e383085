import type { CuttingProblem } from '../problem.js';
import type { StockClass } from '../stock-classes.js';

/** One way a piece can lie in a strip. */
export interface Lay {
  /** Index of the piece in the problem. */
  readonly piece: number;
  /** Its extent along the strip, in ticks. */
  readonly along: number;
  /** Its extent across the strip, in ticks. */
  readonly across: number;
}

/** All strips of one length that the same lays may go into. */
export interface StripFamily {
  /** Ticks. */
  readonly length: number;
  /** Ascending by `across`, so that those which fit a strip come first. */
  readonly lays: readonly Lay[];
  /** The widths strips can have: every different `across`, ascending. */
  readonly widths: readonly number[];
  /** For each width, how many of the lays fit a strip of it. */
  readonly fitting: readonly number[];
}

/** A class of stock with the direction of its first cuts chosen. */
export interface Face {
  /** Index of the stock class. */
  readonly stockClass: number;
  /** Index of the strip family. */
  readonly family: number;
  /** Room for strips side by side, in ticks. */
  readonly breadth: number;
  /** `along`: the strips run along the stock's length; `across`: along its width. */
  readonly direction: 'along' | 'across';
}

export interface Faces {
  readonly families: readonly StripFamily[];
  readonly faces: readonly Face[];
}

/**
 * Every way the shear may begin on every class of stock. A direction is open
 * only where the shear can make the first cut, which is as long as the strips.
 * Stock of different sizes shares a family where its strips are alike.
 */
export function stripFamilies(problem: CuttingProblem, classes: readonly StockClass[]): Faces {
  const longest = problem.shear.longestCut ?? Number.POSITIVE_INFINITY;
  const turning = problem.pieces.every((piece) => piece.mayTurn || piece.length === piece.width);
  const found = new Map<string, { length: number; direction: Face['direction']; room: number }>();
  const open: (Omit<Face, 'family'> & { key: string })[] = [];
  classes.forEach((entry, stockClass) => {
    for (const direction of ['along', 'across'] as const) {
      if (problem.shear.firstCut !== 'either' && problem.shear.firstCut !== direction) continue;
      if (
        direction === 'across' &&
        turning &&
        entry.length === entry.width &&
        open.some((face) => face.stockClass === stockClass)
      )
        continue;
      const length = direction === 'along' ? entry.length : entry.width;
      const breadth = direction === 'along' ? entry.width : entry.length;
      if (length > longest) continue;
      const key = turning ? `${length}` : `${length} ${direction}`;
      const room = Math.min(breadth, longest);
      const family = found.get(key);
      found.set(key, { length, direction, room: Math.max(room, family?.room ?? 0) });
      open.push({ stockClass, breadth, direction, key });
    }
  });
  const keys = [...found.keys()];
  const families = [...found.values()].map((family) => stripFamily(problem, family));
  const faces = open
    .map(({ key, ...face }) => ({ ...face, family: keys.indexOf(key) }))
    .filter((face) => families[face.family].widths[0] <= face.breadth);
  return { families, faces };
}

function stripFamily(
  problem: CuttingProblem,
  family: { readonly length: number; readonly direction: Face['direction']; readonly room: number },
): StripFamily {
  const lays = problem.pieces
    .flatMap((piece, index): Lay[] => {
      const straight = { piece: index, along: piece.length, across: piece.width };
      const turned = { piece: index, along: piece.width, across: piece.length };
      if (piece.length === piece.width) return [straight];
      if (piece.mayTurn) return [straight, turned];
      return [family.direction === 'along' ? straight : turned];
    })
    .filter((lay) => lay.along <= family.length && lay.across <= family.room)
    .sort((a, b) => a.across - b.across || b.along - a.along || a.piece - b.piece);
  const widths = [...new Set(lays.map((lay) => lay.across))];
  const fitting = widths.map((width) => lays.filter((lay) => lay.across <= width).length);
  return { length: family.length, lays, widths, fitting };
}
