import type { Box, BoxLay } from '../pattern/box.js';
import { type Limits, mayRest } from '../pattern/limits.js';
import type { Rolling } from '../problem.js';

/** One way a piece can lie in a strip; gross ticks. */
export interface StripLay {
  /** Index of the piece in the problem. */
  readonly piece: number;
  /** True where the length of the piece lies across the strip. */
  readonly crosswise: boolean;
  readonly along: number;
  readonly across: number;
}

/** A width that strips can have, with what may lie in them. */
export interface StripWidth {
  /** Gross ticks. */
  readonly extent: number;
  /** So many of the family's lays, from the first on, may lie in it whatever it is trimmed by. */
  readonly leading: number;
  /** Further lays that may: those that fill the width, or, where slivers may be too narrow, all but a kerf of it. */
  readonly fitting: readonly number[];
  /** True where the strip could be wider by any amount and still be cut. */
  readonly stretches: boolean;
  /** True where the strip is the whole box, since the shear cannot make the first cut. */
  readonly whole: boolean;
  /** True where the shear cannot cut it to length, so that one lay fills it from end to end. */
  readonly uncut: boolean;
}

/**
 * Which widths of strips are tried: `few` are the widths of the pieces, and what slivers demand beyond;
 * `needed` are all that a best pattern may have where remnants have no value; `every` is needed where
 * they have one, which depends on how they are cut.
 */
export type TriedWidths = 'few' | 'needed' | 'every';

/** All strips of one length that the same lays may go into. */
export interface StripFamily {
  /** Gross ticks. */
  readonly length: number;
  /** Those that may be trimmed to width first; ascending by `across`. */
  readonly lays: readonly StripLay[];
  /** Ascending by extent. */
  readonly widths: readonly StripWidth[];
}

/** A box with the direction of its first cuts chosen. */
export interface Face {
  /** Index of the box. */
  readonly box: number;
  /** Index of the strip family. */
  readonly family: number;
  /** Room for strips side by side, in gross ticks. */
  readonly breadth: number;
  /** How the first cuts run. */
  readonly cuts: Rolling;
}

export interface Faces {
  readonly families: readonly StripFamily[];
  readonly faces: readonly Face[];
}

/**
 * Every way the first cuts may run on every box. Boxes of different sizes share
 * a family where their strips are alike. Where the shear cannot make the first
 * cut, the only strip is the whole box.
 */
export function stripFaces(boxes: readonly Box[], limits: Limits, tried: TriedWidths): Faces {
  const open = boxes.flatMap((box, index) =>
    box.firstCuts.map((cuts) => {
      const straight = cuts === 'along';
      const length = straight ? box.length : box.width;
      const breadth = straight ? box.width : box.length;
      const whole = length - limits.kerf > limits.longestCut;
      const lays = box.lays
        .map((lay) => stripLay(lay, straight))
        .sort(
          (a, b) =>
            Number(mayBeTrimmed(b, length, limits)) - Number(mayBeTrimmed(a, length, limits)) ||
            byAcross(a, b),
        );
      const key = [length, whole ? breadth : '', ...lays.map(layKey)].join(' ');
      return { box: index, cuts, length, breadth, whole, lays, key };
    }),
  );
  const groups = new Map<string, { room: number; first: (typeof open)[number] }>();
  for (const face of open) {
    const room = Math.max(face.breadth, groups.get(face.key)?.room ?? 0);
    groups.set(face.key, { room, first: groups.get(face.key)?.first ?? face });
  }
  const keys = [...groups.keys()];
  const families = [...groups.values()].map(({ room, first }): StripFamily => {
    const lays = first.lays.filter((lay) => lay.along <= first.length && lay.across <= room);
    const extents = first.whole ? [room] : candidateExtents(lays, limits, room, tried);
    const widths = extents
      .flatMap((extent) => stripWidths(extent, first.length, lays, limits))
      .map((width) => ({ ...width, whole: first.whole }))
      .filter((width) => width.leading + width.fitting.length > 0);
    return { length: first.length, lays, widths };
  });
  const faces = open
    .map(({ box, cuts, breadth, key }): Face => ({ box, cuts, breadth, family: keys.indexOf(key) }))
    .filter((face) => families[face.family].widths.some(({ extent }) => extent <= face.breadth))
    .filter((face, index, all) => !all.some((other, i) => i < index && sameFace(face, other)));
  return { families, faces };
}

/** Turning a square box where every piece may turn gives nothing new. */
function sameFace(one: Face, other: Face): boolean {
  return one.box === other.box && one.family === other.family && one.breadth === other.breadth;
}

function stripLay(lay: BoxLay, straight: boolean): StripLay {
  return straight
    ? { piece: lay.piece, crosswise: lay.turned, along: lay.length, across: lay.width }
    : { piece: lay.piece, crosswise: !lay.turned, along: lay.width, across: lay.length };
}

function byAcross(a: StripLay, b: StripLay): number {
  return (
    a.across - b.across ||
    b.along - a.along ||
    a.piece - b.piece ||
    Number(a.crosswise) - Number(b.crosswise)
  );
}

/** Whether there are strips wider than a lay from which it can be cut. */
function mayBeTrimmed(
  { along, across }: StripLay,
  length: number,
  { kerf, narrowest, longestCut }: Limits,
): boolean {
  const freed = along === length || along - kerf >= narrowest;
  return freed && across - kerf >= narrowest && along - kerf <= longestCut;
}

function layKey({ piece, crosswise, along, across }: StripLay): string {
  return `${piece}${crosswise ? 'x' : ':'}${along}:${across}`;
}

/**
 * The widths worth trying. A strip is best no wider than its widest piece, but
 * where slivers must not be trimmed off, pieces of two widths too close to each
 * other need a strip wider than both, and a strip may take up what is too narrow
 * to be left beside it: that which stretches all of it, others as much as a kerf eats.
 * Of those widths that a kerf eats, the least and the most are enough: strips made wider
 * one by one come near enough to the edge that the kerf takes the rest. One that cannot
 * stretch so far for the longest cut may come near enough itself.
 */
function candidateExtents(
  lays: readonly StripLay[],
  { kerf, narrowest, longestCut }: Limits,
  room: number,
  tried: TriedWidths,
): readonly number[] {
  if (tried === 'every' && lays.length > 0) {
    const least = Math.min(...lays.map(({ across }) => across));
    return Array.from({ length: Math.max(0, room - least + 1) }, (_, i) => least + i);
  }
  const extents = new Set(lays.map((lay) => lay.across));
  if (narrowest > 1) {
    for (const { across } of lays) extents.add(across + kerf + narrowest);
    if (tried === 'needed') {
      for (const { across } of lays) extents.add(across + kerf);
      extents.add(longestCut + kerf);
    }
  }
  return [...extents].filter((extent) => extent <= room).sort((a, b) => a - b);
}

function stripWidths(
  extent: number,
  length: number,
  lays: readonly StripLay[],
  limits: Limits,
): readonly Omit<StripWidth, 'whole'>[] {
  const { kerf, narrowest, longestCut } = limits;
  const uncut = extent - kerf > longestCut;
  const allowed = (lay: StripLay) => {
    const rest = extent - lay.across;
    if (rest < 0 || (uncut && lay.along !== length)) return false;
    if (lay.along - kerf < narrowest && lay.along !== length) return false;
    return rest === 0 || (mayBeTrimmed(lay, length, limits) && mayRest(rest, limits));
  };
  if (uncut) {
    const fitting = lays.flatMap((lay, i) => (allowed(lay) ? [i] : []));
    return [{ extent, leading: 0, fitting, stretches: false, uncut }];
  }
  // Where no sliver is too narrow, whatever the kerf takes is nothing to mind.
  const apart = narrowest <= 1 ? 1 : kerf + narrowest;
  let leading = 0;
  while (
    leading < lays.length &&
    extent - lays[leading].across >= apart &&
    allowed(lays[leading])
  ) {
    leading++;
  }
  const fitting: number[] = [];
  for (let i = leading; i < lays.length; i++) if (allowed(lays[i])) fitting.push(i);
  const exact = { extent, leading, fitting, stretches: false, uncut };
  if (narrowest <= 1 || leading === 0) return [exact];
  return [exact, { extent, leading, fitting: [], stretches: true, uncut }];
}

/**
 * How many strips of each width can be of use on one sheet: each holds at least
 * one piece that needs it to be so wide.
 */
export function stripsOfUse(
  family: StripFamily,
  demand: readonly number[],
  tried: TriedWidths,
): readonly number[] {
  return family.widths.map((width) => {
    const fitting = width.fitting.map((lay) => family.lays[lay]);
    const needsIt = tried === 'every' || width.stretches || width.whole;
    const lays = needsIt ? [...family.lays.slice(0, width.leading), ...fitting] : fitting;
    return lays.reduce((sum, lay) => sum + demand[lay.piece], 0);
  });
}
