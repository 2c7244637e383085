import { toDegrees, toRadians } from '../angle.js';
import { placesOf } from '../marks/places.js';
import { roundMarks } from '../marks/round-marks.js';
import type { Point } from '../outline.js';
import { distance } from '../point.js';
import type { Strip } from '../strip.js';
import { StripError } from '../strip-error.js';
import { printNumber } from '../wording.js';
import { type Chain, chainOf, type Folded, fold } from './fold.js';
import { placeClosest } from './place-closest.js';
import { gapOf, tellTurns } from './tell-turns.js';

export interface RefoldOptions {
  /** The finest step of the angles that are told, degrees; 0.1 when absent. */
  readonly angleStep?: number;
}

/** How well a folded strip makes the outline that was drawn. Millimetres. */
export interface FoldFigures {
  /**
   * Distance between the two ends, where they should meet; for a part of a
   * cutter, how far one end is from where it should be to the other.
   */
  readonly closureGap: number;
  /** Greatest distance of any point from its place on the drawing, laid on it so that this is least. */
  readonly largestDeviation: number;
  /** Where that is: the distance from the square end. */
  readonly at: number;
  /** The folded line, laid on the drawing; point by point beside `drawing`. */
  readonly path: readonly Point[];
}

/** A bend as it should be folded on the rounded marks. Degrees bent through. */
export interface ToldFold {
  readonly number: number;
  readonly drawn: { readonly direction: 'in' | 'out'; readonly angle: number };
  readonly told: { readonly direction: 'in' | 'out'; readonly angle: number };
}

/** A curve as it should be formed on the rounded marks. Degrees, each half by itself. */
export interface ToldCurve {
  readonly number: number;
  readonly direction: 'in' | 'out';
  readonly drawn: readonly [first: number, second: number];
  readonly told: readonly [first: number, second: number];
}

/** A strip folded by computation from its rounded marks. The figures are those at the told angles. */
export interface Refold extends FoldFigures {
  /** The figures with every bend and curve turned through exactly what is drawn. */
  readonly atDrawnAngles: FoldFigures;
  readonly folds: readonly ToldFold[];
  readonly curves: readonly ToldCurve[];
  /** The line as drawn, its bends rounded as the metal rounds them; it starts at the origin, along x. */
  readonly drawing: readonly Point[];
}

/**
 * Folds a strip back into an outline by computation, from marks rounded to the
 * smallest mark of a rule: every flat is as long as its marks leave it, every
 * bend has the rule's radius, every curve its drawn shape scaled to the length
 * between its marks. The path is laid on the drawing by the rotation and translation
 * that make the largest deviation, that of a point from its own place, least.
 *
 * Marks are rounded one by one, so flats come out up to one mark too long or
 * too short, and at the drawn angles the ends of a many-cornered outline miss
 * each other by a few marks. So the angles are told anew: the small changes
 * that close the outline and keep it near the drawing, in steps of 0.1 degrees; where
 * small ones leave too much, those by which the largest deviation is least.
 * A curve may turn a little more in one half and less in the other. A strip of more than 120
 * bends and half curves is told its drawn angles, rounded.
 *
 * @throws StripError if the smallest mark or the angle step is not above 0.
 */
export function refold(
  { runs, bendRule, sizeIs }: Pick<Strip, 'runs' | 'bendRule' | 'sizeIs'>,
  smallestMark: number,
  { angleStep = 0.1 }: RefoldOptions = {},
): Refold {
  if (!Number.isFinite(angleStep) || angleStep <= 0) {
    const message = `The angle step must be above 0 degrees; got ${printNumber(angleStep)}.`;
    throw new StripError('angleStep', message);
  }
  const places = placesOf(runs);
  const exact = places.places.map(({ at }) => at);
  const marks = roundMarks(exact, smallestMark);
  const chain = chainOf(places, bendRule, sizeIs);
  const drawnTurns = chain.turns.map(({ drawn }) => drawn);
  const drawing = fold(chain, exact, drawnTurns);
  const weights = sharesOf(drawing);
  const target = { points: drawing.points, weights, turned: drawing.turned };
  const told = tellTurns({ chain, marks, target, step: toRadians(angleStep) }, smallestMark);
  const figures = (turns: readonly number[]): FoldFigures => {
    const folded = fold(chain, marks, turns);
    const { points, largest, worst } = placeClosest(folded.points, drawing.points, weights);
    return {
      closureGap: gapOf(points, drawing.points),
      largestDeviation: largest,
      at: folded.along[worst] ?? 0,
      path: points,
    };
  };
  return {
    ...figures(told),
    atDrawnAngles: figures(drawnTurns),
    folds: toldFolds(chain, told),
    curves: toldCurves(chain, told),
    drawing: drawing.points,
  };
}

/** The share of the line that each point stands for: half of what lies on either side. */
function sharesOf({ points }: Folded): number[] {
  const steps = points.slice(1).map((p, index) => distance(p, points[index] ?? p));
  const total = steps.reduce((sum, step) => sum + step, 0);
  return points.map((_, index) => ((steps[index - 1] ?? 0) + (steps[index] ?? 0)) / (2 * total));
}

function toldFolds({ turns, places }: Chain, told: readonly number[]): ToldFold[] {
  return turns.flatMap((turn, index) => {
    const bend = turn.kind === 'bend' ? places.places[turn.place]?.bend : undefined;
    if (bend === undefined) {
      return [];
    }
    const { direction, angle } = bend.run;
    const found = told[index] ?? turn.drawn;
    return [
      {
        number: bend.number,
        drawn: { direction, angle },
        told: { direction: found > 0 ? 'in' : 'out', angle: toDegrees(Math.abs(found)) },
      },
    ];
  });
}

function toldCurves({ turns, places }: Chain, told: readonly number[]): ToldCurve[] {
  return turns.flatMap((turn, index): ToldCurve[] => {
    const stretch = turn.kind === 'half' ? places.stretches[turn.stretch] : undefined;
    if (turn.kind !== 'half' || turn.half !== 0 || stretch?.kind !== 'curve') {
      return [];
    }
    const { direction } = stretch.run;
    const sense = direction === 'in' ? 1 : -1;
    const degrees = (radians = 0) => sense * toDegrees(radians);
    return [
      {
        number: stretch.number,
        direction,
        drawn: [degrees(turn.drawn), degrees(turns[index + 1]?.drawn)],
        told: [degrees(told[index]), degrees(told[index + 1])],
      },
    ];
  });
}
